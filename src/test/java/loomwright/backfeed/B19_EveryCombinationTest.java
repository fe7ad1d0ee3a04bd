package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/**
 * The search finds what is found by solving every combination one by one: no load and step more, none less, with the fewest
 * changes that show it and as strongly as it ever is.
 */
class B19_EveryCombinationTest {
    private final PlanSolver solver = new PlanSolver(NetworkLimits.defaults());

    @Property(seed = "20261125", tries = 25)
    void eachLoadIsFoundWithTheFewestChangesAndAtItsStrongest(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 5) int switches, @ForAll @IntRange(max = 4) int ties) {
        Plan plan = RandomHarness.of(seed, switches, ties);
        Map<String, Integer> fewest = new TreeMap<>();
        Map<String, Feed> strongest = new TreeMap<>();
        for (Situation situation : Situations.list(plan, 1 << 10)) {
            for (SolvedStep solved : solver.solve(situation.plan())) {
                for (Consumer consumer : plan.listParts(Consumer.class)) {
                    if (solved.solved()
                            && !Intent.meantLive(consumer, situation.plan(), solved.step())
                            && solved.activity(consumer) != FeedStrength.DEAD) {
                        String where = consumer.id() + " " + solved.step();
                        fewest.merge(where, situation.changes(), Math::min);
                        strongest.merge(where, Feed.of(solved, consumer), (a, b) -> a.compareTo(b) <= 0 ? a : b);
                    }
                }
            }
        }
        Map<String, Integer> fewestFound = new TreeMap<>();
        Map<String, Feed> strongestFound = new TreeMap<>();
        for (UnintendedFeed feed : SwitchPlans.search(plan).unintendedFeeds()) {
            for (Occurrence one : feed.occurrences()) {
                if (!one.remembered()) {
                    String where = feed.load() + " " + one.step();
                    fewestFound.merge(where, one.changes().size(), Math::min);
                    strongestFound.merge(
                            where,
                            new Feed(
                                    one.level().activity(),
                                    one.level().pulledIn(),
                                    one.level().effectiveV()),
                            (a, b) -> a.compareTo(b) <= 0 ? a : b);
                }
            }
        }
        assertThat(fewestFound).isEqualTo(fewest);
        assertThat(strongestFound.keySet()).isEqualTo(strongest.keySet());
        strongest.forEach((where, feed) -> assertThat(
                        Objects.requireNonNull(strongestFound.get(where)).compareTo(feed))
                .as(where)
                .isZero());
    }
}
