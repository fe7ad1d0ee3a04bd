package loomwright.network;

/**
 * By how much the regulator of a {@link SensedSource} raises it: the raise at which what is lost up to where it measures is
 * the raise itself. What is lost grows with the raise, but by less, so the difference falls, with one root. Secants, and
 * halves where a secant leaves the bounds.
 */
final class RaiseSearch {
    static final int MOST_STEPS = 60;

    private double low;
    private double high;
    private double lastAt = Double.NaN;
    private double lastMissing;

    RaiseSearch(SensedSource source) {
        low = -source.regulatedV();
        high = source.highestRaiseV();
    }

    /**
     * The next raise to try, V.
     *
     * @param at the raise that was tried
     * @param missingV by how much more is lost than that, not 0
     */
    double next(double at, double missingV) {
        if (missingV > 0) {
            low = Math.max(low, at);
        } else {
            high = Math.min(high, at);
        }
        double secant = at - missingV * (at - lastAt) / (missingV - lastMissing);
        // Never past the root: the difference falls by less than the raise rises.
        double guess = Double.isFinite(secant) ? secant : at + missingV;
        lastAt = at;
        lastMissing = missingV;
        return guess >= low && guess <= high && guess != at ? guess : 0.5 * (low + high);
    }
}
