package loomwright.comparison;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.BackfeedSearch.Searched;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.comparison.PlanComparison.FindingChanges;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PlanComparison.Leftover;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.PropertyChange;
import loomwright.comparison.PlanComparison.StepChange;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanSolver;
import loomwright.operation.Reader;
import loomwright.operation.UsualIntent;
import loomwright.review.PlanReview;
import loomwright.review.ReviewReport;

/** Two plans compared, so that a person can check what a change does. */
public final class ComparisonAnswer {
    private ComparisonAnswer() {}

    /**
     * Compares a plan as built with the same as modified.
     *
     * @throws loomwright.answer.RejectedInput with all faults of both plans
     */
    public static Answer<PlanComparison> of(
            ComparisonQuestion question, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        question.requireSound();
        BackfeedSearch search = new BackfeedSearch(limits, networkLimits);
        return of(
                question,
                in("/before", () -> search.search(PlanAnswer.requireSound(question.before()), progress.part(0, 2))),
                in("/after", () -> search.search(PlanAnswer.requireSound(question.after()), progress.part(1, 2))),
                networkLimits,
                progress.untold());
    }

    /** As the other, of plans that were searched already. */
    public static Answer<PlanComparison> of(
            ComparisonQuestion question,
            Searched wasSearched,
            Searched isSearched,
            NetworkLimits networkLimits,
            Progress progress) {
        question.requireSound();
        Plan before = question.before();
        Plan after = question.after();
        Matching matching = Matching.of(before, after);
        PlanSolver solver = new PlanSolver(networkLimits, progress);
        List<StepReadings> was = in("/before", () -> read(before, solver)).steps();
        List<StepReadings> is = in("/after", () -> read(after, solver)).steps();
        Answer<ReviewReport> wasReviewed = PlanReview.of(before, wasSearched);
        Answer<ReviewReport> isReviewed = PlanReview.of(after, isSearched);
        FindingChanges findings = PlanFindings.changes(
                wasReviewed.result().findings(), isReviewed.result().findings(), matching);
        PlanComparison result = comparison(question, matching, was, is, findings);
        List<Basis> basis = Stream.concat(wasReviewed.basis().stream(), isReviewed.basis().stream())
                .distinct()
                .toList();
        List<Caution> cautions = Stream.of(wasReviewed, isReviewed)
                .flatMap(reviewed -> reviewed.cautions().stream())
                .toList();
        List<Assumption> assumptions = Stream.of(wasReviewed, isReviewed)
                .flatMap(reviewed -> reviewed.assumptions().stream())
                .distinct()
                .toList();
        return new Answer<>(result, working(question, result), basis, assumptions, cautions(cautions, result));
    }

    private static PlanReadings read(Plan given, PlanSolver solver) {
        Plan plan = UsualIntent.complete(given);
        return Reader.read(plan, solver.solve(plan), solver);
    }

    /** An error in one of the plans is reported at that plan. */
    private static <T> T in(String place, Supplier<T> calculation) {
        try {
            return calculation.get();
        } catch (RejectedInput rejected) {
            throw new RejectedInput(
                    rejected.faults().stream().map(f -> f.under(place)).toList());
        }
    }

    private static PlanComparison comparison(
            ComparisonQuestion question,
            Matching matching,
            List<StepReadings> was,
            List<StepReadings> is,
            FindingChanges findings) {
        Plan before = question.before();
        Plan after = question.after();
        Map<String, String> backParts = inverse(matching.parts());
        Map<String, String> backWires = inverse(matching.wires());
        List<PropertyChange> settings = ItemChanges.settings(before, after);
        List<ItemChange> changes = ItemChanges.of(matching);
        List<StepChange> steps = StepChanges.of(matching, was, is, question.thresholdV(), question.thresholdA());
        List<Leftover> newLooseEnds = Leftovers.list(after, is, before, matching::translated);
        List<Leftover> resolvedLooseEnds =
                Leftovers.list(before, was, after, id -> backParts.getOrDefault(id, backWires.getOrDefault(id, id)));
        Material needed = Materials.of(after, before, backParts, backWires);
        Material removedMaterial = Materials.of(before, after, matching.parts(), matching.wires());
        boolean same = settings.isEmpty()
                && changes.isEmpty()
                && steps.isEmpty()
                && findings.appear().isEmpty()
                && findings.disappear().isEmpty();
        return new PlanComparison(
                before.name(),
                after.name(),
                same,
                settings,
                changes,
                steps,
                findings,
                new PlanComparison.LooseEnds(newLooseEnds, resolvedLooseEnds),
                new PlanComparison.ChangedMaterial(needed, removedMaterial));
    }

    private static Map<String, String> inverse(Map<String, String> pairs) {
        Map<String, String> inverse = new HashMap<>();
        pairs.forEach((before, after) -> inverse.put(after, before));
        return inverse;
    }

    private static List<Message> working(ComparisonQuestion question, PlanComparison result) {
        List<Message> working = new ArrayList<>();
        working.add(ComparisonWorking.MATCHING.with());
        working.add(ComparisonWorking.READINGS.with(
                arg("thresholdV", question.thresholdV()), arg("thresholdA", question.thresholdA())));
        working.add(ComparisonWorking.FINDINGS.with());
        working.add(ComparisonWorking.DEAD_ENDS.with());
        if (result.same()) {
            working.add(ComparisonWorking.NO_DIFFERENCE.with());
        }
        result.looseEnds()
                .newLooseEnds()
                .forEach(l -> working.add(
                        ComparisonWorking.LEFT_BEHIND.with(arg("leftover", l.message()), arg("remedy", l.remedy()))));
        for (Finding finding : result.findings().appear()) {
            working.add(ComparisonWorking.APPEARS.with(arg("finding", finding.message())));
        }
        for (Finding finding : result.findings().disappear()) {
            working.add(ComparisonWorking.DISAPPEARS.with(arg("finding", finding.message())));
        }
        return working;
    }

    private static List<Caution> cautions(List<Caution> reviewed, PlanComparison result) {
        Set<Caution> cautions = EnumSet.copyOf(reviewed);
        boolean liveWhenOff = result.looseEnds().newLooseEnds().stream()
                .flatMap(l -> l.liveIn().stream())
                .anyMatch(step -> step.condition() == Condition.OFF);
        if (liveWhenOff) {
            cautions.add(Caution.LIVE_WHEN_OFF);
        }
        return List.copyOf(cautions);
    }
}
