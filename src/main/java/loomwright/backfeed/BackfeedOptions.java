package loomwright.backfeed;

import loomwright.answer.InputErrors;
import loomwright.answer.Severity;
import org.jspecify.annotations.Nullable;

/**
 * What is searched for, and how much of it is reported.
 *
 * @param singleFaults whether to search once more with each single fault; false unless said
 * @param clues whether to tell the patterns of sneak circuit analysis; false unless said
 * @param cure whether to look for remedies that help together; false unless said
 * @param details whether to tell the ways of the current of every occurrence, not of the main one alone; false unless said
 * @param limit of how many loads are reported, worst first, 1 to 1000; {@link #USUAL_LIMIT} unless said
 * @param severity the least serious of which is reported; {@link Severity#NOTE} unless said
 */
public record BackfeedOptions(
        Boolean singleFaults, Boolean clues, Boolean cure, Boolean details, Integer limit, Severity severity) {
    /** How many loads are reported where nobody says. */
    public static final int USUAL_LIMIT = 50;

    public static final BackfeedOptions USUAL =
            new BackfeedOptions(false, false, false, false, USUAL_LIMIT, Severity.NOTE);

    public BackfeedOptions {
        singleFaults = orFalse(singleFaults);
        clues = orFalse(clues);
        cure = orFalse(cure);
        details = orFalse(details);
        limit = orUsual(limit);
        severity = orNote(severity);
        new InputErrors().range("/limit", (double) limit, 1, 1000).reject();
    }

    private static Boolean orFalse(@Nullable Boolean value) {
        return value != null && value;
    }

    private static Severity orNote(@Nullable Severity value) {
        return value == null ? Severity.NOTE : value;
    }

    private static Integer orUsual(@Nullable Integer value) {
        return value == null ? USUAL_LIMIT : value;
    }
}
