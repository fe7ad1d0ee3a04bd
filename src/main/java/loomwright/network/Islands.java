package loomwright.network;

import java.util.Arrays;

/**
 * Which supernodes are connected through branches that conduct. Each island has one grounded supernode, its first,
 * which keeps its potential; the potentials of the others are unknown.
 */
final class Islands {
    final int count;
    /** By supernode; island 0 is that of the reference. */
    final int[] islandOf;
    /** By supernode. */
    final boolean[] grounded;

    final int unknowns;

    private Islands(int supernodes, NodeSets sets) {
        islandOf = new int[supernodes];
        grounded = new boolean[supernodes];
        int[] ofRoot = new int[supernodes];
        Arrays.fill(ofRoot, -1);
        int islands = 0;
        for (int s = 0; s < supernodes; s++) {
            int root = sets.find(s);
            if (ofRoot[root] < 0) {
                ofRoot[root] = islands++;
                grounded[s] = true;
            }
            islandOf[s] = ofRoot[root];
        }
        count = islands;
        unknowns = supernodes - islands;
    }

    /** Islands formed by the branches whose slope is not 0. */
    static Islands of(OperatingPoint point, double[] slopeS) {
        NodeSets sets = new NodeSets(point.high.length);
        for (int b = 0; b < slopeS.length; b++) {
            if (slopeS[b] != 0) {
                sets.join(point.from[b], point.to[b]);
            }
        }
        return new Islands(point.high.length, sets);
    }
}
