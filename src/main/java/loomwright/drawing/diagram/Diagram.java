package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.BackfeedSearch.Searched;
import loomwright.circuit.Plan;
import loomwright.comparison.ComparisonAnswer;
import loomwright.comparison.ComparisonQuestion;
import loomwright.comparison.PlanComparison;
import loomwright.message.MessageCode;
import loomwright.network.NetworkLimits;
import loomwright.operation.Move;
import loomwright.operation.MovedPlan;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanSolver;
import loomwright.operation.Reader;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/** The circuit diagram of a plan. */
public final class Diagram {
    /** A plan of more wires is drawn sheet by sheet: placed as one it becomes a band ten times as wide as high. */
    private static final int MOST_TOGETHER = 60;

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

    /** The whole, and each sheet that it can be drawn on, of a plan that was searched already. */
    public static List<StepDrawings> onSheets(
            Searched searched, DiagramOptions options, NetworkLimits networkLimits, Progress progress) {
        Whole whole = Whole.of(searched.plan(), options, () -> searched, networkLimits, progress);
        List<StepDrawings> drawings = new ArrayList<>(List.of(whole.drawn(null, options, progress)));
        whole.sheets().forEach(sheet -> drawings.add(whole.drawn(sheet, options, progress)));
        return drawings;
    }

    private static StepDrawings of(
            Plan plan,
            DiagramOptions options,
            Supplier<Searched> search,
            NetworkLimits networkLimits,
            Progress progress) {
        Whole whole = Whole.of(plan, options, search, networkLimits, progress);
        return whole.drawn(sheet(whole.sheets(), options), options, progress);
    }

