package loomwright.judgement;

import loomwright.answer.Basis;

/**
 * One judged figure.
 *
 * @param code stable name of the rule that judged, such as {@code voltage-drop}
 * @param level how it stands
 * @param borderline whether it lies within a tenth of a limit
 * @param value what was judged, in the unit of the rule
 * @param limit the limit it was held to, in the same unit
 * @param basis where the limit comes from
 */
public record Verdict(String code, Level level, boolean borderline, double value, double limit, Basis basis) {

    /** Value over limit; infinite where the limit is 0 and the value is not. */
    public double ratio() {
        return value == 0 ? 0 : value / limit;
    }

    /** A value that must not exceed its limit. */
    public static Verdict ofMost(String code, double value, double limit, double dangerRatio, Basis basis) {
        Ratio ratio = Ratio.of(value, limit);
        return new Verdict(code, ratio.level(dangerRatio), ratio.borderline(), value, limit, basis);
    }
}
