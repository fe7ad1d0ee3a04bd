package loomwright.network;

import static loomwright.message.Arg.plain;

import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * An element that conducts one way only: i = 0 for v ≤ V0, (v − V0)/r above, but never more than a limit.
 *
 * @param thresholdV V0, −1e6 to 1e6 V; negative: a regulated source behind a rectifier
 * @param slopeOhm r, 1e-9 to 1e12 ohms, or 0: ideal
 * @param limitA above 0, {@link Double#POSITIVE_INFINITY} for no limit
 */
public record UnidirectionalElement(String id, int from, int to, double thresholdV, double slopeOhm, double limitA)
        implements Element {
    public UnidirectionalElement {
        InputErrors faults = new InputErrors().range("/thresholdV", thresholdV, -MAXIMUM_V, MAXIMUM_V);
        Element.checkResistance(faults, "/slopeOhm", slopeOhm);
        faults.check(
                        limitA > 0,
                        InputError.Code.OUT_OF_RANGE,
                        "/limitA",
                        limitA,
                        Accepted.NUMBER_ABOVE,
                        plain("min", 0))
                .reject();
    }
}
