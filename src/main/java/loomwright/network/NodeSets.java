package loomwright.network;

/** Union-find over 0..n−1, with path halving. The first of a set stands for it. */
public final class NodeSets {
    /** Towards the first of the set, which has itself. */
    private final int[] before;

    public NodeSets(int count) {
        before = new int[count];
        for (int node = 0; node < count; node++) {
            before[node] = node;
        }
    }

    int count() {
        return before.length;
    }

    /** The first of a node's set. */
    public int find(int node) {
        int at = node;
        int next = before[at];
        while (next != at) {
            before[at] = before[next];
            at = before[at];
            next = before[at];
        }
        return at;
    }

    /** Joins two sets; false if they were one already. */
    public boolean join(int a, int b) {
        int firstOfA = find(a);
        int firstOfB = find(b);
        if (firstOfA < firstOfB) {
            before[firstOfB] = firstOfA;
        } else {
            before[firstOfA] = firstOfB;
        }
        return firstOfA != firstOfB;
    }
}
