package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Supply;
import loomwright.circuit.tolerance.Tolerances;

/**
 * A battery that is sulphated or worn out: its volts are right at rest and fall away under load.
 *
 * @param batteries that make up the supply
 * @param usualOhm by how much more it may have within the plan's tolerance
 * @param resistanceOhm what its inside has more than the plan's, above 0 to 10 ohm less what it has when sound
 */
public record WornBattery(Batteries batteries, double usualOhm, double resistanceOhm) implements BatteryFault {
    /** Enough that a starter motor hardly turns (common practice, no source). */
    private static final double TYPICAL_OHM = 0.03;

    /** Less is within what a sound battery varies by with its charge and the cold (common practice, no source). */
    private static final double SMALLEST_OHM = 0.003;

    public WornBattery {
        resistanceOhm = Math.min(Supply.MAX_INTERNAL_OHM, resistanceOhm);
    }

    /** Batteries as worn as is typical. */
    static WornBattery of(Plan plan, Batteries batteries) {
        double usual = Math.max(
                SMALLEST_OHM, Tolerances.FUSE * batteries.restSupply(plan).internalResistanceOhm());
        return new WornBattery(batteries, usual, Math.max(2 * usual, TYPICAL_OHM));
    }

    @Override
    public Kind kind() {
        return Kind.BATTERY_WORN;
    }

    @Override
    public List<String> ids() {
        return batteries.ids();
    }

    @Override
    public double size() {
        return resistanceOhm;
    }

    @Override
    public double smallest() {
        return usualOhm;
    }

    @Override
    public double largest() {
        return Supply.MAX_INTERNAL_OHM;
    }

    @Override
    public WornBattery withSize(double size) {
        return new WornBattery(batteries, usualOhm, size);
    }

    @Override
    public Plan applyTo(Plan plan) {
        return Edits.withoutCharge(
                plan,
                batteries,
                sound -> new Supply(
                        sound.emfV(),
                        Math.min(Supply.MAX_INTERNAL_OHM, sound.internalResistanceOhm() + resistanceOhm),
                        Math.min(Supply.MAX_INTERNAL_OHM, sound.chargeResistanceOhm() + resistanceOhm),
                        sound.tolerancePercent()));
    }
}
