package loomwright.conductor;

/** What copper is, in one place. */
public final class Copper {
    /** Resistivity of annealed copper at 20 C, 100 % IACS: IEC 60028. */
    public static final double RESISTIVITY_OHM_MM2_PER_M = 1.0 / 58;
    /** Change of resistance per kelvin, related to 20 C: IEC 60028. */
    public static final double ALPHA_PER_K = 0.00393;

    public static final double REFERENCE_C = 20;
    /** Melting point, rounded as the fusing formulas of the trade take it. */
    public static final double MELTING_C = 1083;
    /** Heat capacity by volume, J/(K mm3): IEC 60949 table 1, from memory. */
    public static final double HEAT_CAPACITY_J_PER_K_MM3 = 3.45e-3;
    /** Lowest and highest conductor temperature calculated with: frost, and the hottest insulation of the trade. */
    public static final double MIN_TEMPERATURE_C = -60;

    public static final double MAX_TEMPERATURE_C = 400;
    /** Square millimetres of one circular mil, the area of a circle of 0.001 in. */
    public static final double MM2_PER_CIRCULAR_MIL = Math.PI / 4 * 0.0254 * 0.0254;

    public static final double METRES_PER_FOOT = 0.3048;
    public static final double MM_PER_INCH = 25.4;

    /**
     * Resistance of vehicle wire over that of solid copper of its nominal area: read in 14 makers' tables of stranded
     * cable. Metric sizes have their permitted maximum, which contains it.
     */
    public static final double STRANDING = 1.08;

    private Copper() {}

    /** R / R20 = 1 + 0.00393 (T - 20). */
    public static double resistanceRatio(double temperatureC) {
        return 1 + ALPHA_PER_K * (temperatureC - REFERENCE_C);
    }

    public static double circularMils(double areaMm2) {
        return areaMm2 / MM2_PER_CIRCULAR_MIL;
    }

    /** Diameter of the solid round wire of that area. */
    public static double diameterMm(double areaMm2) {
        return Math.sqrt(4 * areaMm2 / Math.PI);
    }
}
