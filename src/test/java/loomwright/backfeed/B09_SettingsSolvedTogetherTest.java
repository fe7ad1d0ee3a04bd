package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;
import loomwright.network.NetworkLimits;
import loomwright.operation.Branch;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** The settings of a plan share what they have in common, and each comes out to the last digit as if solved alone. */
class B09_SettingsSolvedTogetherTest {
    private static final double SHORT_OHM = 0.001;

    private final PlanSolver solver = new PlanSolver(NetworkLimits.defaults());

    /** All that a step shows. */
    private record Figures(
            boolean solved,
            boolean oscillating,
            boolean timingDecides,
            Set<String> oscillatingParts,
            List<Branch> branches,
            List<Double> currentsA,
            List<OptionalDouble> voltagesV,
            List<Boolean> active) {
        static Figures of(SolvedStep step, Plan plan) {
            List<Double> currentsA = new ArrayList<>();
            List<OptionalDouble> voltagesV = new ArrayList<>();
            if (step.solved()) {
                for (int i = 0; i < step.branches().size(); i++) {
                    currentsA.add(step.currentA(i));
                }
                for (int node = 0; node < step.nodeNames().size(); node++) {
                    voltagesV.add(step.voltageV(node));
                }
            }
            return new Figures(
                    step.solved(),
                    step.oscillating(),
                    step.isRace(),
                    step.movingParts(),
                    step.branches(),
                    currentsA,
                    voltagesV,
                    plan.parts().stream().map(step::isActive).toList());
        }
    }

    @Property(seed = "20261126", tries = 25)
    void eachSettingComesOutAsIfSolvedAlone(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 5) int switches, @ForAll @IntRange(max = 4) int ties) {
        Plan plan = RandomHarness.of(seed, switches, ties);
        PlanSettings settings = solver.settings(plan);
        for (Situation situation : Situations.list(plan, 1 << 10)) {
            assertThat(figures(settings.solve(situation.plan()), plan))
                    .isEqualTo(figures(solver.solve(situation.plan()), plan));
        }
    }

    @Property(seed = "20261127", tries = 25)
    void aWireShortedComesOutAsInAPlanWithThatShortDrawn(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 4) int switches, @ForAll @IntRange(max = 4) int ties) {
        Plan plan = RandomHarness.of(seed, switches, ties);
        PlanSettings settings = solver.settings(plan);
        for (Wire wire : plan.wires()) {
            List<Double> currentsA = new ArrayList<>();
            Iterator<SolvedStep> steps = settings.stepsJoinedToChassis(plan, wire.to(), "short", SHORT_OHM);
            steps.forEachRemaining(s -> currentsA.add(s.solved() ? s.currentA(wire) : Double.NaN));
            assertThat(currentsA).as(wire.id()).isEqualTo(drawn(plan, wire));
        }
    }

    private List<Figures> figures(List<SolvedStep> steps, Plan plan) {
        return steps.stream().map(step -> Figures.of(step, plan)).toList();
    }

    /** The current of a wire in each step of a copy of the plan, with its end on an earth point. */
    private List<Double> drawn(Plan plan, Wire wire) {
        EarthPoint earth = new EarthPoint("shorted-to", null, 0.0);
        List<Part> parts = new ArrayList<>(plan.parts());
        List<Wire> wires = new ArrayList<>(plan.wires());
        parts.add(earth);
        wires.add(Wire.ofResistance("short", wire.to(), earth.terminal(EarthPoint.TERMINAL), SHORT_OHM));
        return solver.solve(plan.with(parts, wires)).stream()
                .map(s -> s.solved() ? s.currentA(wire) : Double.NaN)
                .toList();
    }
}
