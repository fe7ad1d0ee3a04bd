package loomwright.backfeed;

import java.util.List;
import java.util.Map;
import loomwright.answer.Severity;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What is fed though it should not be.
 *
 * @param plan its name
 * @param combinations how many combinations of switch and contact positions were solved
 * @param unintendedFeeds one for each load concerned, worst first
 * @param reversedWires wires that carry current against their feed direction, strongest first
 */
public record BackfeedReport(
        String plan, int combinations, List<UnintendedFeed> unintendedFeeds, List<ReversedWire> reversedWires) {
    /** The same of a plan of another name with the same circuit. */
    public BackfeedReport named(String name) {
        return new BackfeedReport(name, combinations, unintendedFeeds, reversedWires);
    }

    /**
     * A load that is live at times when it is not meant to be.
     *
     * @param load id of the part
     * @param called what a person calls it
     * @param verdict in words, of the worst occurrence
     * @param occurrences the worst of each step
     * @param remedies those that work and restore most loads, cheapest in volts first; none are looked for against a trickle
     */
    public record UnintendedFeed(
            String load,
            String called,
            Severity severity,
            String verdict,
            List<Occurrence> occurrences,
            List<Remedy> remedies) {}

    /**
     * One time at which it is live.
     *
     * @param switches where the free switches and the contacts stand
     * @param activity how strongly it is fed
     * @param operated whether it is a relay or solenoid that is pulled in now
     * @param effectiveV the voltage it acts on
     * @param operateV from which it operates
     * @param releaseV below which it has surely let go
     * @param currentA through it
     * @param paths ways of the current, strongest first
     * @param pathsComplete whether they account for all of the current but a hundredth
     */
    public record Occurrence(
            Step step,
            String words,
            Map<String, String> switches,
            FeedStrength activity,
            boolean operated,
            double effectiveV,
            double operateV,
            double releaseV,
            double currentA,
            List<FeedPath> paths,
            boolean pathsComplete) {}

    /**
     * One way of the current, in the direction of feed: from the live pole of the source through the load and back. With
     * the positive pole earthed the current itself flows the other way.
     *
     * @param currentA the part of the load's current that takes it
     */
    public record FeedPath(double currentA, List<PathStep> steps) {}

    /**
     * One branch of a path.
     *
     * @param from terminal nearer the live pole
     * @param to terminal nearer the return
     * @param currentA in the whole branch
     * @param againstFeed whether it is a directed wire that the current takes backwards
     */
    public record PathStep(
            Branch.Owner owner, String id, String from, String to, double currentA, boolean againstFeed) {}

    /** A directed wire that feeds from its {@code to} to its {@code from}, at its strongest. */
    public record ReversedWire(String wire, Step step, Map<String, String> switches, double currentA) {}

    /**
     * A change to the plan that was tried and works: the feed vanishes but for a trickle, nothing else gets more than a
     * trickle that it did not get before, every load still does what it did, and none that gets too little gets less.
     *
     * @param change what to do, in words
     * @param at the wire or part it is done to
     * @param costV the most that a load loses in a step in which it is meant to be live; 0 if less than a hundredth
     * @param costAt that load and step, in words; absent if nothing is lost
     * @param costs all loads that lose more than a hundredth of a volt in a step in which they are meant to be live
     * @param remainingV the most that the load still gets while it should be dead, a trickle; 0 if it is dead
     * @param restores ids of loads that are meant to work and did not, at some time, but for the remedy
     */
    public record Remedy(
            Kind kind,
            String change,
            String at,
            double costV,
            @Nullable String costAt,
            List<Cost> costs,
            double remainingV,
            List<String> restores) {

        /** What kind of change. */
        public enum Kind {
            RELAY,
            DIODE,
            MOVE,
            REMOVE,
            SEPARATE_EARTH
        }
    }

    /** What a remedy costs one load in one step. */
    public record Cost(String load, Step step, double beforeV, double afterV) {}
}