    /**
     * All that is to be drawn of a plan, on one sheet or on several.
     *
     * @param shown the step to show; absent for the usual one
     * @param held parts that moves have left in another state than key and switches alone would
     */
    private record Whole(
            String name,
            Map<Step, Scene> scenes,
            @Nullable Step shown,
            List<String> held,
            Set<Emphasis> emphasis,
            List<CircuitSheet> sheets) {
        static Whole of(
                Plan plan,
                DiagramOptions options,
                Supplier<Searched> search,
                NetworkLimits networkLimits,
                Progress progress) {
            PlanSolver solver = new PlanSolver(networkLimits, progress);
            SolvedStep moved =
                    options.after().isEmpty() ? null : MovedPlan.follow(plan, Move.parse(options.after()), solver);
            Markings markings = Markings.of(plan, options, search);
            Map<Plan, Map<Step, StepReadings>> solved = new HashMap<>();
            Map<Step, Scene> scenes = new EnumMap<>(Step.class);
            markings.steps().forEach((step, shown) -> {
                // A step in which nothing is pointed out stands as the moves leave the switches.
                Plan standing = moved != null && shown.plan().equals(plan) ? moved.plan() : shown.plan();
                Map<Step, StepReadings> readings =
                        solved.computeIfAbsent(standing, p -> readings(p, networkLimits, progress));
                Map<String, Emphasis> fed = new HashMap<>();
                shown.fed().forEach(id -> fed.put(id, Emphasis.BACKFEED));
                scenes.put(
                        step,
                        new Scene(
                                standing, Diagram.of(readings, step), markings.marks(), shown.absent(), fed, Map.of()));
            });
            boolean anyBackfeed = markings.steps().values().stream()
                    .anyMatch(step -> !step.fed().isEmpty());
            List<String> held = List.of();
            if (moved != null) {
                StepReadings usual = Diagram.of(
                        solved.computeIfAbsent(moved.plan(), p -> readings(p, networkLimits, progress)), moved.step());
                StepReadings left = Reader.read(moved.plan(), List.of(moved), solver)
                        .steps()
                        .get(0);
                Scene before = Diagram.of(scenes, moved.step());
                scenes.put(moved.step(), before.with(moved.plan(), left));
                held = held(usual, left);
            }
            write(scenes, options);
            return new Whole(
                    plan.name(),
                    scenes,
                    moved == null ? options.step() : moved.step(),
                    held,
                    anyBackfeed ? Set.of(Emphasis.BACKFEED) : Set.of(),
                    CircuitSheets.of(plan));
        }

        /** The parts whose state differs between two readings of a step. */
        private static List<String> held(StepReadings usual, StepReadings left) {
            Map<String, Optional<String>> states = new HashMap<>();
            usual.parts().forEach(part -> states.put(part.part(), Optional.ofNullable(part.state())));
            return left.parts().stream()
                    .filter(part -> !Optional.ofNullable(part.state()).equals(states.get(part.part())))
                    .map(PartReading::part)
                    .toList();
        }

        /** Draws one sheet, or everything where none is given; what is too large to be placed as one, sheet by sheet. */
        StepDrawings drawn(@Nullable CircuitSheet sheet, DiagramOptions options, Progress progress) {
            Step first = shown == null ? Step.RUN : shown;
            List<CircuitSheet> apart = sheet != null
                    ? List.of(sheet)
                    : Diagram.of(scenes, first).plan().wires().size() > MOST_TOGETHER ? sheets : List.of();
            List<Map<Step, Scene>> blocks = apart.isEmpty()
                    ? List.of(scenes)
                    : apart.stream().map(this::on).toList();
            List<Layout.Placed> placed = blocks.stream()
                    .map(block -> Layout.place(block.values(), progress))
                    .toList();
            String given = options.title() == null ? name : options.title();
            String title = sheet == null ? given : given + " · " + sheet.title();
            Map<Step, Drawing> drawings = new EnumMap<>(Step.class);
            scenes.forEach((step, scene) -> {
                if (step == first || options.allSteps()) {
                    List<FramedDiagram.Block> here = new ArrayList<>();
                    for (int i = 0; i < blocks.size(); i++) {
                        Scene block = Diagram.of(blocks.get(i), step);
                        CircuitSheet head = blocks.size() == 1 ? null : apart.get(i);
                        here.add(new FramedDiagram.Block(head, block, Draft.of(block, placed.get(i))));
                    }
                    Scene whole = sheet == null ? scene : here.get(0).scene();
                    drawings.put(step, FramedDiagram.of(whole, here, title, options.legend(), emphasis));
                }
            });
            Scene one = sheet == null ? Diagram.of(scenes, first) : Diagram.of(blocks.get(0), first);
            List<StepReadings> readings =
                    scenes.values().stream().map(Scene::readings).toList();
            return new StepDrawings(first, drawings, one.allMarks(), sheets, new PlanReadings(name, readings), held);
        }

        private Map<Step, Scene> on(CircuitSheet sheet) {
            Map<Step, Scene> here = new EnumMap<>(scenes);
            here.replaceAll((step, scene) -> scene.on(sheet, sheets));
            return here;
        }
    }

    private static void write(Map<Step, Scene> scenes, DiagramOptions options) {
        if (options.colours() == DiagramOptions.Colours.WORDS) {
            scenes.replaceAll((step, scene) -> scene.withColourWords());
        }
    }

    private static @Nullable CircuitSheet sheet(List<CircuitSheet> sheets, DiagramOptions options) {
        Integer number = options.sheet();
        if (number == null) {
            return null;
        }
        MessageCode accepted = sheets.isEmpty() ? AcceptedSheet.NONE : AcceptedSheet.OF_PLAN;
        new InputErrors()
                .check(
                        number >= 1 && number <= sheets.size(),
                        InputError.Code.OUT_OF_RANGE,
                        "/sheet",
                        number,
                        accepted,
                        arg("sheets", sheets.size()))
                .reject();
        return sheets.get(number - 1);
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
        String name = DiagramText.COMPARISON_TITLE
                .with(arg("before", comparison.before()), arg("after", comparison.after()))
                .text();
        write(scenes, options);
        List<CircuitSheet> sheets = CircuitSheets.of(compared.overlay().all());
        Step worst = options.stepOr(WorstStep.of(comparison));
        return new Whole(
                        name,
                        scenes,
                        worst,
                        List.of(),
                        Set.copyOf(compared.emphasis().values()),
                        sheets)
                .drawn(sheet(sheets, options), options, progress);
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
