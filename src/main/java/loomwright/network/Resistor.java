package loomwright.network;

import loomwright.answer.InputErrors;

/**
 * A resistance: v = R·i.
 *
 * @param resistanceOhm 1e-9 to 1e12 ohms, or 0: an ideal joint, such as a closed switch without contact resistance
 */
public record Resistor(String id, int from, int to, double resistanceOhm) implements Element {
    public Resistor {
        InputErrors faults = new InputErrors();
        Element.checkResistance(faults, "/resistanceOhm", resistanceOhm);
        faults.reject();
    }
}
