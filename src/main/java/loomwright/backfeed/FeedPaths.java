package loomwright.backfeed;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.operation.Branch;
import loomwright.operation.CurrentPaths;
import loomwright.operation.SolvedStep;

/**
 * Follows the feed of one load from the live pole of its source, through the load, back to the source.
 *
 * <p>Currents that satisfy Kirchhoff's law are a sum of loops. Each loop taken here is the one of most current from the
 * load's return to its feed; since voltage falls along every branch but a source's, it leads through a source.
 */
public final class FeedPaths {
    /** What is left of the load's current when nothing more is reported. */
    private static final double REMAINDER = 0.01;

    private FeedPaths() {}

    /**
     * The ways of a load's current.
     *
     * @param complete whether they account for all of it but a hundredth
     */
    public record Found(List<FeedPath> paths, boolean complete) {}

    /**
     * Follows one load's feed.
     *
     * @param loadBranch from {@link SolvedStep#findBranch}
     * @param maxPaths how many ways to tell
     */
    public static Found find(SolvedStep solved, int loadBranch, int maxPaths) {
        CurrentPaths currents = new CurrentPaths(solved);
        double wholeA = currents.leftA(loadBranch);
        List<FeedPath> paths = new ArrayList<>();
        while (paths.size() < maxPaths && currents.leftA(loadBranch) > REMAINDER * wholeA) {
            List<Integer> back = currents.widest(currents.head(loadBranch), currents.tail(loadBranch));
            if (back.isEmpty()) {
                break;
            }
            List<Integer> loop = new ArrayList<>(back);
            loop.add(loadBranch);
            double currentA = loop.stream().mapToDouble(currents::leftA).min().orElse(0);
            currents.take(loop, currentA);
            Collections.rotate(loop, -sourceIn(solved, loop));
            paths.add(new FeedPath(
                    currentA, loop.stream().map(b -> step(solved, currents, b)).toList()));
        }
        return new Found(paths, currents.leftA(loadBranch) <= REMAINDER * wholeA);
    }

    private static int sourceIn(SolvedStep solved, List<Integer> loop) {
        for (int i = 0; i < loop.size(); i++) {
            if (solved.powerW(loop.get(i)) < 0) {
                return i;
            }
        }
        return 0;
    }

    private static PathStep step(SolvedStep solved, CurrentPaths currents, int index) {
        Branch branch = solved.branches().get(index);
        boolean forward = currents.tail(index) == branch.fromNode();
        return new PathStep(
                branch.owner(),
                branch.id(),
                forward ? branch.from() : branch.to(),
                forward ? branch.to() : branch.from(),
                Math.abs(solved.currentA(index)),
                solved.isAgainstFeed(index));
    }
}
