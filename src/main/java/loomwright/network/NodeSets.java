package loomwright.network;

import java.util.Arrays;

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

    /** A number for each node, the same within a set: 0 for that of {@code first}, the others by their first nodes. */
    int[] numbered(int first) {
        int[] number = new int[before.length];
        int[] ofSet = new int[before.length];
        Arrays.fill(ofSet, -1);
        int next = 0;
        ofSet[find(first)] = next++;
        for (int node = 0; node < number.length; node++) {
            int set = find(node);
            if (ofSet[set] < 0) {
                ofSet[set] = next++;
            }
            number[node] = ofSet[set];
        }
        return number;
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
