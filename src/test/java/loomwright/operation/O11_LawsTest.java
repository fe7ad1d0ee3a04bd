package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Wire;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds in every step of every plan: Kirchhoff's laws, power balance, and that names and order do not matter. */
class O11_LawsTest {
    @ForEachExample
    void currentsSumToZeroAtEachNodeAndPowersOverall(String name) {
        for (SolvedStep solved : Solved.of(Plans.example(name)).steps()) {
            double[] sumA = new double[solved.nodeNames().size()];
            double largestA = 0;
            double powerW = 0;
            double amountW = 0;
            for (int i = 0; i < solved.branches().size(); i++) {
                double currentA = solved.currentA(i);
                Branch branch = solved.branches().get(i);
                sumA[branch.fromNode()] -= currentA;
                sumA[branch.toNode()] += currentA;
                largestA = Math.max(largestA, Math.abs(currentA));
                // Power from voltage and current, not from what the solver says it is.
                double branchW = solved.acrossV(branch.fromNode(), branch.toNode()) * currentA;
                powerW += branchW;
                amountW += Math.abs(branchW);
            }
            for (double a : sumA) {
                assertThat(Math.abs(a)).isLessThanOrEqualTo(1e-9 * largestA);
            }
            assertThat(Math.abs(powerW)).isLessThanOrEqualTo(1e-9 * amountW);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-as-built", "sandpiper-bypass-relay", "otter-6v-positive-earth"})
    void turningWiresRoundOnlyTurnsTheSignOfTheirCurrent(String name) {
        Plan plan = Plans.example(name);
        Plan turned = plan.with(
                plan.parts(),
                plan.wires().stream().map(w -> w.withEnds(w.to(), w.from())).toList());
        for (Step step : Step.values()) {
            var was = Solved.of(plan).read(step);
            var is = Solved.of(turned).read(step);
            for (int i = 0; i < was.wires().size(); i++) {
                double amountA = Math.abs(was.wires().get(i).currentA());
                assertThat(is.wires().get(i).currentA())
                        .isCloseTo(-was.wires().get(i).currentA(), within(1e-9 * Math.max(1, amountA)));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-as-built", "sandpiper-unguarded-bypass"})
    void theOrderOfPartsAndWiresDoesNotMatter(String name) {
        Plan plan = Plans.example(name);
        Plan reversed = plan.with(reversed(plan.parts()), reversed(plan.wires()));
        Solved was = Solved.of(plan);
        Solved is = Solved.of(reversed);
        for (Step step : Step.values()) {
            for (Wire wire : plan.wires()) {
                assertThat(is.in(step).acrossV(wire.from(), wire.to()))
                        .isCloseTo(was.in(step).acrossV(wire.from(), wire.to()), within(1e-8));
            }
        }
    }

    private static <T> java.util.List<T> reversed(java.util.List<T> list) {
        java.util.List<T> copy = new java.util.ArrayList<>(list);
        java.util.Collections.reverse(copy);
        return copy;
    }
}
