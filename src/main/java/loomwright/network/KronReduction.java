package loomwright.network;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

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
    /** By node: conductance to each neighbour that is left, in the order of their numbers. */
    private final List<Map<Integer, Double>> around = new ArrayList<>();

    private final double[] earthS;
    private final double[] driven;
    private final List<Eliminated> eliminated = new ArrayList<>();

    /** A node that is gone: its voltage is the current driven into it and those that its neighbours drive, over the sum. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Eliminated(int node, double drivenA, double sumS, int[] neighbours, double[] conductanceS) {}

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
        earthS = new double[nodes];
        driven = drivenA.clone();
        for (int node = 0; node < nodes; node++) {
            around.add(new TreeMap<>());
            earthS[node] = leakS;
        }
        for (int b = 0; b < from.length; b++) {
            add(from[b], to[b], conductanceS[b]);
        }
        keptNumber = new int[nodes];
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
            around.get(a).merge(b, conductanceS, Double::sum);
            around.get(b).merge(a, conductanceS, Double::sum);
        }
    }

    private void eliminateAll(boolean[] changing) {
        Deque<Integer> open = new ArrayDeque<>();
        for (int node = 1; node < changing.length; node++) {
            open.add(node);
        }
        while (!open.isEmpty()) {
            int node = open.remove();
            if (!changing[node] && keptNumber[node] != GONE && around.get(node).size() <= MOST_NEIGHBOURS) {
                // Those next to it may have fewer neighbours now.
                open.addAll(around.get(node).keySet());
                eliminate(node);
            }
        }
    }

    private void eliminate(int node) {
        Map<Integer, Double> star = around.get(node);
        int[] neighbours = star.keySet().stream().mapToInt(Integer::intValue).toArray();
        double[] toNeighbourS =
                star.values().stream().mapToDouble(Double::doubleValue).toArray();
        double sumS = earthS[node];
        for (double one : toNeighbourS) {
            sumS += one;
        }
        for (int i = 0; i < neighbours.length; i++) {
            around.get(neighbours[i]).remove(node);
            double share = toNeighbourS[i] / sumS;
            earthS[neighbours[i]] += share * earthS[node];
            driven[neighbours[i]] += share * driven[node];
            for (int j = i + 1; j < neighbours.length; j++) {
                add(neighbours[i], neighbours[j], share * toNeighbourS[j]);
            }
        }
        eliminated.add(new Eliminated(node, driven[node], sumS, neighbours, toNeighbourS));
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
                for (Map.Entry<Integer, Double> neighbour : around.get(node).entrySet()) {
                    if (neighbour.getKey() > node) {
                        each.between(keptNumber[node], keptNumber[neighbour.getKey()], neighbour.getValue());
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
        for (int k = eliminated.size() - 1; k >= 0; k--) {
            Eliminated one = eliminated.get(k);
            double currentA = one.drivenA();
            int[] neighbours = one.neighbours();
            double[] conductanceS = one.conductanceS();
            for (int i = 0; i < neighbours.length; i++) {
                currentA += conductanceS[i] * voltage[neighbours[i]];
            }
            voltage[one.node()] = currentA / one.sumS();
        }
    }
}
