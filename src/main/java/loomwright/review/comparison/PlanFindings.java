package loomwright.review.comparison;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Finding.Figure;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.review.comparison.PlanComparison.FindingChanges;
import loomwright.review.comparison.PlanComparison.Kept;

/** The findings of two plans, told apart by their code and the things they concern. */
final class PlanFindings {
    private static final Basis SOLVED =
            Basis.computed("what is live", "Kirchhoff's laws, every switch position solved");

    private PlanFindings() {}

    /** The unintended feeds as findings. */
    static List<Finding> of(BackfeedReport report) {
        return report.unintendedFeeds().stream().map(PlanFindings::finding).toList();
    }

    private static Finding finding(UnintendedFeed feed) {
        List<Figure> figures = new ArrayList<>();
        double strongestV = -1;
        for (Occurrence occurrence : feed.occurrences()) {
            if (occurrence.effectiveV() > strongestV) {
                strongestV = occurrence.effectiveV();
                figures = List.of(
                        new Figure("effectiveV", occurrence.effectiveV()),
                        new Figure("operateV", occurrence.operateV()),
                        new Figure("currentA", occurrence.currentA()));
            }
        }
        return new Finding(
                feed.severity(),
                "unintended-feed",
                List.of(feed.load()),
                feed.verdict(),
                figures,
                SOLVED,
                feed.remedies().isEmpty() ? null : feed.remedies().get(0).change());
    }

    static FindingChanges changes(List<Finding> before, List<Finding> after, Matching matching) {
        List<Finding> left = new ArrayList<>(after);
        List<Kept> stay = new ArrayList<>();
        List<Finding> disappear = new ArrayList<>();
        for (Finding was : before) {
            Set<String> ids = new HashSet<>();
            was.ids().forEach(id -> ids.add(matching.translated(id)));
            Finding is = left.stream()
                    .filter(f -> f.code().equals(was.code()) && new HashSet<>(f.ids()).equals(ids))
                    .findFirst()
                    .orElse(null);
            if (is == null) {
                disappear.add(was);
            } else {
                left.remove(is);
                stay.add(new Kept(was, is));
            }
        }
        return new FindingChanges(left, stay, disappear);
    }
}
