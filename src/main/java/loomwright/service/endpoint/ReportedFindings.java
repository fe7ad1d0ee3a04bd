package loomwright.service.endpoint;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport;
import loomwright.bulk.LineAnswer.Found;
import loomwright.ignition.ballast.BallastResult;
import loomwright.operation.PlanReadings;
import loomwright.operation.StepFinding;
import loomwright.review.ReviewReport;
import loomwright.review.context.FindingCode;
import loomwright.service.form.EnumWords;
import loomwright.service.ignition.SparkReport;
import loomwright.sizing.CircuitSizing;
import loomwright.sizing.ConductorSizing;
import loomwright.sizing.FeedSizing;
import loomwright.sizing.FuseChoice;
import loomwright.sizing.VoltageDrop;

/** What the summary of many answers counts: findings, and verdicts that are no good news. */
public final class ReportedFindings {
    private ReportedFindings() {}

    /** Each once, in however many steps it shows. */
    public static List<Found> of(PlanReadings readings) {
        record Seen(StepFinding.Kind kind, Set<String> ids) {}
        return readings.steps().stream()
                .flatMap(step -> step.findings().stream())
                .map(finding -> new Seen(finding.kind(), Set.copyOf(finding.ids())))
                .distinct()
                .map(seen -> new Found(seen.kind().severity(), EnumWords.of(seen.kind())))
                .toList();
    }

    /** Loads, and wires that carry current backwards without being part of the way to one of them. */
    public static List<Found> of(BackfeedReport report) {
        List<Found> found = new ArrayList<>();
        report.unintendedFeeds()
                .forEach(feed -> found.add(new Found(
                        feed.severity(),
                        FindingCode.BACKFEED.code(),
                        feed.verdict().text(),
                        feed.remedies().isEmpty()
                                ? null
                                : feed.remedies().get(0).change().text())));
        Set<String> told = report.unintendedFeeds().stream()
                .flatMap(feed -> feed.occurrences().stream())
                .flatMap(occurrence -> occurrence.paths().stream())
                .flatMap(path -> path.steps().stream())
                .filter(BackfeedReport.PathStep::againstFeed)
                .map(BackfeedReport.PathStep::id)
                .collect(Collectors.toSet());
        report.reversedWires().stream()
                .filter(wire -> !told.contains(wire.wire()))
                .forEach(wire -> found.add(new Found(Severity.NOTE, FindingCode.REVERSED_WIRE.code())));
        return found;
    }

    public static List<Found> of(ReviewReport report) {
        return of(report.findings());
    }

    public static List<Found> of(SparkReport report) {
        return of(report.findings());
    }

    public static List<Found> of(BallastResult result) {
        return of(result.findings());
    }

    public static List<Found> of(VoltageDrop.Result result) {
        return of(result.findings());
    }

    public static List<Found> of(ConductorSizing.Result result) {
        return of(result.findings());
    }

    public static List<Found> of(FuseChoice.Result result) {
        return of(result.findings());
    }

    public static List<Found> of(FeedSizing.Result result) {
        return of(result.findings());
    }

    public static List<Found> of(CircuitSizing.Result result) {
        return of(result.findings());
    }

    private static List<Found> of(List<Finding> findings) {
        return findings.stream()
                .map(finding -> new Found(finding.severity(), finding.code(), finding.text(), finding.remedyText()))
                .toList();
    }
}
