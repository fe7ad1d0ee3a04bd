package loomwright.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedSearch;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.ModelAssumptions;
import loomwright.operation.PlanAnswer;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;

/** The review of a whole plan. */
public final class PlanReview {
    private static final Set<String> UNFUSED =
            Set.of(FindingCode.UNFUSED_LEAD.code(), FindingCode.UNFUSED_CIRCUIT.code());

    private static final Set<String> ASKING_WHAT_IS_MEANT =
            Set.of(FindingCode.BACKFEED.code(), FindingCode.LOAD_NOT_POWERED.code());

    private PlanReview() {}

    /**
     * Judges every wire, fuse, link, contact and connector of a plan in every step, with the free switches in as many
     * combinations as its {@link loomwright.backfeed.BackfeedReport.Extent} says.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plan
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Answer<ReviewReport> of(
            Plan given, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        return of(given, new BackfeedSearch(limits, networkLimits).search(plan, progress));
    }

    /**
     * As the other, of a plan that was searched already.
     *
     * @param given as it was handed in
     */
    public static Answer<ReviewReport> of(Plan given, BackfeedSearch.Searched searched) {
        Plan plan = searched.plan();
        ReviewContext context = new ReviewContext(plan, searched.survey(), searched.report());
        List<Finding> findings = new ArrayList<>();
        Checks.ALL.forEach(check -> findings.addAll(check.check(context)));
        findings.sort(Comparator.comparing(Finding::severity)
                .thenComparing(
                        Comparator.comparingDouble(PlanReview::timesLimit).reversed()));
        ReviewReport report =
                new ReviewReport(plan.name(), searched.report().extent(), ReviewReport.Counts.of(findings), findings);
        return new Answer<>(
                report,
                ReviewWorking.lines(context),
                basis(plan, findings),
                ModelAssumptions.withLowBatteries(
                        ModelAssumptions.withFuses(IntentAssumptions.of(given, id -> codes(findings, id)), given),
                        given),
                cautions(context, findings));
    }

    /** The codes of the findings about a part that ask when it should be live. */
    private static List<String> codes(List<Finding> findings, String id) {
        return findings.stream()
                .filter(finding -> finding.ids().contains(id) && ASKING_WHAT_IS_MEANT.contains(finding.code()))
                .map(Finding::code)
                .distinct()
                .toList();
    }

    private static double timesLimit(Finding finding) {
        return finding.figures().stream()
                .filter(f -> f.name().equals(FindingWording.LIMIT_RATIO))
                .mapToDouble(Finding.Figure::value)
                .findFirst()
                .orElse(0);
    }

    private static List<Basis> basis(Plan plan, List<Finding> findings) {
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        findings.forEach(f -> basis.add(f.basis()));
        return basis.stream().distinct().toList();
    }

    private static List<Caution> cautions(ReviewContext context, List<Finding> findings) {
        Set<Caution> cautions = EnumSet.copyOf(PlanCautions.of(context.plan()));
        if (findings.stream().anyMatch(f -> UNFUSED.contains(f.code()))) {
            cautions.add(Caution.UNFUSED_SUPPLY);
        }
        if (findings.stream()
                .anyMatch(f -> f.code().equals(FindingCode.CHARGING_VOLTAGE_HIGH.code())
                        || f.code().equals(FindingCode.CHARGING_VOLTAGE_LOW.code())
                        || f.code().equals(FindingCode.CHARGING_DROP.code())
                        || f.code().equals(FindingCode.GENERATOR_SLOW.code())
                        || f.code().equals(FindingCode.SENSE_LOST.code()))) {
            // Its remedy is to measure with the engine running, in a plan that may draw nothing that turns.
            cautions.add(Caution.MOVING_PARTS);
        }
        // A trickle at that time is no reason to isolate the battery.
        boolean liveWhenOff = context.backfeed().unintendedFeeds().stream()
                .filter(f -> f.severity() != Severity.NOTE)
                .flatMap(f -> f.occurrences().stream())
                .anyMatch(o -> o.step().condition() == Condition.OFF);
        if (liveWhenOff) {
            cautions.add(Caution.LIVE_WHEN_OFF);
        }
        return List.copyOf(cautions);
    }
}
