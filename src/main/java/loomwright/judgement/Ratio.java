package loomwright.judgement;

/**
 * A value over its limit, and how it is judged: up to 0.9 it fits, to 1.0 it fits but is borderline, to 1.1 it is a note,
 * above that a warning, and a danger above a figure that each rule names.
 *
 * <p>Source: the laws judged here are good to about 10 % (ampacity has a spread of 11 % rms against 33 CFR 183.425), so a
 * finer verdict would not be honest.
 *
 * @param x value over limit, 0 or more
 */
public record Ratio(double x) {
    /** Within this of a limit a verdict is borderline. */
    public static final double BAND = 0.1;

    public Ratio {
        if (!(x >= 0)) {
            throw new IllegalArgumentException("a judged ratio of " + x);
        }
    }

    /**
     * Of a value that must not exceed a limit.
     *
     * @param value 0 or more
     * @param limit above 0
     */
    public static Ratio of(double value, double limit) {
        return new Ratio(value / limit);
    }

    public boolean borderline() {
        return x > 1 - BAND && x <= 1 + BAND;
    }

    /** The level where the rule knows no danger. */
    public Level level() {
        return level(Double.POSITIVE_INFINITY);
    }

    /**
     * The level.
     *
     * @param danger the ratio above which it is a danger, above 1.1
     */
    public Level level(double danger) {
        if (x <= 1) {
            return Level.FITS;
        } else if (x <= 1 + BAND) {
            return Level.NOTE;
        }
        return x <= danger ? Level.WARNING : Level.DANGER;
    }
}
