package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanSolver;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every path and every remedy, on all plans with unintended feeds. */
class B06_PathsAndRemediesTest {
    static Stream<Plan> plans() {
        return Stream.of(
                Plans.example("sandpiper-unguarded-bypass"),
                Plans.example("sandpiper-as-built"),
                Plans.named("ignition-relay-and-charge-lamp"),
                Plans.named("lost-common-earth"),
                Plans.named("relay-held-through-lamp"),
                Plans.named("two-feeds-one-switch"));
    }

    @ParameterizedTest
    @MethodSource("plans")
    void thePathsOfALoadAddUpToItsCurrent(Plan plan) {
        for (Occurrence occurrence : occurrences(plan)) {
            assertThat(occurrence.paths()).isNotEmpty();
            assertThat(occurrence.pathsComplete()).isTrue();
            double sumA =
                    occurrence.paths().stream().mapToDouble(FeedPath::currentA).sum();
            assertThat(sumA)
                    .isCloseTo(
                            occurrence.level().currentA(),
                            within(0.011 * occurrence.level().currentA()));
        }
    }

    @ParameterizedTest
    @MethodSource("plans")
    void noPathTakesMoreThanABranchOnItCarries(Plan plan) {
        for (Occurrence occurrence : occurrences(plan)) {
            for (FeedPath path : occurrence.paths()) {
                assertThat(path.steps())
                        .allSatisfy(s -> assertThat(s.currentA()).isGreaterThanOrEqualTo(path.currentA() * (1 - 1e-9)));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("plans")
    void everyRemedyToldReallyRemovesTheFeedButForATrickle(Plan plan) {
        PlanSolver solver = new PlanSolver(NetworkLimits.defaults());
        Survey survey = Searched.survey(plan, solver);
        Map<String, List<Occurrence>> all = Searched.of(plan).report().unintendedFeeds().stream()
                .collect(Collectors.toMap(UnintendedFeed::load, UnintendedFeed::occurrences));
        for (UnintendedFeed feed : Searched.of(plan).report().unintendedFeeds()) {
            Map<Message, Remedy> told = feed.remedies().stream().collect(Collectors.toMap(Remedy::change, r -> r));
            Consumer load = (Consumer) plan.findPart(feed.load()).orElseThrow();
            RemedyCandidates.list(plan, survey, load, all).stream()
                    .filter(c -> told.containsKey(c.change()))
                    .forEach(c -> {
                        double trickleV = trickleV(Searched.of(c.changed().get()), feed.load());
                        double toldV =
                                Objects.requireNonNull(told.get(c.change())).remainingV();
                        assertThat(toldV).as(c.change().text()).isGreaterThanOrEqualTo(trickleV);
                        assertThat(toldV > 0).as(c.change().text()).isEqualTo(trickleV > 0);
                    });
        }
    }

    /** What a load still gets while it should be dead. */
    private static double trickleV(Searched changed, String load) {
        changed.find(load).ifPresent(f -> assertThat(f.severity()).isEqualTo(Severity.NOTE));
        return changed.find(load).stream()
                .flatMap(f -> f.occurrences().stream())
                .mapToDouble(o -> o.level().effectiveV())
                .max()
                .orElse(0);
    }

    private static List<Occurrence> occurrences(Plan plan) {
        return Searched.of(plan).report().unintendedFeeds().stream()
                .flatMap(f -> f.occurrences().stream())
                .toList();
    }
}
