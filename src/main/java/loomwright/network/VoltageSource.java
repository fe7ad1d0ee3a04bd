package loomwright.network;

import loomwright.answer.InputErrors;

/**
 * A source of voltage: V(to) − V(from) = E − R·i. Delivering current is positive, so {@code to} is its positive
 * terminal when the voltage is positive.
 *
 * @param voltageV open-circuit voltage E, −1e6 to 1e6 V
 * @param resistanceOhm internal resistance R, 1e-9 to 1e12 ohms, or 0: an ideal source
 */
public record VoltageSource(String id, int from, int to, double voltageV, double resistanceOhm) implements Element {
    public VoltageSource {
        InputErrors faults = new InputErrors().range("/voltageV", voltageV, -MAXIMUM_V, MAXIMUM_V);
        Element.checkResistance(faults, "/resistanceOhm", resistanceOhm);
        faults.reject();
    }
}
