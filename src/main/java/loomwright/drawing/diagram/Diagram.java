package loomwright.drawing.diagram;

import java.util.List;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanSolver;
import loomwright.operation.Reader;
import loomwright.operation.Step;

/** The circuit diagram of a plan in one step. */
public final class Diagram {
    private Diagram() {}

    /**
     * Draws a plan that a person handed in. The places of parts and wires are the same in all steps; only marks make a
     * difference to them.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plan, or OVER_LIMIT if its switches make too many
     *     combinations to look for findings or backfeed
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Drawing of(Plan plan, DiagramOptions options, BackfeedLimits limits, NetworkLimits networkLimits) {
        PlanAnswer.requireSound(plan);
        Markings markings = Markings.of(plan, options, limits, networkLimits);
        Plan drawn = markings.plan();
        StepReadings readings = readings(drawn, options.step(), networkLimits);
        Scene scene = new Scene(drawn, readings, markings.marks(), markings.fed());
        String title = options.title();
        return Sheet.of(scene, title == null ? plan.name() : title, markings.changed());
    }

    static StepReadings readings(Plan plan, Step step, NetworkLimits limits) {
        List<StepReadings> steps =
                Reader.read(plan, new PlanSolver(limits).solve(plan)).steps();
        return steps.get(step.ordinal());
    }
}
