package loomwright.ignition.primary;

import loomwright.answer.InputErrors;
import loomwright.message.MessageCode;

/**
 * What is to be known of an ignition coil.
 *
 * @param primaryResistanceOhm at 20 C, 0.05 to 20
 * @param inductanceH primary inductance, 0.0002 to 0.1
 * @param turnsRatio secondary turns to one primary turn, 20 to 400
 * @param primaryClampV highest voltage that module or condenser let the primary reach, 50 to 1000
 * @param secondaryCapacitanceF winding, leads and plug, 1e-11 to 1e-9
 * @param efficiencyFraction share of the stored energy that reaches the secondary capacitance, 0.05 to 1
 * @param meantFor how it should be fed
 */
public record CoilData(
        double primaryResistanceOhm,
        double inductanceH,
        double turnsRatio,
        double primaryClampV,
        double secondaryCapacitanceF,
        double efficiencyFraction,
        Feed meantFor) {

    /** How a coil should be fed. */
    public enum Feed implements MessageCode {
        /** Through a ballast. */
        WITH_BALLAST,
        /** Straight from the ignition switch. */
        DIRECT,
        /** Straight, and by a module that limits the current. */
        LIMITING_MODULE
    }

    public CoilData {
        new InputErrors()
                .range("/primaryResistanceOhm", primaryResistanceOhm, 0.05, 20)
                .range("/inductanceH", inductanceH, 2e-4, 0.1)
                .range("/turnsRatio", turnsRatio, 20, 400)
                .range("/primaryClampV", primaryClampV, 50, 1000)
                .range("/secondaryCapacitanceF", secondaryCapacitanceF, 1e-11, 1e-9)
                .range("/efficiencyFraction", efficiencyFraction, 0.05, 1)
                .reject();
    }

    /** How fast the stored current, referred to the primary, falls against a burning voltage: U / (N L), in A/s. */
    public double releaseAPerS(double burningV) {
        return burningV / (turnsRatio * inductanceH);
    }
}
