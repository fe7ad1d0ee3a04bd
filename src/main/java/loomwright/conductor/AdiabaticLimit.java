package loomwright.conductor;

/** How long a wire bears a short circuit when no heat leaves it. */
public final class AdiabaticLimit {
    /** Copper, A sqrt(s) / mm2: IEC 60949 table 1, from memory. */
    private static final double K = 226;
    /** Copper, reciprocal temperature coefficient at 0 C, in C: IEC 60949 table 1. */
    private static final double BETA_C = 234.5;

    private AdiabaticLimit() {}

    /**
     * Time for a current to heat a copper conductor from one temperature to another.
     *
     * <p>t = K^2 S^2 / I^2 ln((Tf + 234.5) / (Ti + 234.5)), K = 226 A sqrt(s)/mm2.
     *
     * @param areaMm2 S, above 0
     * @param currentA I, above 0
     * @param startC Ti, C, above -234.5
     * @param limitC Tf, C
     * @return seconds, 0 if the conductor starts at its limit or above; errs short, as real wire loses heat
     *     <p>Source: IEC 60949, formula for adiabatic heating, constants from memory.
     */
    public static double timeS(double areaMm2, double currentA, double startC, double limitC) {
        if (startC >= limitC) {
            return 0;
        }
        double ampsPerMm2 = currentA / areaMm2;
        return K * K * Math.log((limitC + BETA_C) / (startC + BETA_C)) / (ampsPerMm2 * ampsPerMm2);
    }
}
