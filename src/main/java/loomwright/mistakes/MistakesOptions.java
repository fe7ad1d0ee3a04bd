package loomwright.mistakes;

import loomwright.answer.InputErrors;
import loomwright.answer.Severity;
import org.jspecify.annotations.Nullable;

/**
 * How much is reported of what mistakes do; all of them are looked at in any case.
 *
 * @param limit how many are reported, worst first, 1 to 10,000; {@link #USUAL_LIMIT} unless said
 * @param severity the least that is reported; {@link Severity#NOTE} unless said
 * @param details whether to tell each thing noticed, overloaded and fed backwards with its figures; false unless said
 */
public record MistakesOptions(Integer limit, Severity severity, Boolean details) {
    /** How many are reported where nobody says. */
    public static final int USUAL_LIMIT = 50;

    public static final MistakesOptions USUAL = new MistakesOptions(USUAL_LIMIT, Severity.NOTE, false);

    private static final int HIGHEST_LIMIT = 10_000;

    public MistakesOptions {
        limit = orUsual(limit);
        severity = orNote(severity);
        details = orFalse(details);
        new InputErrors().range("/limit", (double) limit, 1, HIGHEST_LIMIT).reject();
    }

    private static Integer orUsual(@Nullable Integer value) {
        return value == null ? USUAL_LIMIT : value;
    }

    private static Severity orNote(@Nullable Severity value) {
        return value == null ? Severity.NOTE : value;
    }

    private static Boolean orFalse(@Nullable Boolean value) {
        return value != null && value;
    }
}
