package loomwright.circuit;

import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * The battery in one condition, for the whole system voltage.
 *
 * @param emfV electromotive force, or the terminal voltage if {@code internalResistanceOhm} is 0; 0.1 to 100 V
 * @param internalResistanceOhm while it gives current, 0 to 10 ohm; less than any meter tells is taken as 0
 * @param chargeResistanceOhm while it takes current, 0 to 10 ohm; absent: {@code internalResistanceOhm}, if that is given
 * @param tolerancePercent by how much the EMF may be lower or higher; 0 to 50
 */
public record Supply(
        @Nullable Double emfV,
        @Nullable Double internalResistanceOhm,
        @Nullable Double chargeResistanceOhm,
        @Nullable Double tolerancePercent) {
    public static final double MIN_EMF_V = 0.1;
    public static final double MAX_INTERNAL_OHM = 10;
    static final double MAX_TOLERANCE_PERCENT = 50;

    public Supply {
        new InputErrors()
                .range("/emfV", emfV, MIN_EMF_V, Bounds.MAX_VOLTAGE_V)
                .range("/internalResistanceOhm", internalResistanceOhm, 0, MAX_INTERNAL_OHM)
                .range("/chargeResistanceOhm", chargeResistanceOhm, 0, MAX_INTERNAL_OHM)
                .range("/tolerancePercent", tolerancePercent, 0, MAX_TOLERANCE_PERCENT)
                .reject();
    }

    /** A supply that is the same whichever way current flows. */
    public static Supply of(double emfV, double internalResistanceOhm, double tolerancePercent) {
        return new Supply(emfV, internalResistanceOhm, internalResistanceOhm, tolerancePercent);
    }
}
