package loomwright.network;

/** Union-find over 0..n−1, by size with path halving. */
final class NodeSets {
    private final int[] parent;

    NodeSets(int count) {
        parent = new int[count];
        java.util.Arrays.fill(parent, -1);
    }

    int find(int node) {
        int at = node;
        while (parent[at] >= 0) {
            if (parent[parent[at]] >= 0) {
                parent[at] = parent[parent[at]];
            }
            at = parent[at];
        }
        return at;
    }

    /** Joins two sets; false if they were one already. */
    boolean join(int a, int b) {
        int rootA = find(a);
        int rootB = find(b);
        if (rootA == rootB) {
            return false;
        }
        if (parent[rootA] > parent[rootB]) {
            int swap = rootA;
            rootA = rootB;
            rootB = swap;
        }
        parent[rootA] += parent[rootB];
        parent[rootB] = rootA;
        return true;
    }
}
