package loomwright.network;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * A network of conductances and sources of current without those nodes at which nothing ever changes: they are eliminated once
 * ({@link StarElimination} tells how), and their voltages follow from those of the nodes that are kept. Node 0 is earth.
 *
 * <p>A node is eliminated only while it has no more than {@value #MOST_NEIGHBOURS} neighbours besides earth, so that no new
 * branches arise: a star of three becomes a triangle. Nothing is subtracted.
 *
 * <p>Source: Kron reduction, F. Dörfler and F. Bullo, "Kron reduction of graphs with applications to electrical networks", IEEE
 * Transactions on Circuits and Systems I 60, 2013 (from memory).
 */
final class KronReduction {
    private static final int MOST_NEIGHBOURS = 3;
    private static final int GONE = -1;

    /** By node: its number among those kept, or {@link #GONE}. */
    private final int[] keptNumber;

    private final int kept;
    /** By node: the neighbours that are left, and the conductance to each. */
    private final int[][] neighbours;

    private final double[][] toNeighbourS;
    private final int[] degree;
    private final double[] earthS;
    private final double[] driven;
    /** The nodes that are gone, in that order. */
    private final int[] eliminated;

    private int eliminatedCount;
    /** By node that is gone: one over the sum of its conductances. */
    private final double[] inverseOhm;

    /**
     * Reduces a network.
     *
     * @param changing by node, whether it has to be kept
     * @param from one end of each branch
     * @param to the other end
     * @param conductanceS of each branch
     * @param leakS of each node to earth, more than 0
     * @param drivenA by node, the current driven into it
     */
    KronReduction(boolean[] changing, int[] from, int[] to, double[] conductanceS, double leakS, double[] drivenA) {
        int nodes = changing.length;
        keptNumber = new int[nodes];
        neighbours = new int[nodes][4];
        toNeighbourS = new double[nodes][4];
        degree = new int[nodes];
        earthS = new double[nodes];
        Arrays.fill(earthS, leakS);
        driven = drivenA.clone();
        eliminated = new int[nodes];
        inverseOhm = new double[nodes];
        for (int b = 0; b < from.length; b++) {
            add(from[b], to[b], conductanceS[b]);
        }
        eliminateAll(changing);
        int count = 0;
        for (int node = 0; node < nodes; node++) {
            keptNumber[node] = keptNumber[node] == GONE ? GONE : count++;
        }
        kept = count;
    }

    private void add(int a, int b, double conductanceS) {
        if (a == b) {
            return;
        } else if (a == 0 || b == 0) {
            earthS[Math.max(a, b)] += conductanceS;
        } else {
            addNeighbour(a, b, conductanceS);
            addNeighbour(b, a, conductanceS);
        }
    }

    private void addNeighbour(int node, int other, double conductanceS) {
        int k = 0;
        while (k < degree[node] && neighbours[node][k] != other) {
            k++;
        }
        if (k == degree[node]) {
            if (k == neighbours[node].length) {
                neighbours[node] = Arrays.copyOf(neighbours[node], 2 * k);
                toNeighbourS[node] = Arrays.copyOf(toNeighbourS[node], 2 * k);
            }
            neighbours[node][k] = other;
            toNeighbourS[node][k] = 0;
            degree[node]++;
        }
        toNeighbourS[node][k] += conductanceS;
    }

    private void removeNeighbour(int node, int other) {
        int k = 0;
        while (neighbours[node][k] != other) {
            k++;
        }
        degree[node]--;
        neighbours[node][k] = neighbours[node][degree[node]];
        toNeighbourS[node][k] = toNeighbourS[node][degree[node]];
    }

    private void eliminateAll(boolean[] changing) {
        Deque<Integer> open = new ArrayDeque<>();
        for (int node = 1; node < changing.length; node++) {
            open.add(node);
        }
        while (!open.isEmpty()) {
            int node = open.remove();
            if (!changing[node] && keptNumber[node] != GONE && degree[node] <= MOST_NEIGHBOURS) {
                eliminate(node);
                // Those next to it may have fewer neighbours now.
                for (int k = 0; k < degree[node]; k++) {
                    open.add(neighbours[node][k]);
                }
            }
        }
    }

    private void eliminate(int node) {
        int[] star = neighbours[node];
        double[] toStarS = toNeighbourS[node];
        double sumS = earthS[node];
        for (int k = 0; k < degree[node]; k++) {
            sumS += toStarS[k];
        }
        inverseOhm[node] = 1 / sumS;
        for (int i = 0; i < degree[node]; i++) {
            removeNeighbour(star[i], node);
            double share = toStarS[i] / sumS;
            earthS[star[i]] += share * earthS[node];
            driven[star[i]] += share * driven[node];
            for (int j = i + 1; j < degree[node]; j++) {
                add(star[i], star[j], share * toStarS[j]);
            }
        }
        eliminated[eliminatedCount++] = node;
        keptNumber[node] = GONE;
    }

    /** How many nodes are kept, earth among them. */
    int kept() {
        return kept;
    }

    /** The number of a node among those kept; −1 of one that is gone. */
    int keptNumber(int node) {
        return keptNumber[node];
    }

    /** A conductance between two nodes that are kept, by their numbers there; that to earth comes last. */
    @FunctionalInterface
    interface EachBranch {
        void between(int number, int other, double conductanceS);
    }

    /** Goes through the conductances between the nodes that are kept. */
    void forEachBranch(EachBranch each) {
        for (int node = 1; node < keptNumber.length; node++) {
            if (keptNumber[node] != GONE) {
                for (int k = 0; k < degree[node]; k++) {
                    if (neighbours[node][k] > node) {
                        each.between(keptNumber[node], keptNumber[neighbours[node][k]], toNeighbourS[node][k]);
                    }
                }
                each.between(keptNumber[node], 0, earthS[node]);
            }
        }
    }

    /** The current driven into each of the nodes that are kept, by their numbers. */
    double[] drivenA() {
        double[] all = new double[kept];
        for (int node = 1; node < keptNumber.length; node++) {
            if (keptNumber[node] != GONE) {
                all[keptNumber[node]] = driven[node];
            }
        }
        return all;
    }

    /**
     * The voltages of all nodes.
     *
     * @param keptV of those that are kept, by their numbers
     * @param voltage filled, by node
     */
    void complete(double[] keptV, double[] voltage) {
        for (int node = 0; node < voltage.length; node++) {
            if (keptNumber[node] != GONE) {
                voltage[node] = keptV[keptNumber[node]];
            }
        }
        for (int e = eliminatedCount - 1; e >= 0; e--) {
            int node = eliminated[e];
            double currentA = driven[node];
            for (int k = 0; k < degree[node]; k++) {
                currentA += toNeighbourS[node][k] * voltage[neighbours[node][k]];
            }
            voltage[node] = currentA * inverseOhm[node];
        }
    }
}
