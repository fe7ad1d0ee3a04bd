package loomwright.judgement.wire;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.conductor.AmpacityTable;
import loomwright.conductor.Copper;

/**
 * The continuous current of a wire on the ground.
 *
 * <p>33 CFR 183.425 Table 5 leads. Between its sizes and beyond its thickest the logarithm of the current goes with that
 * of the area; below 18 AWG the current goes on from there with area^0.62, below 0.35 mm2 with area^0.97, so that nothing
 * jumps. Insulation between two columns: linear in temperature; the step between its 75 and 80 degree columns is the
 * table's own. Ambient: square root of the rise that is left, no credit below 30 degrees. Bundle: n^-0.325, not below 0.38.
 * A law of heat, {@link #lawA}, stands beside as a second opinion and decides nothing.
 *
 * @param areaMm2 copper
 * @param conditions what it is exposed to
 * @param footing where it lies in the table
 * @param tableA at 30 degrees, alone
 * @param ambientFactor by which the ambient lowers that
 * @param bundleFactor by which the bundle lowers it
 * @param allowedA the product; 0 where the place is too hot
 */
public record WireAmpacity(
        double areaMm2,
        WireConditions conditions,
        Footing footing,
        double tableA,
        double ambientFactor,
        double bundleFactor,
        double allowedA) {
    public static final Basis TABLE_BASIS = Basis.verified(
            "continuous current, 30 °C, single wire; between its sizes by the logarithms of area and current",
            "33 CFR 183.425 Table 5");
    public static final Basis AMBIENT_BASIS = Basis.computed(
            "ambient: square root of (rating - ambient) / (rating - 30 °C)",
            "heat lost in proportion to the rise, heat made to the square of the current; the factors of IEC 60364-5-52 and of"
                    + " note 1 of 33 CFR 183.425 Table 5 to two figures");
    public static final Basis BUNDLE_BASIS = Basis.verified(
            "bundle of n loaded wires: n^-0.325, not below 0.38",
            "factors of IEC 60364-5-52 for bunched cables (secondary page) and of the boat guideline, fitted");
    public static final Basis LAW_BASIS = Basis.computed(
            "second opinion: 2.85 A^0.62 sqrt((Tr - Ta) / (1 + 0.00393 (Tr - 20)))",
            "heat lost by convection and radiation, fitted to 33 CFR 183.425 and a German installation table");

    static final double TABLE_AMBIENT_C = 30;
    private static final double THIN_EXPONENT = 0.62;
    private static final double VERY_THIN_MM2 = 0.35;
    private static final double VERY_THIN_EXPONENT = 0.35;
    private static final double BUNDLE_EXPONENT = -0.325;
    private static final double BUNDLE_LEAST = 0.38;

    /** Where a wire lies in the table. */
    public enum Footing {
        /** The table prints its size. */
        PRINTED,
        BETWEEN_SIZES,
        BELOW_TABLE,
        ABOVE_TABLE
    }

    /**
     * What a wire may carry.
     *
     * @param areaMm2 copper, above 0
     */
    public static WireAmpacity of(double areaMm2, WireConditions conditions) {
        List<Integer> classes = AmpacityTable.US_33CFR183.classesC();
        double lowestC = classes.get(0);
        double highestC = classes.get(classes.size() - 1);
        double ratingC = Math.min(conditions.insulationC(), highestC);
        double tableA = ratingC <= lowestC
                ? column(areaMm2, classes.get(0)) * ratio(ratingC, TABLE_AMBIENT_C, lowestC)
                : between(areaMm2, classes, ratingC);
        double ambientFactor = ratio(ratingC, Math.max(conditions.ambientC(), TABLE_AMBIENT_C), ratingC);
        double bundleFactor = bundleFactor(conditions.bundleCount());
        return new WireAmpacity(
                areaMm2,
                conditions,
                footing(areaMm2),
                tableA,
                ambientFactor,
                bundleFactor,
                tableA * ambientFactor * bundleFactor);
    }

    /** Share of its current that each of n wires loaded together in a bundle keeps. */
    public static double bundleFactor(int wires) {
        return Math.max(BUNDLE_LEAST, Math.pow(wires, BUNDLE_EXPONENT));
    }

    /** The law of heat under the same conditions; a second opinion. 0 where the place is too hot. */
    public double lawA() {
        double rise = conditions.insulationC() - conditions.ambientC();
        if (rise <= 0) {
            return 0;
        }
        double thin = areaMm2 < VERY_THIN_MM2 ? Math.pow(areaMm2 / VERY_THIN_MM2, VERY_THIN_EXPONENT) : 1;
        return 2.85
                * Math.pow(areaMm2, THIN_EXPONENT)
                * thin
                * Math.sqrt(rise / Copper.resistanceRatio(conditions.insulationC()))
                * bundleFactor;
    }

    /**
     * Steady temperature under a current: T = Ta + (Tr - Ta) (I / Iz)^2 (1 + a (T - 20)) / (1 + a (Tr - 20)), solved for T.
     *
     * @param currentA 0 or more
     * @return degrees C; infinite where the heat made grows faster than the heat lost, or where it may carry nothing
     */
    public double temperatureC(double currentA) {
        double ambientC = conditions.ambientC();
        if (currentA == 0) {
            return ambientC;
        } else if (allowedA <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        double riseC = conditions.insulationC() - Math.max(ambientC, TABLE_AMBIENT_C);
        double load = currentA / allowedA;
        double k = riseC * load * load / Copper.resistanceRatio(conditions.insulationC());
        double growth = k * Copper.ALPHA_PER_K;
        return growth >= 1 ? Double.POSITIVE_INFINITY : (ambientC + k * Copper.resistanceRatio(0)) / (1 - growth);
    }

    /**
     * The temperature at which a loaded wire is calculated: that of {@link #temperatureC}, at most that at which its
     * insulation is gone, for the drop is then that of the burning wire.
     */
    public double loadedC(double currentA) {
        return Math.min(mostC(), temperatureC(currentA));
    }

    /** At most this: above it its insulation is gone. */
    public double mostC() {
        return Math.max(FuseRule.OVERLOAD_MOST_C, conditions.insulationC());
    }

    /** Thermal time constant of the copper alone, in s: 25 A^0.76. */
    public double timeConstantS() {
        return 25 * Math.pow(areaMm2, 0.76);
    }

    /**
     * What it may carry for a time, then rest for at least three time constants.
     *
     * @param onS how long, above 0
     */
    public double allowedForA(double onS) {
        return allowedA / Math.sqrt(-Math.expm1(-onS / timeConstantS()));
    }

    private static double ratio(double ratingC, double ambientC, double columnC) {
        double left = ratingC - ambientC;
        return left <= 0 ? 0 : Math.sqrt(left / (columnC - TABLE_AMBIENT_C));
    }

    private static double between(double areaMm2, List<Integer> classes, double ratingC) {
        for (int i = 1; i < classes.size(); i++) {
            int low = classes.get(i - 1);
            int high = classes.get(i);
            if (ratingC <= high) {
                double lowA = column(areaMm2, low);
                return lowA + (ratingC - low) / (high - low) * (column(areaMm2, high) - lowA);
            }
        }
        throw new IllegalArgumentException("no column for " + ratingC);
    }

    private static double column(double areaMm2, int classC) {
        List<AmpacityTable.Point> points = AmpacityTable.US_33CFR183.points(classC);
        AmpacityTable.Point thinnest = points.get(0);
        if (areaMm2 <= thinnest.areaMm2()) {
            double thin = areaMm2 < VERY_THIN_MM2 ? Math.pow(areaMm2 / VERY_THIN_MM2, VERY_THIN_EXPONENT) : 1;
            return thinnest.currentA() * Math.pow(areaMm2 / thinnest.areaMm2(), THIN_EXPONENT) * thin;
        }
        int upper = 1;
        while (upper < points.size() - 1 && points.get(upper).areaMm2() < areaMm2) {
            upper++;
        }
        AmpacityTable.Point a = points.get(upper - 1);
        AmpacityTable.Point b = points.get(upper);
        double share = Math.log(areaMm2 / a.areaMm2()) / Math.log(b.areaMm2() / a.areaMm2());
        return a.currentA() * Math.pow(b.currentA() / a.currentA(), share);
    }

    private static Footing footing(double areaMm2) {
        List<AmpacityTable.Point> points = AmpacityTable.US_33CFR183.points(
                AmpacityTable.US_33CFR183.classesC().get(0));
        if (points.stream().anyMatch(p -> Math.abs(p.areaMm2() / areaMm2 - 1) < 1e-9)) {
            return Footing.PRINTED;
        } else if (areaMm2 < points.get(0).areaMm2()) {
            return Footing.BELOW_TABLE;
        }
        return areaMm2 > points.get(points.size() - 1).areaMm2() ? Footing.ABOVE_TABLE : Footing.BETWEEN_SIZES;
    }

    /** Where the figure comes from. */
    public List<Basis> basis() {
        return conditions.bundleCount() > 1
                ? List.of(TABLE_BASIS, AMBIENT_BASIS, BUNDLE_BASIS, LAW_BASIS)
                : List.of(TABLE_BASIS, AMBIENT_BASIS, LAW_BASIS);
    }
}
