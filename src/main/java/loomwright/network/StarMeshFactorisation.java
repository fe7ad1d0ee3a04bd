package loomwright.network;

/**
 * Elimination node by node as star-mesh transformations: a node with conductances g1, g2 … to its neighbours and to
 * ground is replaced by conductances gi·gj/Σg between them. Nothing is ever subtracted, so every figure keeps its
 * relative accuracy however far the conductances are spread; a Cholesky factorisation loses a group of nodes that is
 * tied strongly within and weakly to the rest. Slower than that, cost n³/3, hence only where it fails.
 *
 * <p>Conductances must not be negative. Source: star-mesh transformation, general circuit theory (from memory).
 */
final class StarMeshFactorisation implements Factorisation {
    static final int UP_TO = 600;

    private double[][] mesh = {};
    private double[] sum = {};

    @Override
    public boolean factor(ConductanceMatrix matrix) {
        int n = matrix.size;
        if (n > UP_TO) {
            return false;
        }
        mesh = new double[n][n];
        sum = new double[n];
        double[] ground = new double[n];
        for (int k = 0; k < matrix.count; k++) {
            int i = matrix.from[k];
            int j = matrix.to[k];
            double g = matrix.conductanceS[k];
            if (g < 0) {
                return false;
            }
            if (i >= 0 && j >= 0) {
                mesh[i][j] += g;
                mesh[j][i] += g;
            } else if (i >= 0 || j >= 0) {
                ground[Math.max(i, j)] += g;
            }
        }
        for (int k = 0; k < n; k++) {
            eliminate(k, ground);
        }
        return true;
    }

    private void eliminate(int k, double[] ground) {
        double total = ground[k];
        for (int j = k + 1; j < sum.length; j++) {
            total += mesh[k][j];
        }
        sum[k] = total;
        for (int i = k + 1; i < sum.length; i++) {
            double share = mesh[i][k] / total;
            if (share > 0) {
                ground[i] += share * ground[k];
                for (int j = k + 1; j < sum.length; j++) {
                    mesh[i][j] += share * mesh[k][j];
                }
                mesh[i][i] = 0;
            }
        }
    }

    @Override
    public void solve(double[] rightSide) {
        int n = sum.length;
        for (int k = 0; k < n; k++) {
            for (int i = k + 1; i < n; i++) {
                rightSide[i] += mesh[k][i] / sum[k] * rightSide[k];
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            double total = rightSide[k];
            for (int j = k + 1; j < n; j++) {
                total += mesh[k][j] * rightSide[j];
            }
            rightSide[k] = total / sum[k];
        }
    }
}
