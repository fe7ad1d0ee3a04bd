package loomwright.network;

/**
 * The symmetric matrix of the unknown potentials, as a list of conductances between unknowns ({@link
 * Islands#GROUNDED}: to a fixed potential).
 */
final class ConductanceMatrix {
    final int size;
    final int count;
    final int[] from;
    final int[] to;
    final double[] conductanceS;

    /**
     * Takes the slopes of all branches between different supernodes.
     *
     * @param slopeS by branch, NaN for ideal ones
     */
    ConductanceMatrix(Contraction contraction, Islands islands, double[] slopeS) {
        size = islands.unknowns;
        from = new int[slopeS.length];
        to = new int[slopeS.length];
        conductanceS = new double[slopeS.length];
        int used = 0;
        for (int b = 0; b < slopeS.length; b++) {
            Branch branch = contraction.branches[b];
            int a = contraction.superOf[branch.from];
            int c = contraction.superOf[branch.to];
            if (a != c && slopeS[b] != 0 && !Double.isNaN(slopeS[b])) {
                from[used] = islands.unknownOf[a];
                to[used] = islands.unknownOf[c];
                conductanceS[used++] = slopeS[b];
            }
        }
        count = used;
    }
}
