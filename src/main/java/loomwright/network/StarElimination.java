package loomwright.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Elimination of the nodes of a conductance network, planned once for all networks that have no more than given branches.
 *
 * <p>A node with conductances g₁ … gₙ to others and g₀ to earth is replaced by gᵢ·gⱼ/(g₀ + g₁ + … + gₙ) between each pair
 * of its neighbours (star-mesh transformation). Unless a conductance is negative nothing is subtracted, so each voltage
 * keeps its digits however small a conductance is. The order is that of least degree, which on a harness, nearly a tree,
 * makes next to no new branches.
 *
 * <p>Cost: planning, nodes times branches; a solution, the sum of the squares of the degrees met.
 */
final class StarElimination {
    /** Earth, as an end of a branch. */
    static final int EARTH = -1;

    private final int size;
    private final List<int[]> pairs = new ArrayList<>();
    private final int[][] slotOf;
    private final int[] order;
    private final int[][] neighbours;
    private final int[][] spokes;
    private final int[][] fills;
    private final double[] inverse;

    /**
     * Plans the elimination.
     *
     * @param size number of nodes besides earth
     * @param from one end of each branch that there may be, or {@link #EARTH}
     * @param to the other end
     */
    StarElimination(int size, int[] from, int[] to) {
        this.size = size;
        slotOf = new int[size][size];
        for (int[] row : slotOf) {
            Arrays.fill(row, -1);
        }
        BitSet[] adjacent = new BitSet[size];
        for (int i = 0; i < size; i++) {
            adjacent[i] = new BitSet(size);
        }
        for (int b = 0; b < from.length; b++) {
            if (from[b] != to[b] && from[b] != EARTH && to[b] != EARTH) {
                join(adjacent, from[b], to[b]);
            }
        }
        order = new int[size];
        neighbours = new int[size][];
        spokes = new int[size][];
        fills = new int[size][];
        inverse = new double[size];
        plan(adjacent);
    }

    private void join(BitSet[] adjacent, int a, int b) {
        adjacent[a].set(b);
        adjacent[b].set(a);
        if (slotOf[a][b] < 0) {
            slotOf[a][b] = pairs.size();
            slotOf[b][a] = pairs.size();
            pairs.add(new int[] {a, b});
        }
    }

    private void plan(BitSet[] adjacent) {
        boolean[] gone = new boolean[size];
        for (int k = 0; k < size; k++) {
            int node = least(adjacent, gone);
            int[] around = adjacent[node].stream().toArray();
            int[] fill = new int[around.length * (around.length - 1) / 2];
            int next = 0;
            for (int a = 0; a < around.length; a++) {
                adjacent[around[a]].clear(node);
                for (int b = a + 1; b < around.length; b++) {
                    join(adjacent, around[a], around[b]);
                    fill[next++] = slotOf[around[a]][around[b]];
                }
            }
            gone[node] = true;
            order[k] = node;
            neighbours[k] = around;
            spokes[k] = Arrays.stream(around).map(n -> slotOf[node][n]).toArray();
            fills[k] = fill;
        }
    }

    private static int least(BitSet[] adjacent, boolean[] gone) {
        int best = -1;
        int degree = Integer.MAX_VALUE;
        for (int i = 0; i < gone.length; i++) {
            int here = gone[i] ? Integer.MAX_VALUE : adjacent[i].cardinality();
            if (here < degree) {
                best = i;
                degree = here;
            }
        }
        return best;
    }

    /** How many conductances between two nodes there are. */
    int slots() {
        return pairs.size();
    }

    /** Where the conductance between two nodes is kept. */
    int slot(int from, int to) {
        return slotOf[from][to];
    }

    /**
     * Solves one network.
     *
     * @param betweenS conductance by slot; overwritten
     * @param earthS conductance of each node to earth, above 0 in sum; overwritten
     * @param current current driven into each node, A; overwritten by its voltage, V
     * @return whether the conductances are positive definite, as they are unless some are negative
     */
    boolean solve(double[] betweenS, double[] earthS, double[] current) {
        boolean positive = true;
        for (int k = 0; k < size; k++) {
            int node = order[k];
            int[] around = neighbours[k];
            int[] spoke = spokes[k];
            double sum = earthS[node];
            for (int slot : spoke) {
                sum += betweenS[slot];
            }
            positive &= sum > 0;
            double inverseS = 1 / sum;
            inverse[k] = inverseS;
            int[] fill = fills[k];
            int next = 0;
            for (int a = 0; a < around.length; a++) {
                double share = betweenS[spoke[a]] * inverseS;
                if (share == 0) {
                    next += around.length - 1 - a;
                    continue;
                }
                earthS[around[a]] += share * earthS[node];
                current[around[a]] += share * current[node];
                for (int b = a + 1; b < around.length; b++) {
                    betweenS[fill[next++]] += share * betweenS[spoke[b]];
                }
            }
        }
        for (int k = size - 1; k >= 0; k--) {
            double drawn = current[order[k]];
            for (int a = 0; a < neighbours[k].length; a++) {
                drawn += betweenS[spokes[k][a]] * current[neighbours[k][a]];
            }
            current[order[k]] = drawn * inverse[k];
        }
        return positive;
    }
}
