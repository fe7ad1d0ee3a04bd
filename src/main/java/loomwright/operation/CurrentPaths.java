package loomwright.operation;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The ways by which current gets from one node to another in a solved step, in the direction of feed: a decomposition of the solved currents, so
 * that each way comes with the amperes that take it.
 *
 * <p>Each branch is an arc in the direction in which it feeds (that of its current; with the positive pole earthed the
 * opposite), as wide as its amperes. The widest path is taken out with its width, again and again: Dijkstra with the
 * narrowest arc as measure; of ways that are equally narrow somewhere, such as those to one small load from two sources, the one
 * that is wider elsewhere; of ways that are equal throughout, such as two equal lamps, the one whose names come first. So the
 * order of the plan does not matter. Cost: arcs times log nodes for each path.
 */
public final class CurrentPaths {
    /** Currents below this are noise of the solution. */
    private static final double NOISE_A = 1e-9;

    private final List<Branch> branches;
    private final int[] tail;
    private final int[] head;
    private final double[] leftA;
    /** By node: the branches that leave it are those from {@code start[node]} to before {@code start[node + 1]}. */
    private final int[] start;

    private final int[] leaving;

    public CurrentPaths(SolvedStep solved) {
        branches = solved.branches();
        int count = branches.size();
        tail = new int[count];
        head = new int[count];
        leftA = new double[count];
        start = new int[solved.nodeNames().size() + 1];
        for (int i = 0; i < count; i++) {
            Branch branch = branches.get(i);
            boolean forward = solved.feedA(i) >= 0;
            tail[i] = forward ? branch.fromNode() : branch.toNode();
            head[i] = forward ? branch.toNode() : branch.fromNode();
            leftA[i] = Math.abs(solved.currentA(i));
            start[tail[i]]++;
        }
        for (int node = 1; node < start.length; node++) {
            start[node] += start[node - 1];
        }
        leaving = new int[count];
        for (int i = count - 1; i >= 0; i--) {
            leaving[--start[tail[i]]] = i;
        }
    }

    /** The node of a branch that is nearer the live pole. */
    public int tail(int branch) {
        return tail[branch];
    }

    /** The node of a branch that is nearer the return. */
    public int head(int branch) {
        return head[branch];
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
    public List<Integer> widest(int first, int end) {
        int nodes = start.length - 1;
        Reached[] best = new Reached[nodes];
        int[] via = new int[nodes];
        Arrays.fill(via, -1);
        boolean[] done = new boolean[nodes];
        PriorityQueue<Reached> queue = new PriorityQueue<>();
        best[first] = new Reached(first, Double.MAX_VALUE, 0);
        queue.add(best[first]);
        while (!queue.isEmpty() && !done[end]) {
            Reached here = queue.poll();
            if (done[here.node()]) {
                continue;
            }
            done[here.node()] = true;
            for (int k = start[here.node()]; k < start[here.node() + 1]; k++) {
                int branch = leaving[k];
                int next = head[branch];
                if (!done[next] && leftA[branch] > NOISE_A) {
                    Reached reached = here.through(next, leftA[branch]);
                    int better = best[next] == null ? 1 : best[next].compareTo(reached);
                    if (better > 0 || (better == 0 && name(branch).compareTo(name(via[next])) < 0)) {
                        best[next] = reached;
                        via[next] = branch;
                        queue.add(reached);
                    }
                }
            }
        }
        return trace(first, end, via);
    }

    private String name(int branch) {
        return branches.get(branch).id();
    }

    /**
     * A node and how current gets there; what comes first is the better way.
     *
     * @param width amperes that get there
     * @param narrowness sum of 1/A of the branches: the less, the wider they are
     */
    private record Reached(int node, double width, double narrowness) implements Comparable<Reached> {
        /** By one more branch; amperes that differ by rounding are the same. */
        Reached through(int next, double branchA) {
            return new Reached(next, Math.min(width, (float) branchA), narrowness + 1 / (float) branchA);
        }

        @Override
        public int compareTo(Reached other) {
            int byWidth = Double.compare(other.width, width);
            return byWidth != 0 ? byWidth : Double.compare(narrowness, other.narrowness);
        }
    }

    private List<Integer> trace(int first, int end, int[] via) {
        Deque<Integer> path = new ArrayDeque<>();
        int node = end;
        while (node != first) {
            if (via[node] < 0) {
                return List.of();
            }
            path.addFirst(via[node]);
            node = tail[via[node]];
        }
        return List.copyOf(path);
    }
}
