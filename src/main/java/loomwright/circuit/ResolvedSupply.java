package loomwright.circuit;

import org.jspecify.annotations.Nullable;

/**
 * A supply, or one battery, in one condition, with nothing left open.
 *
 * @param emfV electromotive force, V
 * @param internalResistanceOhm while it gives current; 0 for a source that does not sag
 * @param chargeResistanceOhm while it takes current; 0 only if {@code internalResistanceOhm} is
 * @param tolerancePercent by how much the EMF may be lower or higher
 */
public record ResolvedSupply(
        double emfV, double internalResistanceOhm, double chargeResistanceOhm, double tolerancePercent) {

    /** With what is stated in the place of what is usual; a resistance that is stated holds for both ways. */
    ResolvedSupply with(@Nullable Supply stated) {
        if (stated == null) {
            return this;
        }
        Double inside = stated.internalResistanceOhm();
        double givingOhm = inside == null ? internalResistanceOhm : Bounds.soundIfTiny(inside);
        double takingOhm = inside == null ? chargeResistanceOhm : givingOhm;
        return new ResolvedSupply(
                Bounds.orElse(stated.emfV(), emfV),
                givingOhm,
                givingOhm == 0 ? 0 : leastOhm(Bounds.orElse(stated.chargeResistanceOhm(), takingOhm)),
                Bounds.orElse(stated.tolerancePercent(), tolerancePercent));
    }

    /** What a battery of a share of the system's voltage is of it. */
    ResolvedSupply share(double share) {
        return new ResolvedSupply(
                emfV * share, internalResistanceOhm * share, chargeResistanceOhm * share, tolerancePercent);
    }

    static double leastOhm(double ohm) {
        return Math.max(Bounds.MIN_RESISTANCE_OHM, ohm);
    }

    /** As something that can be stated. */
    public Supply stated() {
        return new Supply(emfV, internalResistanceOhm, chargeResistanceOhm, tolerancePercent);
    }
}
