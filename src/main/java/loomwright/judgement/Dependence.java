package loomwright.judgement;

import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * An unknown that turns a verdict when it lies at its other usual end.
 *
 * @param verdict code of the verdict that it turns
 * @param unknown what was assumed, as the name of its property
 * @param settledBy what to measure or to look at
 * @param assumed the figure that was taken
 * @param other its other usual end
 * @param level what the verdict would be then
 * @param limit what the limit would be then
 * @param ratio value over limit then; absent where the limit is nothing
 */
public record Dependence(
        String verdict,
        Unknown unknown,
        Message settledBy,
        double assumed,
        double other,
        Level level,
        double limit,
        @Nullable Double ratio) {

    /** What may be unknown about a circuit; its text is what settles it. */
    public enum Unknown implements MessageCode {
        AMBIENT_C,
        INSULATION_C,
        BUNDLE_COUNT,
        LENGTH_M,
        CURRENT_A,
        CHASSIS_OHM,
        /** All of them at their bad ends; assumed and other are the limits, or for a drop the volts. */
        ALL_TOGETHER
    }
}
