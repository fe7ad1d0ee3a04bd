package loomwright.backfeed;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.FeedSearch.LoadCases;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.operation.FeedStrength;
import loomwright.operation.SwitchSettings;

/**
 * A load that is fed though it should not be, judged.
 *
 * @param main the case that the verdict speaks of
 * @param ownWay whether it is fed through nothing but its own closed switch, so that it is a question, not a fault
 * @param occurrences that of the verdict first
 */
record Judged(
        Consumer load,
        LoadCases cases,
        FeedCase main,
        boolean ownWay,
        Severity severity,
        List<Occurrence> occurrences) {

    static Judged of(Consumer load, LoadCases cases, NormalWays normal, SwitchSettings settings) {
        Map<Boolean, List<FeedCase>> byWay =
                cases.cases().stream().sorted(mainFirst()).collect(Collectors.partitioningBy(normal::isOwnWay));
        List<FeedCase> worstFirst = Stream.of(false, true)
                .flatMap(own -> Objects.requireNonNull(byWay.get(own)).stream())
                .toList();
        FeedCase main = worstFirst.get(0);
        boolean ownWay = Objects.requireNonNull(byWay.get(false)).isEmpty();
        Severity severity = ownWay
                ? Severity.NOTE
                : Verdicts.severity(load, main.feed().strength(), main.feed().pulledIn());
        return new Judged(
                load,
                cases,
                main,
                ownWay,
                severity,
                worstFirst.stream().map(c -> c.occurrence(settings)).distinct().toList());
    }

    UnintendedFeed feed(List<Remedy> remedies, Set<String> bothWays) {
        Occurrence occurrence = occurrences.get(0);
        Plan plan = main.solved().plan();
        return new UnintendedFeed(
                load.id(),
                load.displayName(),
                severity,
                ownWay
                        ? Verdicts.question(plan, load, occurrence)
                        : Verdicts.verdict(plan, load, occurrence, main.solved().wasActive(load)),
                cases.fedIn(),
                occurrences,
                remedies,
                Clues.of(main, bothWays));
    }

    /**
     * What a load does comes first, then what begins rather than what goes on: the cause, not its consequence; then by volts and
     * the fewest switches changed.
     */
    private static Comparator<FeedCase> mainFirst() {
        return Comparator.<FeedCase, FeedStrength>comparing(c -> c.feed().strength())
                .thenComparing(c -> !c.feed().pulledIn())
                .thenComparing(c -> c.solved().wasActive(c.load()))
                .thenComparing(FeedCase::memory)
                .thenComparing(FeedCase::feed)
                .thenComparingInt(FeedCase::changes)
                .thenComparing(c -> c.solved().step());
    }
}
