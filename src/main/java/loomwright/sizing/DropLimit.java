package loomwright.sizing;

import loomwright.answer.Basis;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.DropRule;
import loomwright.judgement.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * How much drop is permitted, and who says so.
 *
 * @param circuit the rule; absent where the question itself gave the limit
 * @param goodV up to this nothing need be done
 * @param findingV above this it is a finding in a vehicle that exists
 * @param newWireV what a new wire is sized for
 * @param basis its source
 */
public record DropLimit(@Nullable DropRule circuit, double goodV, double findingV, double newWireV, Basis basis) {

    /** A given limit goes first, then that of the circuit, then that of any other circuit. */
    static DropLimit of(
            @Nullable Double limitV, @Nullable Double limitPercent, @Nullable DropRule circuit, double supplyV) {
        if (limitV != null || limitPercent != null) {
            double asked = limitV != null ? limitV : limitPercent == null ? 0 : limitPercent / 100 * supplyV;
            return new DropLimit(null, asked, asked, asked, Basis.computed("limit of the drop", "the question itself"));
        }
        return of(circuit == null ? DropRule.GENERAL : circuit, supplyV);
    }

    /** The usual limit of a kind of circuit. */
    static DropLimit of(DropRule circuit, double supplyV) {
        double nominalV = nominalV(supplyV);
        return new DropLimit(
                circuit,
                circuit.goodV(nominalV),
                circuit.findingV(nominalV),
                circuit.newWireV(nominalV),
                circuit.basis());
    }

    /** Judges a drop. */
    Verdict judge(double dropV, double supplyV) {
        return circuit == null
                ? Verdict.ofMost("voltage-drop", dropV, findingV, Double.POSITIVE_INFINITY, basis)
                : circuit.judge(dropV, nominalV(supplyV));
    }

    /** The nominal voltage of a vehicle whose source has so many volts: 6, 12 or 24. */
    static double nominalV(double supplyV) {
        return VehicleSystem.nominalOf(supplyV);
    }
}
