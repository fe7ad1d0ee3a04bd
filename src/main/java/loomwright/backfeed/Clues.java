package loomwright.backfeed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.backfeed.BackfeedReport.Clue;
import loomwright.backfeed.BackfeedReport.Clue.Pattern;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.message.Arg;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.SolvedStep;

/**
 * The patterns that sneak circuit analysis looks for, read off a solved case rather than off a drawing.
 *
 * <p>Source: the four kinds of sneak (path, timing, indication, label) and the topological patterns line, Y (power dome),
 * inverted Y (ground dome), X and H are those of MIL-STD-785B, task 205, and RADC-TR-90-109 "Integration of Sneak Analysis
 * with Design" (from memory, checked against a summary only). How a solved case is recognised to show a pattern is our own.
 */
final class Clues {
    private static final Set<String> OFF_WORDS = Set.of("off", "open", "out", "released", "0", "none");

    private final FeedCase found;
    private final Set<String> bothWays;
    private final List<Clue> clues = new ArrayList<>();

    private Clues(FeedCase found, Set<String> bothWays) {
        this.found = found;
        this.bothWays = bothWays;
    }

    /**
     * The clues of a case.
     *
     * @param bothWays from {@link #bothWays}
     */
    static List<Clue> of(FeedCase found, Set<String> bothWays) {
        Clues clues = new Clues(found, bothWays);
        clues.domes();
        clues.switched();
        clues.reversals();
        clues.throughLoads();
        if (clues.clues.isEmpty()) {
            clues.add(Pattern.LINE, Set.of());
        }
        clues.timing();
        clues.indication();
        clues.labels();
        return List.copyOf(clues.clues);
    }

    private void add(Pattern pattern, Set<String> ids, Arg... more) {
        List<Arg> arguments = new ArrayList<>(List.of(more));
        arguments.add(Arg.things(
                "things", ids.stream().map(found.solved().plan()::thing).toList()));
        clues.add(new Clue(pattern.with(arguments.toArray(Arg[]::new)), List.copyOf(ids)));
    }

    private Part part(String id) {
        return found.solved().plan().findPart(id).orElseThrow();
    }

    /** The contacts on a stretch of the path. */
    private Set<String> contacts(List<PathStep> steps) {
        return steps.stream()
                .filter(s -> s.owner() == Branch.Owner.PART && isContact(part(s.id()), s))
                .map(PathStep::id)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static boolean isContact(Part part, PathStep step) {
        if (part instanceof Relay relay) {
            String common = relay.terminal(Relay.COMMON).toString();
            return step.from().equals(common) || step.to().equals(common);
        } else if (part instanceof Solenoid solenoid) {
            String supply = solenoid.terminal(Solenoid.SUPPLY).toString();
            return step.from().equals(supply) || step.to().equals(supply);
        }
        return part instanceof Switch || part instanceof ContactBreaker || part instanceof IgnitionModule;
    }

    private List<PathStep> before(FeedPath path) {
        return path.steps().subList(0, found.loadAt(path));
    }

    private List<PathStep> after(FeedPath path) {
        return path.steps().subList(found.loadAt(path) + 1, path.steps().size());
    }

    private static Set<String> ids(List<PathStep> steps) {
        return steps.stream().map(PathStep::id).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private void domes() {
        Set<Set<String>> feeds = new LinkedHashSet<>();
        Set<Set<String>> returns = new LinkedHashSet<>();
        for (FeedPath path : found.paths().paths()) {
            feeds.add(ids(before(path)));
            returns.add(ids(after(path)));
        }
        if (feeds.size() > 1) {
            add(Pattern.POWER_DOME, differing(feeds));
        }
        if (returns.size() > 1) {
            add(Pattern.GROUND_DOME, differing(returns));
        }
    }

    private static Set<String> differing(Set<Set<String>> ways) {
        Set<String> all = new LinkedHashSet<>();
        ways.forEach(all::addAll);
        all.removeIf(id -> ways.stream().allMatch(way -> way.contains(id)));
        return all;
    }

    private void switched() {
        Set<String> feed = contacts(before(found.strongest()));
        Set<String> back = contacts(after(found.strongest()));
        if (!feed.isEmpty() && !back.isEmpty()) {
            Set<String> both = new LinkedHashSet<>(feed);
            both.addAll(back);
            add(Pattern.SWITCHED_FEED_AND_EARTH, both);
        }
    }

    private void reversals() {
        Set<String> against = new LinkedHashSet<>();
        Set<String> bars = new LinkedHashSet<>();
        for (PathStep step : found.strongest().steps()) {
            if (step.againstFeed()) {
                against.add(step.id());
            }
            if (step.owner() != Branch.Owner.PART && bothWays.contains(step.id())) {
                bars.add(step.id());
            }
        }
        if (!against.isEmpty()) {
            add(Pattern.CURRENT_REVERSAL, against);
        }
        if (!bars.isEmpty()) {
            add(Pattern.H_PATTERN, bars);
        }
    }

    /**
     * The wires and connectors that carry current one way in one setting or step and the other way in another. Steps with
     * the alternator at work are left out: that the battery is now charged, now drawn on, is no sneak.
     */
    static Set<String> bothWays(List<Survey.Moment> moments) {
        Set<String> seen = new HashSet<>();
        Set<String> both = new HashSet<>();
        for (Survey.Moment moment : moments) {
            SolvedStep solved = moment.solved();
            boolean figures = solved.solved() && !solved.step().charging();
            for (int b = 0; figures && b < solved.branches().size(); b++) {
                double currentA = solved.currentA(b);
                Branch branch = solved.branches().get(b);
                if (branch.owner() != Branch.Owner.PART && Math.abs(currentA) > FeedStrength.TRICKLE_A) {
                    String way = branch.from() + " " + branch.to() + " " + branch.id();
                    seen.add(way + (currentA > 0 ? "+" : "-"));
                    if (seen.contains(way + (currentA > 0 ? "-" : "+"))) {
                        both.add(branch.id());
                    }
                }
            }
        }
        return both;
    }

    private void throughLoads() {
        Set<String> loads = found.strongest().steps().stream()
                .filter(s -> s.owner() == Branch.Owner.PART
                        && !s.id().equals(found.load().id()))
                .filter(s -> part(s.id()) instanceof Consumer && !isContact(part(s.id()), s))
                .map(PathStep::id)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (!loads.isEmpty()) {
            add(Pattern.THROUGH_ANOTHER_LOAD, loads);
        }
    }

    private void timing() {
        SolvedStep solved = found.solved();
        if (solved.step().passing() || found.feed().pulledIn() || solved.isRace() || solved.oscillating()) {
            add(Pattern.TIMING, Set.of(), arg("step", solved.step()));
        }
    }

    private void indication() {
        if (found.load() instanceof FilamentLamp && found.feed().strength() != FeedStrength.LEAKS) {
            add(Pattern.INDICATION, Set.of(found.load().id()));
        }
    }

    private void labels() {
        for (PathStep step : found.strongest().steps()) {
            if (step.owner() == Branch.Owner.PART && part(step.id()) instanceof Switch chosen) {
                String name = chosen.in(found.solved().step().condition()).name();
                if (OFF_WORDS.contains(name.toLowerCase(Locale.ROOT))) {
                    add(Pattern.LABEL, Set.of(chosen.id()), arg("position", name));
                }
            }
        }
    }
}
