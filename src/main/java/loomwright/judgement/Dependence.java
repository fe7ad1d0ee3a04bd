package loomwright.judgement;

import org.jspecify.annotations.Nullable;

/**
 * An unknown that turns a verdict when it lies at its other usual end.
 *
 * @param unknown what was assumed, as the name of its property
 * @param assumed the figure that was taken
 * @param other its other usual end
 * @param level what the verdict would be then
 * @param limit what the limit would be then
 * @param ratio value over limit then; absent where the limit is nothing
 */
public record Dependence(
        Unknown unknown,
        double assumed,
        double other,
        Level level,
        double limit,
        @Nullable Double ratio) {

    /** What may be unknown about a circuit, with what settles it. */
    public enum Unknown {
        AMBIENT_C,
        INSULATION_C,
        BUNDLE_COUNT,
        LENGTH_M,
        CURRENT_A,
        CHASSIS_OHM
    }
}
