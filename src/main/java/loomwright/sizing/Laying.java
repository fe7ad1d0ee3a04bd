package loomwright.sizing;

import loomwright.circuit.Place;
import org.jspecify.annotations.Nullable;

/**
 * How a wire is insulated and where it lies.
 *
 * @param insulationC temperature rating of the insulation; default 80, PVC
 * @param ambientC around the wire; default that of its place
 * @param place default CABIN
 * @param bundleCount current-carrying wires in the bundle, this one included; default 1
 * @param bundleFactors true to let the bundle lower the ampacity; default only from 50 V on, where the rule asks for it
 */
public record Laying(
        @Nullable Double insulationC,
        @Nullable Double ambientC,
        @Nullable Place place,
        @Nullable Integer bundleCount,
        @Nullable Boolean bundleFactors) {
    /** The same where a bundle, if one is given, lowers what the wire may carry. */
    Laying withFactorsOfBundle() {
        return new Laying(insulationC, ambientC, place, bundleCount, bundleCount == null ? null : Boolean.TRUE);
    }
}
