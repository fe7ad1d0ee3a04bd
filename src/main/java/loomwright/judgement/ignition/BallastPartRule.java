package loomwright.judgement.ignition;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.judgement.Level;
import loomwright.judgement.Ratio;
import loomwright.judgement.Verdict;

/** The watts that a ballast is made for against the heat in it with the key left on. */
public final class BallastPartRule {
    /** What to buy has this multiple of the heat. */
    public static final double CHOSEN_MULTIPLE = 2;

    private static final double WARNING_MULTIPLE = 1.5;
    private static final List<Double> RATINGS_W = List.of(10.0, 25.0, 50.0, 100.0, 200.0, 500.0, 1000.0);

    public static final Basis BASIS = Basis.commonPractice(
            "ballast made for at least twice its heat with the key left on; below 1.5 times a warning, below it a danger");

    private BallastPartRule() {}

    /**
     * Judges a ballast that is fitted.
     *
     * @param heatW in it, key on, contacts closed
     * @param ratingW what it is made for, above 0
     */
    public static Verdict judge(double heatW, double ratingW) {
        double multiple = heatW == 0 ? Double.POSITIVE_INFINITY : ratingW / heatW;
        Level level = multiple >= CHOSEN_MULTIPLE
                ? Level.FITS
                : multiple >= WARNING_MULTIPLE ? Level.NOTE : multiple >= 1 ? Level.WARNING : Level.DANGER;
        double limitW = ratingW / CHOSEN_MULTIPLE;
        return new Verdict("ballast-rating", level, Ratio.of(heatW, limitW).borderline(), heatW, limitW, BASIS);
    }

    /** The standard rating to buy for so much heat; 1000 W where none reaches. */
    public static double ratingToBuyW(double heatW) {
        return RATINGS_W.stream()
                .filter(w -> w >= CHOSEN_MULTIPLE * heatW)
                .findFirst()
                .orElse(RATINGS_W.get(RATINGS_W.size() - 1));
    }
}
