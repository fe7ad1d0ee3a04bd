package loomwright.ignition.primary;

/** The energy in the magnetic field of a coil. */
public final class SparkEnergy {
    private SparkEnergy() {}

    /**
     * Stored energy: E = L i^2 / 2.
     *
     * @param inductanceH 0 or above
     * @param currentA any sign
     * @return joules. Source: OpenStax College Physics, section 23.9 (energy stored in an inductor)
     */
    public static double storedJ(double inductanceH, double currentA) {
        return 0.5 * inductanceH * currentA * currentA;
    }
}
