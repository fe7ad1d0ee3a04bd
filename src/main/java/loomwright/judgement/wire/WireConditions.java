package loomwright.judgement.wire;

import loomwright.answer.Basis;
import loomwright.circuit.Place;
import loomwright.circuit.VehicleSystem;

/**
 * What a wire is exposed to.
 *
 * @param insulationC temperature rating of the insulation
 * @param ambientC temperature around the wire
 * @param bundleCount wires loaded at the same time in its bundle, this one included, if that is to be applied; else 1
 */
public record WireConditions(double insulationC, double ambientC, int bundleCount) {
    /** Insulation where nobody says: PVC of vehicle wire. */
    public static final double USUAL_INSULATION_C = 80;
    /** Rubber under cotton braid, before about 1955. */
    public static final double OLD_RUBBER_C = 60;
    /** Thin-wall wire. */
    public static final double THIN_WALL_C = 105;
    /** A full loom, where nobody says how many wires lie together. */
    public static final int FULL_LOOM = 5;
    /** A place hotter than was assumed. */
    public static final double HOTTER_K = 20;

    public static final Basis DEFAULTS_BASIS = Basis.verified(
            "ambient 30 °C, engine space 50 °C; vehicle PVC 80 °C",
            "33 CFR 183.425 Table 5 and its note 1; a cable maker's table of classes (rubber 60 °C: IEC; thin wall 105 °C:"
                    + " common practice)");

    public WireConditions {
        if (bundleCount < 1) {
            throw new IllegalArgumentException("a bundle has at least one wire");
        }
    }

    /** The ambient of a place where nobody says. */
    public static double usualAmbientC(Place place) {
        return place == Place.ENGINE_BAY ? VehicleSystem.ENGINE_BAY_C : VehicleSystem.AMBIENT_C;
    }

    /** Whether the place is too hot for the insulation without any current. */
    public boolean tooHot() {
        return ambientC >= insulationC;
    }

    public WireConditions withAmbient(double other) {
        return new WireConditions(insulationC, other, bundleCount);
    }

    public WireConditions withInsulation(double other) {
        return new WireConditions(other, ambientC, bundleCount);
    }

    public WireConditions withBundle(int other) {
        return new WireConditions(insulationC, ambientC, other);
    }
}
