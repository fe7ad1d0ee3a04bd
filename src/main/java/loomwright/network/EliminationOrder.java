package loomwright.network;

import java.util.Arrays;

/**
 * An order in which to eliminate the nodes of a network, and the branches that then arise. Next is always a node with
 * the fewest neighbours: leaves first, then chains, so that a harness, nearly a tree, gets next to no new branches. Earth,
 * node 0, is never eliminated, and each node may have a branch to it.
 *
 * <p>Cost: the sum of the squares of the degrees met. Source: minimum-degree order, A. George and J. W. H. Liu,
 * "Computer Solution of Large Sparse Positive Definite Systems", 1981, chapter 5 (from memory).
 */
final class EliminationOrder {
    private static final int NONE = -1;

    private final int[] place;
    private final int[] start;
    private int[] later = new int[0];

    private final int[][] around;
    private final int[] degree;
    /** Nodes of one degree form a list that goes both ways. */
    private final int[] firstOfDegree;

    private final int[] next;
    private final int[] previous;
    private int least;
    /** By node: the last walk that met it. */
    private final int[] met;

    private int walk;

    /**
     * Finds the order.
     *
     * @param nodes how many, earth among them
     * @param from one end of each branch
     * @param to the other end
     */
    EliminationOrder(int nodes, int[] from, int[] to) {
        place = new int[nodes];
        start = new int[nodes];
        around = new int[nodes][];
        degree = new int[nodes];
        firstOfDegree = new int[nodes];
        next = new int[nodes];
        previous = new int[nodes];
        met = new int[nodes];
        Arrays.fill(firstOfDegree, NONE);
        gatherNeighbours(from, to);
        for (int node = nodes - 1; node > 0; node--) {
            list(node);
        }
        eliminate();
    }

    /** By node: when it is eliminated; earth's is the last place. */
    int[] place() {
        return place;
    }

    /** By place: where its neighbours begin in {@link #later}; one more at the end. */
    int[] start() {
        return start;
    }

    /** The places of the neighbours that are left when a node is eliminated, ascending; earth's at the end of each. */
    int[] later() {
        return later;
    }

    private void gatherNeighbours(int[] from, int[] to) {
        for (int b = 0; b < from.length; b++) {
            if (isBetween(from[b], to[b])) {
                degree[from[b]]++;
                degree[to[b]]++;
            }
        }
        for (int node = 0; node < around.length; node++) {
            around[node] = new int[degree[node]];
            degree[node] = 0;
        }
        for (int b = 0; b < from.length; b++) {
            if (isBetween(from[b], to[b])) {
                around[from[b]][degree[from[b]]++] = to[b];
                around[to[b]][degree[to[b]]++] = from[b];
            }
        }
        for (int node = 0; node < around.length; node++) {
            walk++;
            int kept = 0;
            for (int k = 0; k < degree[node]; k++) {
                int other = around[node][k];
                if (met[other] != walk) {
                    met[other] = walk;
                    around[node][kept++] = other;
                }
            }
            degree[node] = kept;
        }
    }

    private static boolean isBetween(int a, int b) {
        return a != b && a != 0 && b != 0;
    }

    private void eliminate() {
        int count = place.length - 1;
        int[][] neighbours = new int[count][];
        for (int k = 0; k < count; k++) {
            while (firstOfDegree[least] == NONE) {
                least++;
            }
            int node = firstOfDegree[least];
            unlist(node);
            place[node] = k;
            int[] star = Arrays.copyOf(around[node], degree[node]);
            for (int neighbour : star) {
                unlist(neighbour);
                join(neighbour, node, star);
                list(neighbour);
            }
            neighbours[k] = star;
            start[k + 1] = start[k] + star.length + 1;
        }
        place[0] = count;
        later = new int[start[count]];
        for (int k = 0; k < count; k++) {
            int p = start[k];
            for (int neighbour : neighbours[k]) {
                later[p++] = place[neighbour];
            }
            later[p] = count;
            Arrays.sort(later, start[k], p);
        }
    }

    /** Takes the eliminated node from the neighbours of one of its own, and adds the others of these. */
    private void join(int node, int gone, int[] star) {
        walk++;
        met[node] = walk;
        int kept = 0;
        for (int k = 0; k < degree[node]; k++) {
            int other = around[node][k];
            if (other != gone) {
                met[other] = walk;
                around[node][kept++] = other;
            }
        }
        for (int other : star) {
            if (met[other] != walk) {
                if (kept == around[node].length) {
                    around[node] = Arrays.copyOf(around[node], 2 * kept + 4);
                }
                around[node][kept++] = other;
            }
        }
        degree[node] = kept;
    }

    private void list(int node) {
        int d = degree[node];
        next[node] = firstOfDegree[d];
        previous[node] = NONE;
        if (next[node] != NONE) {
            previous[next[node]] = node;
        }
        firstOfDegree[d] = node;
        least = Math.min(least, d);
    }

    private void unlist(int node) {
        if (next[node] != NONE) {
            previous[next[node]] = previous[node];
        }
        if (previous[node] == NONE) {
            firstOfDegree[degree[node]] = next[node];
        } else {
            next[previous[node]] = next[node];
        }
    }
}
