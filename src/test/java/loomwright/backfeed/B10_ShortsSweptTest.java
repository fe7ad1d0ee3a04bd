package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.ShortScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The quick look at shorts gives the currents of the full solution of each, or leaves them to it. */
class B10_ShortsSweptTest {
    private static final double SHORT_OHM = 0.001;
    /** A tenth of the margin that the review leaves. */
    private static final double ALIKE = 1e-4;
    /** What the leak of the quick way may bring about, A. */
    private static final double LEAK_A = 1e-6;

    private final PlanSolver solver = new PlanSolver(NetworkLimits.defaults());

    @Property(seed = "20261128", tries = 25)
    void onPlansMadeAtRandom(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 4) int switches, @ForAll @IntRange(max = 4) int ties) {
        Plan plan = RandomHarness.of(seed, switches, ties);
        // A few figures lie too close to a limit; the quick way is worth nothing if it leaves most to the other.
        assertThat(countLeft(plan))
                .isLessThanOrEqualTo(
                        Situations.list(plan, 1 << 10).size() * plan.wires().size() / 2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "sandpiper-as-built",
                "sandpiper-bypass-relay",
                "sandpiper-electronic-module",
                "otter-6v-positive-earth"
            })
    void onTheExamples(String name) {
        assertThat(countLeft(Plans.example(name))).isZero();
    }

    /** Shorts the far end of each wire in each situation, and counts the shorts that are left to the full solver. */
    private int countLeft(Plan plan) {
        PlanSettings settings = solver.settings(plan);
        List<TerminalRef> ends = plan.wires().stream().map(Wire::to).distinct().toList();
        ShortScan quick = settings.scanShorts(Situations.open(plan), ends, SHORT_OHM);
        int left = 0;
        for (Situation situation : Situations.list(plan, 1 << 10)) {
            for (Wire wire : plan.wires()) {
                Optional<Map<Step, Double>> quickA = quick.currentsA(wire, wire.to(), situation.setting());
                if (quickA.isEmpty()) {
                    left++;
                    continue;
                }
                List<SolvedStep> full = new ArrayList<>();
                settings.stepsJoinedToChassis(situation.plan(), wire.to(), "short", SHORT_OHM)
                        .forEachRemaining(full::add);
                for (SolvedStep step : full) {
                    double fullA = Math.abs(step.currentA(wire));
                    assertThat(quickA.get().get(step.step()))
                            .as("%s in %s, %s", wire.id(), step.step(), situation.positions())
                            .isCloseTo(fullA, within(LEAK_A + ALIKE * fullA));
                }
            }
        }
        return left;
    }
}
