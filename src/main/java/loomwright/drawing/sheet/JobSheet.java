package loomwright.drawing.sheet;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.BackfeedSearch.Searched;
import loomwright.circuit.Plan;
import loomwright.comparison.ComparisonAnswer;
import loomwright.comparison.ComparisonQuestion;
import loomwright.comparison.Materials;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.Material;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Diagram;
import loomwright.drawing.diagram.DiagramOptions;
import loomwright.drawing.diagram.DrawingSvg;
import loomwright.drawing.diagram.StepDrawings;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings;
import loomwright.operation.Step;
import loomwright.readings.ReadingsAnswer;
import loomwright.readings.ReadingsQuestion;
import loomwright.readings.ReadingsSheet;
import loomwright.review.PlanReview;
import loomwright.review.ReviewReport;
import org.jspecify.annotations.Nullable;

/**
 * All that a sheet shows, each from the function that also answers for it alone.
 *
 * @param title of the job
 * @param goal the plan by which the vehicle is to be
 * @param pictures of the plan as built and, if there is a second one, of that as modified: the whole, and the sheets of a
 *     large one
 * @param conditions the goal in every step
 * @param review of the goal
 * @param readings to take when the goal is reached
 * @param comparison absent where there is one plan
 * @param material what the job takes; of one plan all that is in it
 */
public record JobSheet(
        String title,
        Plan goal,
        List<List<SheetPicture>> pictures,
        PlanReadings conditions,
        ReviewReport review,
        ReadingsSheet readings,
        @Nullable PlanComparison comparison,
        Material material)
        implements PrintedSheet {

    /** Review, readings, comparison and two pictures, for whoever watches. */
    private static final int PARTS = 5;

    public JobSheet {
        pictures = List.copyOf(pictures);
    }

    @Override
    public JobSheet with(UnaryOperator<Finding> marking) {
        return new JobSheet(title, goal, pictures, conditions, review.with(marking), readings, comparison, material);
    }

    /**
     * Gathers a sheet.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plans
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Answer<JobSheet> of(
            SheetQuestion question, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = question.plan();
        Plan after = question.after();
        Plan goal = question.goal();
        String place = after == null ? "/plan" : "/after";
        BackfeedSearch search = new BackfeedSearch(limits, networkLimits);
        Searched asBuilt = in("/plan", () -> search.search(PlanAnswer.requireSound(plan), progress.part(0, PARTS)));
        Searched asModified = after == null
                ? asBuilt
                : in(place, () -> search.search(PlanAnswer.requireSound(after), progress.part(1, PARTS)));
        Answer<PlanReadings> conditions = in(place, () -> PlanAnswer.of(goal, networkLimits, progress.untold()));
        Answer<ReviewReport> review = PlanReview.of(goal, asModified);
        Answer<ReadingsSheet> readings =
                in(place, () -> ReadingsAnswer.of(ReadingsQuestion.of(goal), networkLimits, progress.part(2, PARTS)));
        Answer<PlanComparison> comparison = after == null
                ? null
                : ComparisonAnswer.of(
                        ComparisonQuestion.of(plan, after), asBuilt, asModified, networkLimits, progress.untold());
        DiagramOptions options = DiagramOptions.USUAL.at(question.step());
        // The numbers of the plan to build are those of the table of findings.
        DiagramOptions ofGoal = options.with(DiagramOptions.LegendText.KEYS);
        List<List<SheetPicture>> pictures = new ArrayList<>();
        if (after != null) {
            pictures.add(
                    pictures(Diagram.onSheets(asBuilt, options, networkLimits, progress.part(3, PARTS)), "as-built"));
        }
        pictures.add(pictures(
                Diagram.onSheets(asModified, ofGoal, networkLimits, progress.part(4, PARTS)),
                after == null ? "as-built" : "as-modified"));
        JobSheet sheet = new JobSheet(
                question.titleOr(goal.name()),
                goal,
                pictures,
                conditions.result(),
                review.result(),
                readings.result(),
                comparison == null ? null : comparison.result(),
                comparison == null
                        ? Materials.whole(plan)
                        : comparison.result().material().needed());
        List<Answer<?>> answers = new ArrayList<>(List.of(conditions, review, readings));
        if (comparison != null) {
            answers.add(comparison);
        }
        return answer(sheet, answers);
    }

    /**
     * A picture of a sheet.
     *
     * @param title what is on it; empty for the whole
     */
    record SheetPicture(String title, Svg picture) {}

    private static List<SheetPicture> pictures(List<StepDrawings> drawings, String id) {
        List<SheetPicture> pictures = new ArrayList<>();
        for (StepDrawings drawn : drawings) {
            boolean whole = pictures.isEmpty();
            pictures.add(new SheetPicture(
                    whole ? "" : drawn.sheets().get(pictures.size() - 1).title(),
                    DrawingSvg.of(drawn, id + "-" + pictures.size())));
        }
        return pictures;
    }

    /** What is made of several answers, with the sources and cautions of all. */
    static <T> Answer<T> answer(T sheet, List<Answer<?>> answers) {
        return new Answer<>(sheet, List.of(), basis(answers), cautions(answers));
    }

    /** The moment before the engine is started first, and so on: the steps in the order of the table. */
    List<Step> steps() {
        return conditions.steps().stream().map(PlanReadings.StepReadings::step).toList();
    }

    /** Says of which of two plans a fault is. */
    static <T> T in(String place, Supplier<T> calculation) {
        try {
            return calculation.get();
        } catch (RejectedInput rejected) {
            throw new RejectedInput(
                    rejected.faults().stream().map(f -> f.under(place)).toList());
        }
    }

    /** The same answer with another result. */
    static <T> Answer<T> with(T result, Answer<?> answer) {
        return new Answer<>(result, answer.working(), answer.basis(), answer.assumptions(), answer.cautions());
    }

    private static List<Basis> basis(List<Answer<?>> answers) {
        return answers.stream().flatMap(a -> a.basis().stream()).distinct().toList();
    }

    private static List<Caution> cautions(List<Answer<?>> answers) {
        Set<Caution> all = EnumSet.of(Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES);
        answers.stream().flatMap((Answer<?> a) -> Stream.of(a.cautions())).forEach(all::addAll);
        return List.copyOf(all);
    }
}
