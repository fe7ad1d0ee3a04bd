package loomwright.network;

/** The factorisation that suits a matrix: full or sparse by its size, star-mesh where that is not accurate enough. */
final class Factorisations {
    private static final int DENSE_UP_TO = 150;

    private final Factorisation dense = new DenseFactorisation();
    private final Factorisation sparse = new SparseFactorisation();
    private final Factorisation starMesh = new StarMeshFactorisation();
    private Factorisation current = dense;

    /**
     * Takes a matrix apart.
     *
     * @param careful whether the faster ways were not accurate enough
     * @return false if it is not positive definite, or no way is left
     */
    boolean factor(ConductanceMatrix matrix, boolean careful) {
        current = matrix.size <= DENSE_UP_TO ? dense : sparse;
        if (!careful && current.factor(matrix)) {
            return true;
        }
        current = starMesh;
        return starMesh.factor(matrix);
    }

    void solve(double[] rightSide) {
        if (rightSide.length > 0) {
            current.solve(rightSide);
        }
    }
}
