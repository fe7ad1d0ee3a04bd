package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Supply;

/**
 * A battery whose EMF is lower than the plan's: flat, or short of a cell.
 *
 * @param batteries that make up the supply
 * @param restV EMF that the plan has at rest, key off
 * @param usualShare by how much less it may have within the plan's tolerance
 * @param missingShare share of the EMF that is missing in every condition without charge, above 0 to 0.99
 */
public record DischargedBattery(Batteries batteries, double restV, double usualShare, double missingShare)
        implements BatteryFault {
    /** An eighth less: a 12 V battery of 11 V (common practice, no source). */
    private static final double TYPICAL_SHARE = 1.0 / 8;

    /** A hundredth less is within what a sound battery varies by, whatever the plan says (common practice, no source). */
    private static final double SMALLEST_SHARE = 0.01;

    /** Nothing is left that a meter would show; some is, so that there is still a supply (common practice, no source). */
    private static final double LARGEST_SHARE = 0.99;

    public DischargedBattery {
        missingShare = Math.min(LARGEST_SHARE, missingShare);
    }

    /** Batteries as flat as is typical. */
    static DischargedBattery of(Plan plan, Batteries batteries) {
        ResolvedSupply rest = batteries.restSupply(plan);
        double usual = Math.max(SMALLEST_SHARE, rest.tolerancePercent() / 100);
        return new DischargedBattery(batteries, rest.emfV(), usual, Math.max(2 * usual, TYPICAL_SHARE));
    }

    @Override
    public Kind kind() {
        return Kind.BATTERY_DISCHARGED;
    }

    @Override
    public List<String> ids() {
        return batteries.ids();
    }

    /** What is left of the EMF at rest, V. */
    public double leftV() {
        return restV * (1 - missingShare);
    }

    /** Natural logarithm of how many times less is left, so that a nearly dead battery is sized as closely as a good one. */
    @Override
    public double size() {
        return -Math.log1p(-missingShare);
    }

    @Override
    public double smallest() {
        return -Math.log1p(-usualShare);
    }

    @Override
    public double largest() {
        return -Math.log1p(-LARGEST_SHARE);
    }

    @Override
    public DischargedBattery withSize(double size) {
        return new DischargedBattery(batteries, restV, usualShare, -Math.expm1(-size));
    }

    @Override
    public Plan applyTo(Plan plan) {
        return Edits.withoutCharge(
                plan,
                batteries,
                sound -> new Supply(
                        Math.max(Supply.MIN_EMF_V, sound.emfV() * (1 - missingShare)),
                        sound.internalResistanceOhm(),
                        sound.chargeResistanceOhm(),
                        sound.tolerancePercent()));
    }
}
