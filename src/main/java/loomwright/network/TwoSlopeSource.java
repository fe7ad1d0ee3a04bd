package loomwright.network;

import static loomwright.message.Arg.plain;

import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * A source of voltage that gives current behind one resistance and takes it behind another, such as a battery, which is
 * slower to charge than to discharge: V(to) − V(from) = E − R·i, where R is {@code givingOhm} while i, the current from
 * {@code from} to {@code to} through it, is positive, and {@code takingOhm} while it is negative.
 *
 * @param voltageV open-circuit voltage E, −1e6 to 1e6 V
 * @param givingOhm 1e-9 to 1e12 ohms
 * @param takingOhm 1e-9 to 1e12 ohms
 */
public record TwoSlopeSource(String id, int from, int to, double voltageV, double givingOhm, double takingOhm)
        implements Element {
    public TwoSlopeSource {
        InputErrors faults = new InputErrors().range("/voltageV", voltageV, -MAXIMUM_V, MAXIMUM_V);
        checkAboveZero(faults, "/givingOhm", givingOhm);
        checkAboveZero(faults, "/takingOhm", takingOhm);
        faults.reject();
    }

    private static void checkAboveZero(InputErrors faults, String pointer, double ohm) {
        faults.check(
                ohm >= MINIMUM_OHM && ohm <= MAXIMUM_OHM,
                InputError.Code.OUT_OF_RANGE,
                pointer,
                ohm,
                Accepted.NUMBER,
                plain("min", Element.MINIMUM_OHM),
                plain("max", Element.MAXIMUM_OHM));
    }
}
