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
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.Survey;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanSolver;
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
     * Judges every wire, fuse, link, contact and connector of a plan in every step and with the free switches in every
     * position.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plan, or OVER_LIMIT if its switches make too many
     *     combinations
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Answer<ReviewReport> of(
            Plan given, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        return reviewed(given, limits, networkLimits, progress).answer();
    }

    /**
     * A review with the backfeed that its findings speak of.
     *
     * @param backfeed with the ways of the currents, for a picture
     */
    public record ReviewedPlan(Answer<ReviewReport> answer, BackfeedReport backfeed) {}

    /** As {@link #of}. */
    public static ReviewedPlan reviewed(
            Plan given, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        PlanSolver solver = new PlanSolver(networkLimits);
        Survey survey = Survey.of(plan, solver, limits.maxCombinations(), progress.part(0, 2));
        BackfeedReport backfeed = new BackfeedSearch(limits, networkLimits).find(plan, survey, progress.part(1, 2));
        ReviewContext context = new ReviewContext(plan, survey, backfeed);
        List<Finding> findings = new ArrayList<>();
        Checks.ALL.forEach(check -> findings.addAll(check.check(context)));
        findings.sort(Comparator.comparing(Finding::severity)
                .thenComparing(
                        Comparator.comparingDouble(PlanReview::timesLimit).reversed()));
        ReviewReport report =
                new ReviewReport(plan.name(), (int) survey.combinations(), ReviewReport.Counts.of(findings), findings);
        Answer<ReviewReport> answer = new Answer<>(
                report,
                ReviewWorking.lines(context),
                basis(plan, findings),
                IntentAssumptions.of(given, id -> codes(findings, id)),
                cautions(context, findings));
        return new ReviewedPlan(answer, backfeed);
    }

    /** The codes of the findings about a part that ask when it is meant to be live. */
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
        if (findings.stream().anyMatch(f -> f.code().equals(FindingCode.CHARGING_VOLTAGE_HIGH.code()))) {
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
