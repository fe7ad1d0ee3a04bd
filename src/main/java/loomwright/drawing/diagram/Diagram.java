package loomwright.drawing.diagram;

import java.util.List;
import java.util.Set;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.comparison.ComparisonAnswer;
import loomwright.comparison.ComparisonQuestion;
import loomwright.comparison.PlanComparison;
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
    public static Drawing of(
            Plan given, DiagramOptions options, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        Markings markings = Markings.of(plan, options, limits, networkLimits, progress);
        Plan drawn = markings.plan();
        StepReadings readings = readings(drawn, options.step(), networkLimits, progress);
        Scene scene = new Scene(drawn, readings, markings.marks(), markings.fed());
        String title = options.title();
        return Sheet.of(scene, title == null ? plan.name() : title, markings.changed(), progress);
    }

    /**
     * Draws two plans side by side, and numbers what changed.
     *
     * @param options of which the marks are not used: what is pointed out is the change
     * @throws loomwright.answer.RejectedInput with all faults of both plans
     */
    public static Drawing compare(
            ComparisonQuestion question,
            DiagramOptions options,
            BackfeedLimits limits,
            NetworkLimits networkLimits,
            Progress progress) {
        PlanComparison comparison =
                ComparisonAnswer.of(question, limits, networkLimits, progress).result();
        Changes changes = Changes.of(comparison);
        Scene before = new Scene(
                question.before(),
                readings(question.before(), options.step(), networkLimits, progress),
                changes.before(),
                Set.of());
        Scene after = new Scene(
                question.after(),
                readings(question.after(), options.step(), networkLimits, progress),
                changes.after(),
                Set.of());
        String title = options.title();
        return TwoSheets.of(
                before,
                after,
                title == null ? "From " + comparison.before() + " to " + comparison.after() : title,
                changes.all(),
                progress);
    }

    static StepReadings readings(Plan plan, Step step, NetworkLimits limits, Progress progress) {
        List<StepReadings> steps =
                Reader.read(plan, new PlanSolver(limits, progress).solve(plan)).steps();
        return steps.stream().filter(one -> one.step() == step).findFirst().orElseThrow();
    }
}
