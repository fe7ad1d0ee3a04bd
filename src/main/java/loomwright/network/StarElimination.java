package loomwright.network;

import java.util.Arrays;

/**
 * Elimination of the nodes of a conductance network one by one, in an order planned once for all networks that have no
 * more than given branches. Node 0 is earth, of 0 V, and stays.
 *
 * <p>A node with conductances g₁ … gₙ to others is replaced by gᵢ·gⱼ/(g₁ + … + gₙ) between each pair of these
 * (star-mesh transformation). Unless a conductance is negative nothing is subtracted, so each voltage keeps its digits
 * however far the conductances are spread; a Cholesky factorisation, which this is otherwise, loses nodes that are tied
 * strongly to each other and weakly to the rest. The order is that of {@link EliminationOrder}.
 *
 * <p>Cost: a factorisation, the sum of the squares of the degrees met; a solution, the sum of the degrees. Holds the
 * figures of the network at hand, so it is for one thread at a time.
 *
 * <p>Source: star-mesh transformation, general circuit theory (from memory).
 */
final class StarElimination {
    static final int NONE = -2;
    /** By node: when it is eliminated. Earth would be last. */
    private final int[] place;

    private final int earth;
    /** By place: its conductances to later nodes are those from {@code start[k]} to before {@code start[k + 1]}. */
    private final int[] start;
    /** By conductance: the place of the later node, ascending; earth's is always there. */
    private final int[] later;
    /** By place: its conductances to earlier nodes are {@code in[inStart[k]]} to before {@code in[inStart[k + 1]]}. */
    private final int[] inStart;

    private final int[] in;
    /** The earlier nodes of these. */
    private final int[] earlier;

    private final double[] betweenS;
    /** What the rows were made of, see {@link #refactor}. */
    private final double[] givenS;
    /** By place: whether its row is to be made anew. */
    private final boolean[] stale;

    private final double[] sumS;
    /** One over each of these, 0 of none. */
    private final double[] inverseOhm;

    private final double[] figure;
    /** By place: where its conductance to the node at hand is kept. */
    private final int[] at;

    /**
     * Plans the elimination.
     *
     * @param nodes how many, earth among them
     * @param from one end of each branch that there may be
     * @param to the other end
     */
    StarElimination(int nodes, int[] from, int[] to) {
        EliminationOrder order = new EliminationOrder(nodes, from, to);
        earth = nodes - 1;
        place = order.place();
        start = order.start();
        later = order.later();
        inStart = new int[nodes + 1];
        in = new int[later.length];
        earlier = new int[later.length];
        betweenS = new double[later.length];
        givenS = new double[later.length];
        stale = new boolean[nodes];
        Arrays.fill(stale, true);
        sumS = new double[earth];
        inverseOhm = new double[earth];
        figure = new double[nodes];
        at = new int[nodes];
        transpose();
    }

    private void transpose() {
        for (int k : later) {
            inStart[k + 1]++;
        }
        for (int k = 0; k < earth; k++) {
            inStart[k + 1] += inStart[k];
        }
        int[] next = inStart.clone();
        for (int k = 0; k < earth; k++) {
            for (int p = start[k]; p < start[k + 1]; p++) {
                in[next[later[p]]] = p;
                earlier[next[later[p]]++] = k;
            }
        }
    }

    /** How many conductances a network has room for. */
    int slots() {
        return later.length;
    }

    /** Where the conductance between two different nodes is kept; {@link #NONE} if there is no room for one. */
    int slot(int a, int b) {
        int last = Math.max(place[a], place[b]);
        int first = Math.min(place[a], place[b]);
        int p = start[first];
        while (p < start[first + 1] && later[p] != last) {
            p++;
        }
        return p == start[first + 1] ? NONE : p;
    }

    /** Whether a conductance is one to earth. */
    boolean isToEarth(int slot) {
        return later[slot] == earth;
    }

    /**
     * Eliminates all nodes of one network. A node at which nothing is stays at 0 V.
     *
     * @param conductanceS by slot
     * @return how many nodes had a positive sum of conductances when their turn came: all that there is something at, if
     *     the conductance matrix is positive definite
     */
    int factor(double[] conductanceS) {
        System.arraycopy(conductanceS, 0, betweenS, 0, betweenS.length);
        Arrays.fill(stale, true);
        int positive = 0;
        for (int k = 0; k < earth; k++) {
            eliminate(k);
            if (sumS[k] > 0) {
                positive++;
            }
        }
        return positive;
    }

    /**
     * As {@link #factor}, to the last digit, of a network that differs in a few conductances from the one before: only the nodes
     * that these reach are eliminated anew.
     */
    int refactor(double[] conductanceS) {
        int positive = 0;
        for (int k = 0; k < earth; k++) {
            if (stale[k] || isChanged(k, conductanceS)) {
                stale[k] = false;
                reaches(k);
                System.arraycopy(conductanceS, start[k], givenS, start[k], start[k + 1] - start[k]);
                System.arraycopy(conductanceS, start[k], betweenS, start[k], start[k + 1] - start[k]);
                eliminate(k);
                reaches(k);
            }
            if (sumS[k] > 0) {
                positive++;
            }
        }
        return positive;
    }

    private boolean isChanged(int k, double[] conductanceS) {
        for (int p = start[k]; p < start[k + 1]; p++) {
            if (conductanceS[p] != givenS[p]) {
                return true;
            }
        }
        return false;
    }

    /** Marks the nodes that the elimination of one adds to. */
    private void reaches(int k) {
        for (int p = start[k]; p < start[k + 1]; p++) {
            if (betweenS[p] != 0) {
                stale[later[p]] = true;
            }
        }
    }

    private void eliminate(int k) {
        for (int p = start[k]; p < start[k + 1]; p++) {
            at[later[p]] = p;
        }
        for (int q = inStart[k]; q < inStart[k + 1]; q++) {
            int spoke = in[q];
            if (betweenS[spoke] != 0) {
                double share = betweenS[spoke] * inverseOhm[earlier[q]];
                for (int p = spoke + 1; p < start[earlier[q] + 1]; p++) {
                    betweenS[at[later[p]]] += share * betweenS[p];
                }
            }
        }
        double sum = 0;
        for (int p = start[k]; p < start[k + 1]; p++) {
            sum += betweenS[p];
        }
        sumS[k] = sum;
        inverseOhm[k] = sum == 0 ? 0 : 1 / sum;
    }

    /**
     * Solves for the voltages, in place.
     *
     * @param current current driven into each node, A, with any figure for earth; overwritten by its voltage, V
     */
    void solve(double[] current) {
        for (int node = 0; node < place.length; node++) {
            figure[place[node]] = current[node];
        }
        for (int k = 0; k < earth; k++) {
            double share = figure[k] * inverseOhm[k];
            figure[k] = share;
            for (int p = start[k]; p < start[k + 1]; p++) {
                figure[later[p]] += betweenS[p] * share;
            }
        }
        figure[earth] = 0;
        for (int k = earth - 1; k >= 0; k--) {
            double drawnA = 0;
            for (int p = start[k]; p < start[k + 1]; p++) {
                drawnA += betweenS[p] * figure[later[p]];
            }
            figure[k] += drawnA * inverseOhm[k];
        }
        for (int node = 0; node < place.length; node++) {
            current[node] = figure[place[node]];
        }
    }
}
