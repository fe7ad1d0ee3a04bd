package loomwright.review.context;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Battery;
import loomwright.circuit.Fuse;
import loomwright.judgement.wire.FuseRule;
import loomwright.operation.CurrentPaths;
import loomwright.operation.SolvedStep;

/** Fuses that blow at once, because their current meets no load. */
public final class ShortedFuses {
    private ShortedFuses() {}

    /**
     * By id of each fuse behind which there is a short in one of some moments, the moment in which it carries most.
     */
    public static Map<String, Moment> find(List<Fuse> fuses, List<Moment> moments) {
        Map<String, Moment> shorted = new LinkedHashMap<>();
        for (Fuse fuse : fuses) {
            moments.stream()
                    .filter(m -> isShorted(fuse, m.solved()))
                    .min(WorstCaseOrder.mostOf(m -> carriesA(fuse, m.solved())))
                    .ifPresent(m -> shorted.put(fuse.id(), m));
        }
        return shorted;
    }

    /** Whether a fuse blows at once and its current meets no load: of one that is merely too small that is not said. */
    private static boolean isShorted(Fuse fuse, SolvedStep solved) {
        return carriesA(fuse, solved) >= FuseRule.opensAtOnceA(fuse)
                && wayBehind(fuse, solved).stream().noneMatch(i -> LoadCircuit.isOnPurpose(solved, i));
    }

    public static double carriesA(Fuse fuse, SolvedStep solved) {
        int branch = solved.firstBranchOf(fuse.id());
        return branch < solved.endBranchOf(fuse.id()) ? Math.abs(solved.currentA(branch)) : 0;
    }

    /** What the current of a fuse goes through after it, as far as the chassis or the source. */
    public static List<Integer> wayBehind(Fuse fuse, SolvedStep solved) {
        CurrentPaths paths = new CurrentPaths(solved);
        int branch = solved.firstBranchOf(fuse.id());
        List<Integer> way = new ArrayList<>();
        for (int next : paths.widest(paths.head(branch), paths.tail(branch))) {
            if (solved.partOf(next).filter(Battery.class::isInstance).isPresent()) {
                break;
            }
            way.add(next);
            if (solved.isChassis(paths.head(next))) {
                break;
            }
        }
        return way;
    }
}
