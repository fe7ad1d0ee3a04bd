package loomwright.backfeed;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Map;
import loomwright.answer.Severity;
import loomwright.circuit.fault.SingleFault;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What is fed though it should not be.
 *
 * @param plan its name
 * @param extent what was looked at, and what was not
 * @param unintendedFeeds one for each load concerned, worst first
 * @param notListed how many loads are not told, because they are beyond the limit or less serious than asked for
 * @param reversedWires wires that carry current against their feed direction, strongest first
 * @param withFaults the single faults that bring about more, worst first; empty if not asked for
 * @param cure remedies that help together; absent if not asked for, or if none helps
 */
public record BackfeedReport(
        String plan,
        Extent extent,
        List<UnintendedFeed> unintendedFeeds,
        int notListed,
        List<ReversedWire> reversedWires,
        List<FaultFeeds> withFaults,
        @Nullable Cure cure) {
    /** The same of a plan of another name with the same circuit. */
    public BackfeedReport named(String name) {
        return new BackfeedReport(name, extent, unintendedFeeds, notListed, reversedWires, withFaults, cure);
    }

    /** The same with a cure, and with remedies judged beside it. */
    BackfeedReport with(List<UnintendedFeed> feeds, Cure found) {
        return new BackfeedReport(plan, extent, feeds, notListed, reversedWires, withFaults, found);
    }

    /**
     * Remedies that help together.
     *
     * @param changes what to do, in this order
     * @param cures ids of the loads that are no longer fed, worst first
     * @param remaining ids of the loads that still are, worst first
     * @param extent what was looked at in the cured plan
     * @param patch all changes as one JSON Patch of the plan (RFC 6902)
     */
    public record Cure(
            List<Message> changes,
            List<String> cures,
            List<String> remaining,
            Extent extent,
            List<PatchOperation> patch) {}

    /**
     * What was looked at.
     *
     * @param combinations how many combinations of switch and contact positions the plan has; the largest long if there are more
     * @param combinationsSearched how many of them were gone through, in all seven steps
     * @param combinationsSolved of how many of them all figures were worked out, for the checks of a review: the plan as drawn,
     *     each switch moved alone, those in which wires carry most, and others
     * @param heldSwitches the switches and contacts that were left as drawn, because there are too many combinations
     * @param switchMoves how many switches were moved in a row, with the key turned in any way between, to find a relay that
     *     stays in
     * @param switchMovesComplete whether no longer sequence shows anything more
     * @param remediesLeft changes to the plan that were not tried as remedies
     * @param faultsLeft single faults that there was no time to search
     */
    public record Extent(
            long combinations,
            long combinationsSearched,
            int combinationsSolved,
            List<String> heldSwitches,
            int switchMoves,
            boolean switchMovesComplete,
            int remediesLeft,
            int faultsLeft) {
        /** As far as the search for feeds alone went. */
        static Extent ofSearch(
                long combinations, long searched, List<String> heldSwitches, int switchMoves, boolean movesComplete) {
            return new Extent(combinations, searched, 0, heldSwitches, switchMoves, movesComplete, 0, 0);
        }

        Extent with(int solved, int remedies, int faults) {
            return new Extent(
                    combinations,
                    combinationsSearched,
                    solved,
                    heldSwitches,
                    switchMoves,
                    switchMovesComplete,
                    remedies,
                    faults);
        }

        /** Whether every combination was gone through. */
        public boolean searchedAll() {
            return combinations == combinationsSearched;
        }
    }

    /**
     * A load that is live at times when it should not be.
     *
     * @param load id of the part
     * @param label what a person calls it
     * @param verdict what it does in the occurrence that matters most
     * @param combinations in how many it is fed in some step
     * @param occurrences for each step the strongest and the one with the fewest switches changed; that of the verdict first
     * @param remedies those that work and restore most loads, cheapest in volts first; none are looked for against a trickle. Where
     *     a cure is asked for, they are judged on the plan with everything made that cures other loads
     * @param clues patterns of sneak circuit analysis in the occurrence of the verdict
     */
    public record UnintendedFeed(
            String load,
            String label,
            Severity severity,
            Message verdict,
            int combinations,
            List<Occurrence> occurrences,
            List<Remedy> remedies,
            List<Clue> clues) {
        /** The same with other remedies. */
        UnintendedFeed with(List<Remedy> others) {
            return new UnintendedFeed(load, label, severity, verdict, combinations, occurrences, others, clues);
        }

        /** The occurrence that the verdict speaks of. */
        public Occurrence main() {
            return occurrences.get(0);
        }
    }

    /**
     * What one fault brings about.
     *
     * @param description what is wrong
     * @param unintendedFeeds each load that does more than without the fault, in the combination that feeds it most
     */
    public record FaultFeeds(
            SingleFault.Kind kind, List<String> ids, Message description, List<UnintendedFeed> unintendedFeeds) {}

    /**
     * One time at which it is live.
     *
     * @param switches where the free switches and the contacts stand
     * @param changes those of them that do not stand as drawn
     * @param after what is done to get there, for the {@code after} of a solution
     * @param remembered whether it comes of a relay that stays in after a switch has moved back
     * @param paths ways of the current, strongest first; empty where they are not asked for
     * @param pathsComplete whether they account for all of the current but a hundredth
     */
    public record Occurrence(
            Step step,
            String description,
            Map<String, String> switches,
            Map<String, String> changes,
            List<String> after,
            boolean remembered,
            @JsonUnwrapped LoadLevel level,
            List<FeedPath> paths,
            boolean pathsComplete) {
        /** The same without the ways of its current. */
        Occurrence withoutPaths() {
            return new Occurrence(step, description, switches, changes, after, remembered, level, List.of(), false);
        }
    }

    /**
     * How strongly the load is fed.
     *
     * @param activity how strongly it is fed
     * @param pulledIn whether it is a relay or solenoid that is pulled in now
     * @param effectiveV the voltage it acts on
     * @param operateV from which it operates
     * @param releaseV below which it has surely let go
     * @param currentA through it
     */
    public record LoadLevel(
            FeedStrength activity,
            boolean pulledIn,
            double effectiveV,
            double operateV,
            double releaseV,
            double currentA) {}

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
     * @param change what to do
     * @param effect what comes of it
     * @param at the wire or part it is done to
     * @param costV the most that a load loses in a step in which it should be live; 0 if less than a hundredth
     * @param costs all loads that lose more than a hundredth of a volt in a step in which they should be live
     * @param remainingV the most that the load still gets while it should be dead, a trickle; 0 if it is dead
     * @param restoredLoads ids of loads that are meant to work and did not, at some time, but for the remedy
     * @param patch the change as a JSON Patch of the plan (RFC 6902)
     */
    public record Remedy(
            Kind kind,
            Message change,
            Message effect,
            String at,
            double costV,
            List<Cost> costs,
            double remainingV,
            List<String> restoredLoads,
            List<PatchOperation> patch) {

        /** The same as a change of another plan. */
        Remedy with(List<PatchOperation> other) {
            return new Remedy(kind, change, effect, at, costV, costs, remainingV, restoredLoads, other);
        }

        /** What kind of change. */
        public enum Kind {
            /** A joint or an earth is made good. */
            REPAIR,
            /** A second pole of the master switch opens a feed together with the battery. */
            SECOND_POLE,
            RELAY,
            DIODE,
            MOVE,
            REMOVE,
            SEPARATE_EARTH;

            /** Whether it needs a contact that the plan does not show to be there: the bypass contact of a solenoid. */
            boolean depends() {
                return this == MOVE;
            }

            /**
             * Of two that cost the same what mends comes first, then what removes before what adds, and a diode before a relay.
             */
            int effort() {
                return switch (this) {
                    case REPAIR -> 0;
                    case REMOVE -> 1;
                    case MOVE -> 2;
                    case SEPARATE_EARTH -> 3;
                    case DIODE -> 4;
                    case SECOND_POLE -> 5;
                    case RELAY -> 6;
                };
            }
        }
    }

    /**
     * One operation of a JSON Patch.
     *
     * @param op {@code test}, {@code add}, {@code replace} or {@code remove}
     * @param path JSON pointer into the plan
     * @param value a part, a wire, or the id that is tested; absent for a removal
     */
    public record PatchOperation(
            String op, String path, @Nullable Object value) {}

    /** What a remedy costs one load in one step. */
    public record Cost(String load, Step step, double beforeV, double afterV) {
        double lossV() {
            return beforeV - afterV;
        }
    }

    /**
     * A pattern of classic sneak circuit analysis.
     *
     * @param message its code is the pattern
     * @param ids the parts and wires that make it up
     */
    public record Clue(Message message, List<String> ids) {

        public Pattern pattern() {
            return (Pattern) message.code();
        }

        /** The patterns. */
        public enum Pattern implements MessageCode {
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
