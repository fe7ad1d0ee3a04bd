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

    /** In place of a branch. */
    private static final int NONE = -1;

    private static final int SEVERAL = -2;

    private final List<Branch> branches;
    private final int[] tail;
    private final int[] head;
    private final double[] leftA;
    private final AtNodes leaving;
    private final AtNodes entering;

    /** For each node some branches: those of {@code node} are {@code branch[start[node]]} to before {@code start[node + 1]}. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record AtNodes(int[] start, int[] branch) {
        static AtNodes of(int nodes, int[] nodeOfBranch) {
            int[] start = new int[nodes + 1];
            for (int node : nodeOfBranch) {
                start[node]++;
            }
            for (int node = 1; node <= nodes; node++) {
                start[node] += start[node - 1];
            }
            int[] branch = new int[nodeOfBranch.length];
            for (int b = branch.length - 1; b >= 0; b--) {
                branch[--start[nodeOfBranch[b]]] = b;
            }
            return new AtNodes(start, branch);
        }

        int nodes() {
            return start.length - 1;
        }
    }

    public CurrentPaths(SolvedStep solved) {
        branches = solved.branches();
        int count = branches.size();
        tail = new int[count];
        head = new int[count];
        leftA = new double[count];
        for (int i = 0; i < count; i++) {
            Branch branch = branches.get(i);
            boolean forward = solved.feedA(i) >= 0;
            tail[i] = forward ? branch.fromNode() : branch.toNode();
            head[i] = forward ? branch.toNode() : branch.fromNode();
            leftA[i] = Math.abs(solved.currentA(i));
        }
        leaving = AtNodes.of(solved.nodeNames().size(), tail);
        entering = AtNodes.of(solved.nodeNames().size(), head);
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
        Deque<Integer> path = new ArrayDeque<>();
        int node = end;
        // Back from the end as long as there is no choice: in a harness, nearly a tree, that is nearly all of the way.
        while (node != first) {
            int only = onlyBranchInto(node);
            if (only == NONE || path.size() == leaving.nodes()) {
                return List.of();
            } else if (only == SEVERAL) {
                return traceWidest(first, node, path);
            }
            path.addFirst(only);
            node = tail[only];
        }
        return List.copyOf(path);
    }

    private int onlyBranchInto(int node) {
        int only = NONE;
        for (int k = entering.start()[node]; k < entering.start()[node + 1]; k++) {
            int branch = entering.branch()[k];
            if (leftA[branch] > NOISE_A) {
                if (only != NONE) {
                    return SEVERAL;
                }
                only = branch;
            }
        }
        return only;
    }

    /** Puts the widest path to a node in front of what follows. */
    private List<Integer> traceWidest(int first, int end, Deque<Integer> path) {
        int[] via = new int[leaving.nodes()];
        Arrays.fill(via, NONE);
        Reached[] best = new Reached[via.length];
        boolean[] done = new boolean[via.length];
        PriorityQueue<Reached> queue = new PriorityQueue<>();
        best[first] = new Reached(first, Double.MAX_VALUE, 0);
        queue.add(best[first]);
        while (!queue.isEmpty() && !done[end]) {
            Reached here = queue.poll();
            if (done[here.node()]) {
                continue;
            }
            done[here.node()] = true;
            for (int k = leaving.start()[here.node()]; k < leaving.start()[here.node() + 1]; k++) {
                int branch = leaving.branch()[k];
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
        for (int node = end; node != first; node = tail[via[node]]) {
            if (via[node] == NONE) {
                return List.of();
            }
            path.addFirst(via[node]);
        }
        return List.copyOf(path);
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
}
