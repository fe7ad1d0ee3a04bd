package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.BatteryLaw;
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

    /** EMF of a charged lead-acid cell: a sixth of 12.65 V. */
    private static final double CELL_V = BatteryLaw.emfV(1, BatteryLaw.USUAL_C, 2);

    private static final double HALF = 0.5;

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

    /** What its volts at rest may mean. */
    enum State {
        /** Half or more of its charge is left: {@link BatteryLaw#EMF_BASIS}. */
        PARTLY_CHARGED,
        /** Less than half is left, and the volts of no cell are missing. */
        FLAT,
        /** A cell may be dead as well: the volts of half a cell or more are missing (common practice, no source). */
        CELL_DEAD
    }

    State state() {
        double cellsV = restV / Math.max(1, Math.rint(restV / CELL_V));
        double missingV = restV - leftV();
        if (missingV >= cellsV / 2) {
            return State.CELL_DEAD;
        }
        double leftPerCellV = cellsV * (1 - missingShare);
        return leftPerCellV >= BatteryLaw.emfV(HALF, BatteryLaw.USUAL_C, 2) ? State.PARTLY_CHARGED : State.FLAT;
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
