package loomwright.review.context;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import loomwright.backfeed.Survey.Moment;
import loomwright.operation.Branch;

/** The largest current of each branch over a number of moments, and when it flows. */
public final class PeakCurrents {
    /**
     * The largest current of one branch.
     *
     * @param currentA its amount
     */
    public record Peak(Moment moment, Branch branch, double currentA) {}

    /** By id of part, wire or connector: its branches. */
    private final Map<String, List<Peak>> peaks = new HashMap<>();

    private PeakCurrents() {}

    public static PeakCurrents of(Collection<Moment> moments) {
        Map<Branch, Peak> largest = new LinkedHashMap<>();
        for (Moment moment : moments) {
            List<Branch> branches = moment.solved().branches();
            for (int i = 0; i < branches.size(); i++) {
                Branch branch = branches.get(i);
                double currentA = Math.abs(moment.solved().currentA(i));
                Peak before = largest.get(branch);
                if (before == null
                        || WorstCaseOrder.compare(moment, currentA, before.moment(), before.currentA()) < 0) {
                    largest.put(branch, new Peak(moment, branch, currentA));
                }
            }
        }
        PeakCurrents peaks = new PeakCurrents();
        largest.forEach((branch, peak) -> peaks.peaks
                .computeIfAbsent(branch.id(), id -> new ArrayList<>(1))
                .add(peak));
        return peaks;
    }

    public Optional<Peak> find(Branch.Owner owner, String id) {
        return find(owner, id, branch -> true);
    }

    /** The largest of those branches of one owner that a test picks out. */
    public Optional<Peak> find(Branch.Owner owner, String id, Predicate<Branch> which) {
        return peaks.getOrDefault(id, List.of()).stream()
                .filter(p -> p.branch().owner() == owner && which.test(p.branch()))
                .max(Comparator.comparingDouble(Peak::currentA));
    }
}
