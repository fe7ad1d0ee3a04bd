package loomwright.diagnosis;

import loomwright.circuit.Plan;
import loomwright.operation.Quantity;

/**
 * How far a figure that a plan predicts may be off in a sound vehicle, as a standard deviation.
 *
 * <p>A point at V volts with E volts behind it is taken for the middle of a divider of two resistances, each off by itself
 * by a share s: u = √2 s |V| (1 − |V|/E). Near the supply and near the chassis it is as good as exact. Of a resistance
 * u = s R. The supply is dealt with in {@link Likelihood}.
 */
final class Uncertainty {
    /**
     * Resistances of parts and wires lie within 5 per cent of the plan's (common practice, no source); limits become a
     * standard deviation by 1/√3 (JCGM 100:2008, GUM, 4.3.7, from memory).
     */
    static final double PART_SHARE = 0.05 / Math.sqrt(3);

    private final Plan plan;

    Uncertainty(Plan plan) {
        this.plan = plan;
    }

    /** EMF of the supply while something is measured, V. */
    double supplyV(Measurement measurement) {
        return plan.supply(measurement.condition()).emfV();
    }

    /** Standard deviation of the EMF as a share of it, from limits as above. */
    double supplyShare(Measurement measurement) {
        return plan.supply(measurement.condition()).tolerancePercent() / 100 / Math.sqrt(3);
    }

    /** Standard deviation of a predicted figure, V or ohm; without the supply's. */
    double ofPlan(Measurement measurement, double figure) {
        if (measurement.quantity() == Quantity.OHMS) {
            return PART_SHARE * figure;
        }
        double amountV = Math.abs(figure);
        return Math.sqrt(2) * PART_SHARE * amountV * Math.max(0, 1 - amountV / supplyV(measurement));
    }

    /** How far the meter may be off at a figure, V or ohm. */
    static double ofMeter(MeterAccuracy meter, Measurement measurement, double figure) {
        return measurement.quantity() == Quantity.OHMS ? meter.ofOhms(figure) : meter.ofVolts(figure);
    }
}
