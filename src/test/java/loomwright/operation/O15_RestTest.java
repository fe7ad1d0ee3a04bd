package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.backfeed.RandomHarness;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.network.NetworkLimits;
import loomwright.network.NetworkSolver;
import loomwright.network.NoConvergence;
import loomwright.network.Solution;
import org.junit.jupiter.api.Test;

/**
 * Where nothing remembers its state (no relays), a circuit oscillates exactly if it has no state of rest: all states of
 * plans made at random are tried, whatever order the parts switch in.
 */
class O15_RestTest {
    private static final int PLANS = 150;
    private final NetworkSolver solver = new NetworkSolver(NetworkLimits.defaults());

    @Test
    void aCircuitThatOscillatesHasNoStateOfRest() {
        int oscillating = 0;
        for (int seed = 0; seed < PLANS; seed++) {
            Plan plan = RandomHarness.of(seed, 6, 4);
            if (!plan.listParts(Relay.class).isEmpty()) {
                continue;
            }
            for (SolvedStep solved : new PlanSolver(NetworkLimits.defaults()).solve(plan)) {
                if (solved.oscillating()) {
                    oscillating++;
                    assertThat(rests(plan, solved.step()))
                            .as("seed %s %s", seed, solved.step())
                            .isZero();
                }
            }
        }
        assertThat(oscillating).isPositive();
    }

    private int rests(Plan plan, Step step) {
        Wiring wiring = Wiring.of(plan);
        List<Threshold> thresholds = plan.parts().stream()
                .flatMap(part -> Threshold.find(part, plan.system()).stream())
                .toList();
        int rests = 0;
        for (int state = 0; state < 1 << thresholds.size(); state++) {
            Set<String> active = new HashSet<>();
            for (int i = 0; i < thresholds.size(); i++) {
                if ((state >> i & 1) == 1) {
                    active.add(thresholds.get(i).part().id());
                }
            }
            rests += isRest(wiring, step, thresholds, active) ? 1 : 0;
        }
        return rests;
    }

    private boolean isRest(Wiring wiring, Step step, List<Threshold> thresholds, Set<String> active) {
        Solution solution;
        try {
            solution = solver.solve(StepNetwork.of(wiring, step, active).network());
        } catch (NoConvergence loadsThatCannotAllBeFed) {
            return false;
        }
        return solution.solved()
                && thresholds.stream().allMatch(threshold -> {
                    boolean was = active.contains(threshold.part().id());
                    double voltageV =
                            threshold.sense().effectiveV(NodeVoltages.meterAt(threshold.part(), wiring, solution), was);
                    return threshold.activeAt(voltageV, was) == was;
                });
    }
}
