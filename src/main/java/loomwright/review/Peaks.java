package loomwright.review;

import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import loomwright.backfeed.Survey.Moment;
import loomwright.operation.Branch;

/** The largest current of each branch over a number of moments, and when it flows. */
final class Peaks {
    /** Currents that differ by less are the same: of two alike the one nearer to the plan as it stands is told. */
    private static final double ALIKE = 1e-6;

    /**
     * The largest current of one branch.
     *
     * @param currentA its amount
     */
    record Peak(Moment moment, Branch branch, double currentA) {}

    private record Key(Branch.Owner owner, String id, String from, String to) {}

    private final Map<Key, Peak> peaks = new LinkedHashMap<>();

    private Peaks() {}

    static Peaks of(Collection<Moment> moments) {
        Peaks peaks = new Peaks();
        for (Moment moment : moments) {
            List<Branch> branches = moment.solved().branches();
            for (int i = 0; i < branches.size(); i++) {
                Branch branch = branches.get(i);
                peaks.peaks.merge(
                        new Key(branch.owner(), branch.id(), branch.from(), branch.to()),
                        new Peak(moment, branch, Math.abs(moment.solved().currentA(i))),
                        Peaks::larger);
            }
        }
        return peaks;
    }

    private static Peak larger(Peak a, Peak b) {
        if (b.currentA() > a.currentA() * (1 + ALIKE)) {
            return b;
        }
        boolean alike = b.currentA() >= a.currentA() * (1 - ALIKE);
        return alike
                        && b.moment().situation().changes()
                                < a.moment().situation().changes()
                ? b
                : a;
    }

    Optional<Peak> find(Branch.Owner owner, String id) {
        return find(owner, id, branch -> true);
    }

    /** The largest of those branches of one owner that a test picks out. */
    Optional<Peak> find(Branch.Owner owner, String id, Predicate<Branch> which) {
        return peaks.values().stream()
                .filter(p -> p.branch().owner() == owner && p.branch().id().equals(id))
                .filter(p -> which.test(p.branch()))
                .max(Comparator.comparingDouble(Peak::currentA));
    }
}
