package loomwright.ignition.ballast;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import loomwright.answer.Finding;
import loomwright.ignition.FeedNeed;
import loomwright.judgement.Level;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * The ballast, and the tap, for what was wanted.
 *
 * @param ballastOhm the ballast at its temperature; absent if none gives what is wanted
 * @param needsBallast whether a coil of so many ohms is made for use with a ballast at all
 * @param conclusion the answer in a sentence
 * @param without what the coil has without a ballast; absent if it is not made for that
 * @param exact what that ballast gives; absent with it
 * @param nearest standard and common values with what each gives, the nearest of each series first
 * @param tap where the bypass has to feed; absent unless a cranking voltage was wanted and a ballast found
 * @param feedNeed what feed wire and fuse have to carry with that ballast; absent with it
 * @param findings what is wrong with that ballast over all conditions, the most serious first
 */
public record ChoiceResult(
        @Nullable Double ballastOhm,
        boolean needsBallast,
        Message conclusion,
        @Nullable Gives without,
        @Nullable Gives exact,
        List<Standard> nearest,
        @Nullable Tap tap,
        @Nullable FeedNeed feedNeed,
        List<Finding> findings) {
    public ChoiceResult {
        findings = List.copyOf(findings);
        nearest = List.copyOf(nearest);
    }

    /**
     * What a ballast gives with the key on, contacts closed, and in the other conditions.
     *
     * @param crankingCoilV while cranking, the bypass open
     * @param runningCoilV running, contacts closed
     * @param runningCoilHeatW running, contacts closed
     * @param ratingToBuyW what the ballast should be made for
     * @param level the worst that is found over all conditions
     * @param verdict the coil's volts with the key on against the window of its kind
     */
    public record Gives(
            double ballastOhm,
            @JsonUnwrapped KeyOnFigures keyOn,
            double crankingCoilV,
            double runningCoilV,
            double runningCoilHeatW,
            double ratingToBuyW,
            Level level,
            FeedState.Verdict verdict) {}

    /** With the key on and the contacts closed. */
    public record KeyOnFigures(double coilV, double coilA, double coilHeatW, double ballastHeatW) {}

    /** One value that can be had. */
    public record Standard(Series series, Gives gives) {}

    /** Where values come from. */
    public enum Series {
        E12,
        E24,
        /** Values that ballasts of the trade commonly have. */
        COMMON
    }

    /**
     * Where the bypass feeds.
     *
     * @param reached whether the wanted voltage can be had; if not, the figures are those of the nearer end
     * @param beforeTapOhm of the elements that the bypass takes out
     * @param afterTapOhm of those that stay in
     * @param conclusion the answer in a sentence
     */
    public record Tap(
            boolean reached,
            double beforeTapOhm,
            double afterTapOhm,
            double crankingCoilV,
            double crankingCoilA,
            Message conclusion) {}
}
