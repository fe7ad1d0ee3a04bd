package loomwright.operation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The ways by which current gets from one node to another in a solved step, in the direction of feed: a decomposition of the solved currents, so
 * that each way comes with the amperes that take it.
 *
 * <p>Each branch is an arc in the direction in which it feeds (that of its current; with the positive pole earthed the
 * opposite), as wide as its amperes. The widest path (Dijkstra with the
 * narrowest arc as measure) is taken out with its width, again and again. Cost: arcs times log nodes for each path.
 */
public final class CurrentPaths {
    /** Currents below this are noise of the solution. */
    private static final double NOISE_A = 1e-9;

    private final SolvedStep solved;
    private final double[] leftA;
    private final List<List<Integer>> leaving;

    public CurrentPaths(SolvedStep solved) {
        this.solved = solved;
        int nodes = solved.nodeNames().size();
        this.leaving = new ArrayList<>(nodes);
        for (int i = 0; i < nodes; i++) {
            leaving.add(new ArrayList<>(2));
        }
        this.leftA = new double[solved.branches().size()];
        for (int i = 0; i < leftA.length; i++) {
            leftA[i] = Math.abs(solved.currentA(i));
            leaving.get(tail(i)).add(i);
        }
    }

    /** The node of a branch that is nearer the live pole. */
    public int tail(int branch) {
        Branch b = solved.branches().get(branch);
        return solved.feedA(branch) >= 0 ? b.fromNode() : b.toNode();
    }

    /** The node of a branch that is nearer the return. */
    public int head(int branch) {
        return solved.branches().get(branch).otherEnd(tail(branch));
    }

    /** What is still to be accounted for in a branch, A. */
    public double leftA(int branch) {
        return leftA[branch];
    }

    /** Takes a current out of the branches it went through. */
    public void take(List<Integer> branches, double currentA) {
        for (int branch : branches) {
            leftA[branch] = Math.max(0, leftA[branch] - currentA);
        }
    }

    /**
     * The path of most current, as branches in the order the current takes them; empty if none leads there. The path may
     * begin and end at the same node only by being empty.
     */
    public List<Integer> widest(int start, int end) {
        int nodes = leaving.size();
        double[] width = new double[nodes];
        int[] via = new int[nodes];
        Arrays.fill(via, -1);
        boolean[] done = new boolean[nodes];
        width[start] = Double.MAX_VALUE;
        record Reached(int node, double width) {}
        PriorityQueue<Reached> queue = new PriorityQueue<>(
                Comparator.comparingDouble(Reached::width).reversed().thenComparingInt(Reached::node));
        queue.add(new Reached(start, Double.MAX_VALUE));
        while (!queue.isEmpty() && !done[end]) {
            int node = queue.poll().node();
            if (done[node]) {
                continue;
            }
            done[node] = true;
            for (int branch : leaving.get(node)) {
                int next = head(branch);
                double reached = Math.min(width[node], leftA[branch]);
                if (!done[next] && reached > NOISE_A && reached > width[next]) {
                    width[next] = reached;
                    via[next] = branch;
                    queue.add(new Reached(next, reached));
                }
            }
        }
        return trace(start, end, via);
    }

    private List<Integer> trace(int start, int end, int[] via) {
        Deque<Integer> path = new ArrayDeque<>();
        int node = end;
        while (node != start) {
            if (via[node] < 0) {
                return List.of();
            }
            path.addFirst(via[node]);
            node = tail(via[node]);
        }
        return List.copyOf(path);
    }
}
