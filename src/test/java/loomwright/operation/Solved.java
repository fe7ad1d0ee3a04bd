package loomwright.operation;

import java.util.List;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.network.NetworkLimits;
import org.jspecify.annotations.Nullable;

/** A plan's solved steps, asked in the words of a test. */
public record Solved(Plan plan, List<SolvedStep> steps) {
    public static Solved of(Plan plan) {
        return new Solved(plan, new PlanSolver(NetworkLimits.defaults()).solve(plan));
    }

    public SolvedStep in(Step step) {
        return steps.stream().filter(s -> s.step() == step).findFirst().orElseThrow();
    }

    /** The tables of a step. */
    PlanReadings.StepReadings read(Step step) {
        return Reader.read(plan, List.of(in(step)), new PlanSolver(NetworkLimits.defaults()))
                .steps()
                .get(0);
    }

    /** Volts to the chassis. */
    double voltageV(Step step, String terminal) {
        SolvedStep solved = in(step);
        return solved.voltageV(solved.node(TerminalRef.parse(terminal))).orElseThrow();
    }

    /** Volts from feed to return of a consumer. */
    double acrossV(Step step, String consumer) {
        return in(step).acrossV(consumer(consumer));
    }

    double currentA(Step step, String consumer) {
        return in(step).currentA(consumer(consumer));
    }

    boolean isActive(Step step, String part) {
        return in(step).isActive(plan.findPart(part).orElseThrow());
    }

    /** The state of a part as answers name it. */
    @Nullable
    String state(Step step, String part) {
        return read(step).parts().stream()
                .filter(p -> p.part().equals(part))
                .findFirst()
                .orElseThrow()
                .state();
    }

    FeedStrength activity(Step step, String consumer) {
        return in(step).activity(consumer(consumer));
    }

    /** Current of the branch of a part or wire between two terminals, from the first to the second. */
    double currentA(Step step, String from, String to) {
        SolvedStep solved = in(step);
        for (int i = 0; i < solved.branches().size(); i++) {
            Branch branch = solved.branches().get(i);
            if (branch.from().equals(from) && branch.to().equals(to)) {
                return solved.currentA(i);
            }
        }
        throw new AssertionError("no branch from " + from + " to " + to);
    }

    private Consumer consumer(String id) {
        return (Consumer) plan.findPart(id).orElseThrow();
    }
}
