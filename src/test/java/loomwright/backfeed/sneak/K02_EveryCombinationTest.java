package loomwright.backfeed.sneak;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import loomwright.backfeed.Situations;
import loomwright.backfeed.Situations.Situation;
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.backfeed.sneak.SneakReport.SneakOccurrence;
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

/** The search finds what is found by solving every combination one by one: no load and step more, none less. */
class K02_EveryCombinationTest {
    private final PlanSolver solver = new PlanSolver(NetworkLimits.defaults());

    @Property(seed = "20261125", tries = 25)
    void eachLoadFedUnaskedIsFoundWithTheFewestChangesThatShowIt(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 5) int switches, @ForAll @IntRange(max = 4) int ties) {
        Plan plan = RandomHarness.of(seed, switches, ties);
        assertThat(found(SneakPlans.search(plan))).isEqualTo(oneByOne(plan));
    }

    /** Load and step, with the fewest changes. */
    private static Map<String, Integer> found(SneakReport report) {
        Map<String, Integer> fewest = new TreeMap<>();
        for (Sneak sneak : report.sneaks()) {
            for (SneakOccurrence occurrence : sneak.occurrences()) {
                fewest.merge(
                        sneak.load() + " " + occurrence.step(),
                        occurrence.changes().size(),
                        Math::min);
            }
        }
        return fewest;
    }

    private Map<String, Integer> oneByOne(Plan plan) {
        Map<String, Integer> fewest = new TreeMap<>();
        for (Situation situation : Situations.list(plan, 1 << 10)) {
            for (SolvedStep solved : solver.solve(situation.plan())) {
                for (Consumer consumer : plan.listParts(Consumer.class)) {
                    if (solved.solved()
                            && !Intent.meantLive(consumer, situation.plan(), solved.step())
                            && solved.activity(consumer) != FeedStrength.DEAD) {
                        fewest.merge(consumer.id() + " " + solved.step(), situation.changes(), Math::min);
                    }
                }
            }
        }
        return fewest;
    }
}
