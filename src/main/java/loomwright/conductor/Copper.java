package loomwright.conductor;

/** What copper is, in one place. */
final class Copper {
    /** Resistivity of annealed copper at 20 C, 100 % IACS: IEC 60028. */
    static final double RESISTIVITY_OHM_MM2_PER_M = 1.0 / 58;
    /** Change of resistance per kelvin, related to 20 C: IEC 60028. */
    static final double ALPHA_PER_K = 0.00393;

    static final double REFERENCE_C = 20;
    /** Melting point, rounded as the fusing formulas of the trade take it. */
    static final double MELTING_C = 1083;
    /** Heat capacity by volume, J/(K mm3): IEC 60949 table 1, from memory. */
    static final double HEAT_CAPACITY_J_PER_K_MM3 = 3.45e-3;
    /** Lowest and highest conductor temperature calculated with: frost, and the hottest insulation of the trade. */
    static final double MIN_TEMPERATURE_C = -60;

    static final double MAX_TEMPERATURE_C = 400;
    /** Square millimetres of one circular mil, the area of a circle of 0.001 in. */
    static final double MM2_PER_CIRCULAR_MIL = Math.PI / 4 * 0.0254 * 0.0254;

    static final double METRES_PER_FOOT = 0.3048;
    static final double MM_PER_INCH = 25.4;

    /** Resistance of stranded over solid wire of the same area, for the twist of its strands: common practice, no source. */
    static final double STRANDING = 1.02;

    private Copper() {}

    /** R / R20 = 1 + 0.00393 (T - 20). */
    static double resistanceRatio(double temperatureC) {
        return 1 + ALPHA_PER_K * (temperatureC - REFERENCE_C);
    }

    static double circularMils(double areaMm2) {
        return areaMm2 / MM2_PER_CIRCULAR_MIL;
    }

    /** Diameter of the solid round wire of that area. */
    static double diameterMm(double areaMm2) {
        return Math.sqrt(4 * areaMm2 / Math.PI);
    }
}
