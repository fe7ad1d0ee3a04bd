package loomwright.review;

import java.util.List;
import java.util.function.UnaryOperator;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.answer.WithFindings;
import loomwright.backfeed.BackfeedReport.Extent;

/**
 * What a review found.
 *
 * @param plan its name
 * @param extent what was looked at, and what was not
 * @param counts how many findings there are of each severity
 * @param findings the most serious first; of equal severity the one furthest over its limit first
 */
public record ReviewReport(String plan, Extent extent, Counts counts, List<Finding> findings)
        implements WithFindings<ReviewReport> {
    public ReviewReport {
        findings = List.copyOf(findings);
    }

    /** The same of a plan of another name with the same circuit. */
    public ReviewReport named(String name) {
        return new ReviewReport(name, extent, counts, findings);
    }

    @Override
    public ReviewReport with(UnaryOperator<Finding> marking) {
        return new ReviewReport(
                plan, extent, counts, findings.stream().map(marking).toList());
    }

    /** Findings by severity. */
    public record Counts(int danger, int warning, int note) {
        static Counts of(List<Finding> findings) {
            return new Counts(
                    count(findings, Severity.DANGER),
                    count(findings, Severity.WARNING),
                    count(findings, Severity.NOTE));
        }

        private static int count(List<Finding> findings, Severity severity) {
            return (int) findings.stream().filter(f -> f.severity() == severity).count();
        }
    }
}
