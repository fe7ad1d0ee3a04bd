package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.BackfeedSearch.Searched;
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

/** The circuit diagram of a plan. */
public final class Diagram {
    private Diagram() {}

    /**
     * Draws a plan that a person handed in. The places of parts and wires are the same in all steps, whether they are
     * drawn together or one by one; only what is pointed out makes a difference to them.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plan
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static StepDrawings of(
            Plan given, DiagramOptions options, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        return of(
                plan,
                options,
                () -> new BackfeedSearch(limits.withoutRemedies(), networkLimits).search(plan, progress.part(0, 2)),
                networkLimits,
                progress);
    }

    /** As the other, of a plan that was searched already. */
    public static StepDrawings of(
            Searched searched, DiagramOptions options, NetworkLimits networkLimits, Progress progress) {
        return of(searched.plan(), options, () -> searched, networkLimits, progress);
    }

    private static StepDrawings of(
            Plan plan,
            DiagramOptions options,
            Supplier<Searched> search,
            NetworkLimits networkLimits,
            Progress progress) {
        Markings markings = Markings.of(plan, options, search);
        Map<Plan, Map<Step, StepReadings>> solved = new HashMap<>();
        Map<Step, Scene> scenes = new EnumMap<>(Step.class);
        markings.steps().forEach((step, shown) -> {
            Map<Step, StepReadings> readings =
                    solved.computeIfAbsent(shown.plan(), p -> readings(p, networkLimits, progress));
            Map<String, Emphasis> fed = new HashMap<>();
            shown.fed().forEach(id -> fed.put(id, Emphasis.BACKFEED));
            scenes.put(
                    step, new Scene(shown.plan(), of(readings, step), markings.marks(), shown.absent(), fed, Map.of()));
        });
        boolean anyBackfeed =
                markings.steps().values().stream().anyMatch(step -> !step.fed().isEmpty());
        return drawn(
                scenes,
                options.stepOr(Step.RUN),
                options,
                plan.name(),
                anyBackfeed ? Set.of(Emphasis.BACKFEED) : Set.of(),
                progress);
    }

    /**
     * Draws two plans as one: what is in both once, what was added, removed or changed marked and numbered, with the figures
     * of the plan after.
     *
     * @param options of which the marks are not used: what is pointed out is the change. The step is that of the worst
     *     finding unless said
     * @throws loomwright.answer.RejectedInput with all faults of both plans
     */
    public static StepDrawings compare(
            ComparisonQuestion question,
            DiagramOptions options,
            BackfeedLimits limits,
            NetworkLimits networkLimits,
            Progress progress) {
        PlanComparison comparison =
                ComparisonAnswer.of(question, limits, networkLimits, progress).result();
        return compare(question, comparison, options, networkLimits, progress);
    }

    /** The same of plans that were compared already. */
    public static StepDrawings compare(
            ComparisonQuestion question,
            PlanComparison comparison,
            DiagramOptions options,
            NetworkLimits networkLimits,
            Progress progress) {
        Compared compared = Compared.of(question, comparison);
        Map<Step, Scene> scenes = new EnumMap<>(Step.class);
        readings(question.after(), networkLimits, progress)
                .forEach((step, readings) -> scenes.put(
                        step,
                        new Scene(
                                compared.overlay().all(),
                                readings,
                                compared.marks(),
                                Set.of(),
                                compared.emphasis(),
                                compared.names())));
        return drawn(
                scenes,
                options.stepOr(WorstStep.of(comparison)),
                options,
                DiagramText.COMPARISON_TITLE
                        .with(arg("before", comparison.before()), arg("after", comparison.after()))
                        .text(),
                Set.copyOf(compared.emphasis().values()),
                progress);
    }

    private static StepDrawings drawn(
            Map<Step, Scene> scenes,
            Step shown,
            DiagramOptions options,
            String name,
            Set<Emphasis> emphasis,
            Progress progress) {
        Layout.Placed placed = Layout.place(scenes.values(), progress);
        String title = options.title() == null ? name : options.title();
        Map<Step, Drawing> drawings = new EnumMap<>(Step.class);
        scenes.forEach((step, scene) -> {
            if (step == shown || options.allSteps()) {
                drawings.put(step, Sheet.of(scene, placed, title, options.legend(), emphasis));
            }
        });
        return new StepDrawings(shown, drawings, of(scenes, shown).allMarks());
    }

    /** What there is of a step. */
    static <T> T of(Map<Step, T> steps, Step step) {
        T one = steps.get(step);
        if (one == null) {
            throw new IllegalStateException("nothing of the step " + step);
        }
        return one;
    }

    static Map<Step, StepReadings> readings(Plan plan, NetworkLimits limits, Progress progress) {
        Map<Step, StepReadings> steps = new EnumMap<>(Step.class);
        PlanSolver solver = new PlanSolver(limits, progress);
        Reader.read(plan, solver.solve(plan), solver).steps().forEach(one -> steps.put(one.step(), one));
        return steps;
    }
}
