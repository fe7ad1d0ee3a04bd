package loomwright.backfeed.sneak;

import java.util.List;
import java.util.Map;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.circuit.fault.SingleFault;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;

/**
 * What the exhaustive search found.
 *
 * @param plan its name
 * @param combinations of switch and contact positions, all of them gone through in every step
 * @param faults single faults with which all of these were gone through again; 0 if not asked for
 * @param solvedInFull how many of all these the quick solution left to the full one
 * @param complete whether every smallest combination was followed; false where there were too many to follow
 * @param sneaks one for each load and path, worst first
 * @param withFaults the faults that bring about more, worst first
 */
public record SneakReport(
        String plan,
        int combinations,
        int faults,
        int solvedInFull,
        boolean complete,
        List<Sneak> sneaks,
        List<FaultSneaks> withFaults) {

    /**
     * One load that is fed unasked, by one path.
     *
     * @param load id of the part
     * @param called what a person calls it
     * @param verdict in words, of the strongest occurrence
     * @param combinations in how many it is fed unasked in some step, by whatever path
     * @param path that of most of its current, in the first of the occurrences
     * @param occurrences for each step the combination with the fewest changes that shows it by this path
     * @param clues what is typical of it
     */
    public record Sneak(
            String load,
            String called,
            Severity severity,
            String verdict,
            int combinations,
            FeedPath path,
            List<SneakOccurrence> occurrences,
            List<Clue> clues) {}

    /**
     * One time at which it is fed.
     *
     * @param changes the switches and contacts that do not stand as drawn; empty: as drawn
     * @param switches where all open switches and contacts stand
     * @param operated whether it is a relay or solenoid that is pulled in now
     * @param effectiveV the voltage it acts on
     */
    public record SneakOccurrence(
            Step step,
            String words,
            Map<String, String> changes,
            Map<String, String> switches,
            FeedStrength activity,
            boolean operated,
            double effectiveV,
            double currentA) {}

    /**
     * What one fault brings about.
     *
     * @param words what is wrong
     * @param sneaks each load that is fed more strongly than without the fault, in the combination of fewest changes that
     *     feeds it most strongly
     */
    public record FaultSneaks(SingleFault.Kind kind, List<String> ids, String words, List<Sneak> sneaks) {}

    /**
     * A pattern of classic sneak circuit analysis.
     *
     * @param ids the parts and wires that make it up
     */
    public record Clue(Kind kind, List<String> ids, String text) {

        /** The patterns. */
        public enum Kind {
            /** A plain line from source to return: meant dead by the plan's word, but nothing odd about the circuit. */
            LINE,
            /** Two feeds meet at the load (the Y). */
            POWER_DOME,
            /** The load's current parts between two returns (the inverted Y). */
            GROUND_DOME,
            /** A contact in the feed and another in the return (the X where both are shared). */
            SWITCHED_FEED_AND_EARTH,
            /** A cross-tie between two circuits that carries current now one way, now the other. */
            H_PATTERN,
            CURRENT_REVERSAL,
            THROUGH_ANOTHER_LOAD,
            TIMING,
            INDICATION,
            LABEL
        }
    }
}
