package loomwright.network;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Progress;

/**
 * Where islands come to stand that are joined to others by nothing but blocking one-way elements: each node leaks to the
 * reference by the same conductance, however small, and the least leak is enough to draw an island along until an
 * element at its border is about to conduct.
 *
 * <p>A network of its own: its nodes are the islands, its potentials how far each moves from where it is. It has one
 * solution, whatever the order of its elements, because its co-content is strictly convex.
 */
final class LeastLeak {
    /** Of an element that conducts, against the leak of one island. */
    private static final double SLOPE_OHM = 1e-10;

    private static final int MOST_STEPS = 1000;

    private final Islands islands;
    private final OperatingPoint point;
    private final List<Branch> branches = new ArrayList<>();

    /** Begins with the leaks of all nodes. */
    LeastLeak(Islands islands, OperatingPoint point) {
        this.islands = islands;
        this.point = point;
        double[] meanV = new double[islands.count];
        int[] nodes = new int[islands.count];
        double[] nodeV = point.nodeV();
        for (int node = 0; node < nodeV.length; node++) {
            int island = islands.islandOf[point.contraction.superOf[node]];
            nodes[island]++;
            meanV[island] += (nodeV[node] - meanV[island]) / nodes[island];
        }
        for (int k = 1; k < islands.count; k++) {
            branches.add(new Branch.Linear(k, 0, meanV[k], (double) nodes[k] / nodeV.length, 0));
        }
    }

    /**
     * Adds a blocking element.
     *
     * @param driveV how far it is beyond its threshold
     * @return whether its ends are on two islands
     */
    boolean border(int branch, double driveV) {
        int from = islands.islandOf[point.from[branch]];
        int to = islands.islandOf[point.to[branch]];
        if (from == to) {
            return false;
        }
        branches.add(new Branch.OneWayBranch(from, to, driveV, SLOPE_OHM, Double.POSITIVE_INFINITY));
        return true;
    }

    /** By island, how far its potential moves. */
    double[] shiftV(Eliminations eliminations) {
        Branch[] all = branches.toArray(new Branch[0]);
        double[] start = new double[islands.count];
        NewtonLoop loop =
                new NewtonLoop(new OperatingPoint(new Contraction(islands.count, 0, all), start), eliminations);
        loop.run(MOST_STEPS, Progress.UNWATCHED);
        return loop.point.nodeV();
    }
}
