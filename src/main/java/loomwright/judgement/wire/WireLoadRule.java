package loomwright.judgement.wire;

import loomwright.answer.Basis;
import loomwright.judgement.Ratio;
import loomwright.judgement.Verdict;

/** A lasting current against what a wire may carry. */
public final class WireLoadRule {
    /** From this multiple of its ampacity on a wire burns: the heat is twice what its insulation stands. */
    public static final double DANGER_RATIO = 1.5;

    public static final Basis BASIS = Basis.computed(
            "lasting current at most the ampacity of the wire; above 1.5 of it a danger",
            "33 CFR 183.425 Table 5; heat by the square of the current");

    private WireLoadRule() {}

    /**
     * Judges a lasting current.
     *
     * @param currentA 0 or more
     * @param ampacityA of the wire as it lies, 0 or more
     */
    public static Verdict judge(double currentA, double ampacityA) {
        Ratio ratio = currentA == 0
                ? new Ratio(0)
                : ampacityA > 0 ? Ratio.of(currentA, ampacityA) : new Ratio(Double.POSITIVE_INFINITY);
        return new Verdict("wire-load", ratio.level(DANGER_RATIO), ratio.borderline(), currentA, ampacityA, BASIS);
    }
}
