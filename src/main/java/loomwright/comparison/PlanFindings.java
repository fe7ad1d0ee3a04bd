package loomwright.comparison;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.function.Function;
import loomwright.answer.Finding;
import loomwright.comparison.PlanComparison.FindingChanges;
import loomwright.comparison.PlanComparison.Kept;

/**
 * The findings of two plans paired: first those of the same code at the same things, then those of the same code whose
 * first thing, the one the finding is about, is the same; last those whose first thing is one of several that a finding
 * of the other plan speaks of.
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
        findings.takeOutOfGroups(before, after);
        return new FindingChanges(findings.after, findings.stay, findings.before);
    }

    /** One finding may speak of several things much alike: what only left or joined such a group is not new. */
    private void takeOutOfGroups(List<Finding> allBefore, List<Finding> allAfter) {
        for (Finding is : List.copyOf(after)) {
            allBefore.stream()
                    .filter(was -> was.code().equals(is.code()) && speaksOf(names(was), is.ids()))
                    .findFirst()
                    .ifPresent(was -> {
                        after.remove(is);
                        stay.add(new Kept(was, is));
                    });
        }
        for (Finding was : List.copyOf(before)) {
            allAfter.stream()
                    .filter(is -> is.code().equals(was.code()) && speaksOf(is.ids(), names(was)))
                    .findFirst()
                    .ifPresent(is -> {
                        before.remove(was);
                        stay.add(new Kept(was, is));
                    });
        }
    }

    private static boolean speaksOf(List<String> group, List<String> ids) {
        return !ids.isEmpty() && group.contains(ids.get(0));
    }

    private List<String> names(Finding was) {
        return was.ids().stream().map(nameAfter).toList();
    }

    private void pair(BiPredicate<List<String>, List<String>> sameThings) {
        for (Finding was : List.copyOf(before)) {
            List<String> ids = names(was);
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
