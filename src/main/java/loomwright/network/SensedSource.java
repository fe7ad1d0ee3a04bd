package loomwright.network;

import static loomwright.message.Arg.plain;

import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * A regulated source behind a rectifier whose regulator measures at another place: it raises the voltage of the source by what is
 * lost between its end and that place, V({@code above}) − V({@code below}). So what it holds is the voltage at that place, and its current is
 * (E − v)/r with v as measured there, from 0 to a limit. No current flows by way of measuring. A regulator at its end raises no more.
 *
 * @param regulatedV what it holds, above 0 to 1e6 V
 * @param slopeOhm r, 1e-9 to 1e12 ohms
 * @param limitA above 0
 * @param above the node at which it would measure otherwise
 * @param below the node at which it measures
 * @param highestRaiseV 0 to 1e6 V
 */
public record SensedSource(
        String id,
        int from,
        int to,
        double regulatedV,
        double slopeOhm,
        double limitA,
        int above,
        int below,
        double highestRaiseV)
        implements Element {
    public SensedSource {
        InputErrors faults = new InputErrors()
                .range("/regulatedV", regulatedV, 0, MAXIMUM_V)
                .range("/highestRaiseV", highestRaiseV, 0, MAXIMUM_V)
                .range("/slopeOhm", slopeOhm, MINIMUM_OHM, MAXIMUM_OHM);
        faults.check(
                        limitA > 0,
                        InputError.Code.OUT_OF_RANGE,
                        "/limitA",
                        limitA,
                        Accepted.NUMBER_ABOVE,
                        plain("min", 0))
                .reject();
    }

    /** The same source while its regulator raises it by so much. */
    UnidirectionalElement raised(double raiseV) {
        return new UnidirectionalElement(id, from, to, -(regulatedV + raiseV), slopeOhm, limitA);
    }

    /** By how much the regulator wants to raise it, V. */
    double wantedRaiseV(double lostV) {
        return Math.max(-regulatedV, Math.min(highestRaiseV, lostV));
    }

    /** Whether another is held by the same regulator. */
    boolean hasRegulatorOf(SensedSource other) {
        return above == other.above && below == other.below;
    }
}
