package loomwright.drawing.sheet;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.comparison.ComparisonAnswer;
import loomwright.comparison.ComparisonQuestion;
import loomwright.comparison.Materials;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.Kept;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.Quantity;
import loomwright.drawing.diagram.PaperPictures;
import loomwright.network.NetworkLimits;
import loomwright.readings.ReadingsAnswer;
import loomwright.readings.ReadingsQuestion;
import loomwright.readings.ReadingsSheet;
import loomwright.readings.ReadingsSheet.Reading;
import loomwright.review.PlanReview;
import loomwright.review.ReviewReport;
import org.jspecify.annotations.Nullable;

/**
 * What is needed at the bench, and no more: the work, one picture of it, what to buy, a few readings.
 *
 * @param findings what is wrong with the goal, danger and warning, worst first
 * @param pictures of what changes; of one plan, of what was found
 * @param readings to take when the goal is reached
 */
record BenchSheet(
        String title,
        Plan goal,
        @Nullable PlanComparison comparison,
        List<WorkStep> work,
        PaperPictures pictures,
        List<Finding> findings,
        List<Reading> readings,
        Material material)
        implements PrintedSheet {

    /** How much of it a person takes in. */
    static final int MOST_FINDINGS = 8;

    private static final int PARTS = 3;

    BenchSheet {
        work = List.copyOf(work);
        findings = List.copyOf(findings);
        readings = List.copyOf(readings);
    }

    @Override
    public BenchSheet with(UnaryOperator<Finding> marking) {
        return new BenchSheet(
                title,
                goal,
                comparison,
                work,
                pictures,
                findings.stream().map(marking).toList(),
                readings,
                material);
    }

    static Answer<BenchSheet> of(
            SheetQuestion question, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan after = question.after();
        return after == null
                ? ofOne(question, limits, networkLimits, progress)
                : ofChange(question, after, limits, networkLimits, progress);
    }

    private static Answer<BenchSheet> ofOne(
            SheetQuestion question, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = question.plan();
        Answer<ReviewReport> review =
                JobSheet.in("/plan", () -> PlanReview.of(plan, limits, networkLimits, progress.part(0, PARTS)));
        List<Finding> findings = serious(review.result().findings().stream());
        List<String> concerned =
                findings.stream().flatMap(finding -> finding.ids().stream()).toList();
        Answer<ReadingsSheet> readings = JobSheet.in(
                "/plan",
                () -> ReadingsAnswer.ofFew(
                        ReadingsQuestion.of(plan), concerned, networkLimits, progress.part(1, PARTS)));
        BenchSheet sheet = new BenchSheet(
                question.titleOr(plan.name()),
                plan,
                null,
                List.of(),
                PaperPictures.ofFindings(
                        plan, findings.stream().limit(MOST_FINDINGS).toList(), "bench", progress.part(2, PARTS)),
                findings,
                readings.result().readings(),
                Materials.whole(plan));
        return JobSheet.answer(sheet, List.of(readings, review));
    }

    private static Answer<BenchSheet> ofChange(
            SheetQuestion question, Plan after, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan before = question.plan();
        ComparisonQuestion both = ComparisonQuestion.of(before, after);
        Answer<PlanComparison> compared = ComparisonAnswer.of(both, limits, networkLimits, progress.part(0, PARTS));
        PlanComparison comparison = compared.result();
        Answer<ReadingsSheet> readings = JobSheet.in(
                "/after",
                () -> ReadingsAnswer.ofFew(
                        ReadingsQuestion.of(after), loads(comparison, after), networkLimits, progress.part(1, PARTS)));
        List<WorkStep> work = WorkList.of(comparison, before, after);
        BenchSheet sheet = new BenchSheet(
                question.titleOr(after.name()),
                after,
                comparison,
                work,
                PaperPictures.ofChange(both, comparison, WorkList.numbers(work), "bench", progress.part(2, PARTS)),
                serious(Stream.concat(
                        comparison.findings().appear().stream(),
                        comparison.findings().stay().stream().map(Kept::after))),
                readings.result().readings(),
                comparison.material().needed());
        return JobSheet.answer(sheet, List.of(readings, compared));
    }

    private static List<Finding> serious(Stream<Finding> findings) {
        return findings.filter(finding -> finding.severity() != Severity.NOTE)
                .sorted(Comparator.comparing(Finding::severity))
                .toList();
    }

    /** The loads that a change is about: those that it is wired at first, then those with another state or voltage. */
    private static List<String> loads(PlanComparison comparison, Plan after) {
        Set<String> loads = new LinkedHashSet<>();
        comparison.changes().forEach(change -> {
            String id = change.after();
            if (id != null) {
                loads.add(id);
                after.findWire(id)
                        .ifPresent(wire -> loads.addAll(
                                List.of(wire.from().part(), wire.to().part())));
            }
        });
        comparison.steps().forEach(step -> step.states().forEach(state -> loads.add(state.part())));
        comparison
                .steps()
                .forEach(step -> step.readings().stream()
                        .filter(reading -> reading.quantity() == Quantity.ACROSS)
                        .forEach(reading -> loads.add(reading.at())));
        return List.copyOf(loads);
    }
}
