package loomwright.backfeed.sneak;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import loomwright.circuit.Consumer;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.Sweep;
import loomwright.operation.Sweep.Feed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The quick solution says of every setting what {@link PlanSolver} says of the plan so set, or leaves it to it. */
class K01_SameAsSolvingEachTest {
    private final PlanSolver solver = new PlanSolver(NetworkLimits.defaults());

    @Property(seed = "20261125", tries = 40)
    void onPlansMadeAtRandom(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 10) int switches, @ForAll @IntRange(max = 5) int ties) {
        // A few figures lie too close to a limit; the quick way is worth nothing if it leaves most to the other.
        assertThat(compare(RandomHarness.of(seed, switches, ties), new Random(seed), 12))
                .isLessThanOrEqualTo(6);
    }

    @ForEachExample
    void onTheExamples(String name) {
        assertThat(compare(Plans.example(name), new Random(1), 64)).isZero();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "common-earth",
                "lost-common-earth",
                "ignition-relay-and-charge-lamp",
                "relay-held-through-lamp",
                "two-feeds-one-switch"
            })
    void onPlansWithKnownBackfeeds(String name) {
        assertThat(compare(Plans.named(name), new Random(1), 64)).isZero();
    }

    /** Compares some settings and returns how many of them were left to the full solver. */
    private int compare(Plan plan, Random random, int most) {
        Settings settings = Settings.of(plan, 1 << 20);
        Sweep sweep = Sweep.of(plan, settings.open()).orElseThrow();
        List<Consumer> consumers = plan.listParts(Consumer.class);
        int left = 0;
        int tried = Math.min(most, settings.count());
        for (int i = 0; i < tried; i++) {
            int[] setting = new int[settings.open().size()];
            settings.read(settings.count() <= most ? i : random.nextInt(settings.count()), setting);
            if (!sweep.solve(setting)) {
                left++;
                continue;
            }
            List<String> quick = new ArrayList<>();
            List<String> full = new ArrayList<>();
            Plan set = settings.planAt(settings.code(setting));
            for (SolvedStep solved : solver.solve(set)) {
                for (int c = 0; c < consumers.size(); c++) {
                    boolean meant = Intent.meantLive(consumers.get(c), set, solved.step());
                    quick.add(said(solved.step(), consumers.get(c), sweep.feed(solved.step(), c)));
                    Feed judged = SneakCase.feedOf(solved, consumers.get(c));
                    full.add(said(
                            solved.step(),
                            consumers.get(c),
                            meant ? new Feed(FeedStrength.DEAD, judged.pulledIn()) : judged));
                }
            }
            assertThat(quick).isEqualTo(full);
        }
        return left;
    }

    private static String said(Step step, Consumer consumer, Feed feed) {
        return step + " " + consumer.id() + " " + feed;
    }
}
