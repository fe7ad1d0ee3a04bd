package loomwright.review.comparison;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.function.Function;
import loomwright.answer.Finding;
import loomwright.review.comparison.PlanComparison.FindingChanges;
import loomwright.review.comparison.PlanComparison.Kept;

/**
 * The findings of two plans paired: first those of the same code at the same things, then those of the same code whose
 * first thing, the one the finding is about, is the same.
 */
final class PlanFindings {
    private final Function<String, String> nameAfter;
    private final List<Finding> before;
    private final List<Finding> after;
    private final List<Kept> stay = new ArrayList<>();

    private PlanFindings(List<Finding> before, List<Finding> after, Function<String, String> nameAfter) {
        this.before = new ArrayList<>(before);
        this.after = new ArrayList<>(after);
        this.nameAfter = nameAfter;
    }

    static FindingChanges changes(List<Finding> before, List<Finding> after, Matching matching) {
        PlanFindings findings = new PlanFindings(before, after, matching::translated);
        findings.pair((was, is) -> new HashSet<>(was).equals(new HashSet<>(is)));
        findings.pair((was, is) -> !was.isEmpty() && !is.isEmpty() && was.get(0).equals(is.get(0)));
        return new FindingChanges(findings.after, findings.stay, findings.before);
    }

    private void pair(BiPredicate<List<String>, List<String>> sameThings) {
        for (Finding was : List.copyOf(before)) {
            List<String> ids = was.ids().stream().map(nameAfter).toList();
            after.stream()
                    .filter(is -> is.code().equals(was.code()) && sameThings.test(ids, is.ids()))
                    .findFirst()
                    .ifPresent(is -> {
                        before.remove(was);
                        after.remove(is);
                        stay.add(new Kept(was, is));
                    });
        }
    }
}
