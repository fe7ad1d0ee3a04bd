package loomwright.network;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** Cholesky factorisation of a full matrix; cost n³/6. */
final class DenseFactorisation implements Factorisation {
    private final LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(64);
    private final DMatrixRMaj full = new DMatrixRMaj(1, 1);
    private final DMatrixRMaj column = new DMatrixRMaj(1, 1);

    @Override
    public boolean factor(ConductanceMatrix matrix) {
        int n = matrix.size;
        full.reshape(n, n);
        full.zero();
        double[] a = full.data;
        for (int k = 0; k < matrix.count; k++) {
            int i = matrix.from[k];
            int j = matrix.to[k];
            double g = matrix.conductanceS[k];
            if (i >= 0) {
                a[i * n + i] += g;
            }
            if (j >= 0) {
                a[j * n + j] += g;
            }
            if (i >= 0 && j >= 0) {
                a[i * n + j] -= g;
                a[j * n + i] -= g;
            }
        }
        return solver.setA(full);
    }

    @Override
    public void solve(double[] rightSide) {
        column.reshape(rightSide.length, 1);
        System.arraycopy(rightSide, 0, column.data, 0, rightSide.length);
        solver.solve(column, column);
        System.arraycopy(column.data, 0, rightSide, 0, rightSide.length);
    }
}
