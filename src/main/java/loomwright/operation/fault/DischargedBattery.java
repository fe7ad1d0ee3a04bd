package loomwright.operation.fault;

import java.util.List;
import java.util.Locale;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Supply;

/**
 * A battery whose EMF is lower than the plan's: flat, or short of a cell.
 *
 * @param batteries ids of the batteries that make up the supply
 * @param restV EMF that the plan has at rest, key off
 * @param missingShare share of the EMF that is missing in every condition without charge, above 0 to 0.99
 */
public record DischargedBattery(List<String> batteries, double restV, double missingShare) implements BatteryFault {
    /** An eighth less: a 12 V battery of 11 V (common practice, no source). */
    private static final double TYPICAL_SHARE = 1.0 / 8;

    private static final double LARGEST_SHARE = 0.99;

    public DischargedBattery {
        batteries = List.copyOf(batteries);
        missingShare = Math.min(LARGEST_SHARE, missingShare);
    }

    /** The battery of a plan as flat as is typical. */
    static DischargedBattery of(Plan plan) {
        double restV = plan.conditions().in(Condition.OFF, plan.system()).emfV();
        return new DischargedBattery(Edits.ids(plan, Battery.class), restV, TYPICAL_SHARE);
    }

    @Override
    public Kind kind() {
        return Kind.BATTERY_DISCHARGED;
    }

    @Override
    public List<String> ids() {
        return batteries;
    }

    /** What is left of the EMF at rest, V. */
    public double leftV() {
        return restV * (1 - missingShare);
    }

    @Override
    public String words() {
        String left = String.format(Locale.ROOT, "%.1f V at rest instead of %.1f V.", leftV(), restV);
        return batteries.size() == 1
                ? "The battery is discharged or has a dead cell: " + left
                : "One of the batteries or all are discharged, or a cell is dead: together " + left;
    }

    /** Natural logarithm of how many times less is left, so that a nearly dead battery is sized as closely as a good one. */
    @Override
    public double size() {
        return -Math.log1p(-missingShare);
    }

    @Override
    public double smallest() {
        return 0.01;
    }

    @Override
    public double largest() {
        return -Math.log1p(-LARGEST_SHARE);
    }

    @Override
    public DischargedBattery withSize(double size) {
        return new DischargedBattery(batteries, restV, -Math.expm1(-size));
    }

    @Override
    public Plan applyTo(Plan plan) {
        return Edits.withoutCharge(
                plan,
                sound -> new Supply(
                        Math.max(Supply.MIN_EMF_V, sound.emfV() * (1 - missingShare)),
                        sound.internalResistanceOhm(),
                        sound.tolerancePercent()));
    }
}
