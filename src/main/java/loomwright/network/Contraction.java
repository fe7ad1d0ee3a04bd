package loomwright.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Nodes joined by ideal branches taken together to supernodes. Within a supernode each node has a fixed offset to the
 * supernode's potential. A spanning forest of the ideal branches is kept: their currents follow from Kirchhoff's
 * current law along it. The ideal branches outside the forest close loops.
 *
 * <p>Supernode 0 is that of the reference, whose offset is 0. Cost: near-linear.
 */
final class Contraction {
    private static final double TOLERANCE = 1e-9;

    final BranchLaw[] branches;
    final int supernodes;
    final int[] superOf;
    final double[] offsetV;
    /** What the offset lacks by rounding. */
    final double[] offsetLostV;

    /** Ideal branches that close a loop. */
    final int[] closing;
    /** Nodes in breadth-first order, each after its parent. */
    private final int[] order;
    /** The forest branch to the node's parent, −1 at a root. */
    private final int[] parentBranch;

    private final int[] depth;

    Contraction(int nodes, int reference, BranchLaw[] branches) {
        this.branches = branches;
        superOf = new int[nodes];
        offsetV = new double[nodes];
        offsetLostV = new double[nodes];
        order = new int[nodes];
        parentBranch = new int[nodes];
        depth = new int[nodes];
        NodeSets sets = new NodeSets(nodes);
        int[] forest = new int[branches.length];
        int[] loops = new int[branches.length];
        int forestCount = 0;
        int loopCount = 0;
        for (int b = 0; b < branches.length; b++) {
            if (branches[b] instanceof BranchLaw.Ideal) {
                if (sets.join(branches[b].from, branches[b].to)) {
                    forest[forestCount++] = b;
                } else {
                    loops[loopCount++] = b;
                }
            }
        }
        closing = Arrays.copyOf(loops, loopCount);
        supernodes = spread(reference, new Adjacency(nodes, branches, forest, forestCount));
    }

    /** Walks every tree from its root, the reference first. */
    private int spread(int reference, Adjacency forest) {
        Arrays.fill(superOf, -1);
        int count = 0;
        int queued = 0;
        for (int step = -1; step < superOf.length; step++) {
            int root = step < 0 ? reference : step;
            if (superOf[root] >= 0) {
                continue;
            }
            superOf[root] = count;
            parentBranch[root] = -1;
            int read = queued;
            order[queued++] = root;
            while (read < queued) {
                int node = order[read++];
                for (int k = forest.start[node]; k < forest.start[node + 1]; k++) {
                    int b = forest.branch[k];
                    int next = otherEnd(b, node);
                    if (superOf[next] < 0) {
                        double voltage = ((BranchLaw.Ideal) branches[b]).voltageV;
                        double rise = branches[b].from == next ? voltage : -voltage;
                        superOf[next] = count;
                        offsetV[next] = offsetV[node] + rise;
                        offsetLostV[next] = offsetLostV[node] + Exact.lost(offsetV[node], rise);
                        parentBranch[next] = b;
                        depth[next] = depth[node] + 1;
                        order[queued++] = next;
                    }
                }
            }
            count++;
        }
        return count;
    }

    private int otherEnd(int branch, int node) {
        return branches[branch].from == node ? branches[branch].to : branches[branch].from;
    }

    private int parent(int node) {
        return otherEnd(parentBranch[node], node);
    }

    /** Whether the voltages around the loop that this branch closes do not add up to zero. */
    boolean conflicts(int closingBranch) {
        BranchLaw.Ideal branch = (BranchLaw.Ideal) branches[closingBranch];
        double from = offsetV[branch.from];
        double to = offsetV[branch.to];
        double scale = Math.max(Math.max(Math.abs(from), Math.abs(to)), Math.abs(branch.voltageV));
        return Math.abs(from - to - branch.voltageV) > TOLERANCE * Math.max(1e-3, scale);
    }

    /** The branches of the loop that this one closes, in order, itself first. */
    List<Integer> loop(int closingBranch) {
        List<Integer> down = new ArrayList<>();
        List<Integer> up = new ArrayList<>();
        down.add(closingBranch);
        int a = branches[closingBranch].to;
        int b = branches[closingBranch].from;
        while (a != b) {
            if (depth[a] >= depth[b]) {
                down.add(parentBranch[a]);
                a = parent(a);
            } else {
                up.add(0, parentBranch[b]);
                b = parent(b);
            }
        }
        down.addAll(up);
        return down;
    }

    /**
     * Completes the currents: those of the forest's branches by Kirchhoff's current law from the leaves inwards, those
     * of closing branches 0.
     *
     * @param currentA the currents of all branches that are not ideal, by branch; completed in place
     */
    void recover(double[] currentA) {
        double[] inflow = new double[superOf.length];
        for (int b = 0; b < branches.length; b++) {
            if (!(branches[b] instanceof BranchLaw.Ideal)) {
                inflow[branches[b].from] -= currentA[b];
                inflow[branches[b].to] += currentA[b];
            }
        }
        for (int b : closing) {
            currentA[b] = 0;
        }
        for (int k = order.length - 1; k >= 0; k--) {
            int node = order[k];
            int b = parentBranch[node];
            if (b >= 0) {
                currentA[b] = branches[b].from == node ? inflow[node] : -inflow[node];
                inflow[parent(node)] += inflow[node];
            }
        }
    }
}
