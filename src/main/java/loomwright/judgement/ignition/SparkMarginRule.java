package loomwright.judgement.ignition;

import loomwright.answer.Basis;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;

/**
 * Available over required kilovolts. The middle of the published formulas carries the verdict; where their band straddles
 * a limit the verdict is borderline.
 */
public final class SparkMarginRule {
    /** A sound system keeps this. */
    public static final double RESERVE = 1.5;
    /** From this share of the wanted reserve on it is a note: 1.2 of 1.5. */
    private static final double NOTE_SHARE = 0.8;

    public static final Basis BASIS = Basis.commonPractice(
            "available over required kilovolts: from 1.5 good, from 1.2 a note, from 1.0 a warning; below the lowest formula a"
                    + " danger");

    private SparkMarginRule() {}

    /**
     * Judges a margin.
     *
     * @param availableV what the coil can raise
     * @param requiredV the middle of what the formulas ask for, above 0
     * @param lowestV the least of them
     * @param highestV the greatest of them
     * @param reserve what is wanted, at least 1
     */
    public static Verdict judge(double availableV, double requiredV, double lowestV, double highestV, double reserve) {
        Level level = level(availableV / requiredV, reserve);
        boolean straddles = level(availableV / lowestV, reserve) != level(availableV / highestV, reserve);
        Level said = availableV < lowestV ? Level.DANGER : level;
        return new Verdict("spark-margin", said, straddles, availableV / requiredV, reserve, BASIS);
    }

    private static Level level(double ratio, double reserve) {
        if (ratio >= reserve) {
            return Level.FITS;
        }
        return ratio >= Math.max(1, NOTE_SHARE * reserve) ? Level.NOTE : Level.WARNING;
    }
}
