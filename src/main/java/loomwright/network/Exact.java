package loomwright.network;

/**
 * Sums whose rounding error is kept: the voltage over a very small resistance is what is left of much larger voltages,
 * and must not be made of their rounding.
 *
 * <p>Source: D. E. Knuth, "The Art of Computer Programming", vol. 2, 4.2.2 (from memory).
 */
final class Exact {
    private Exact() {}

    /** What the rounded sum of two numbers lacks, exactly. */
    static double lost(double a, double b) {
        double sum = a + b;
        double part = sum - a;
        return (a - (sum - part)) + (b - part);
    }
}
