package loomwright.network;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/** Cholesky factorisation of a sparse matrix in an order of our own, as the library has none that reduces fill. */
final class SparseFactorisation implements Factorisation {
    private final LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver =
            LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);
    private int[] position = {};
    private final DMatrixRMaj column = new DMatrixRMaj(1, 1);

    @Override
    public boolean factor(ConductanceMatrix matrix) {
        DissectionOrder order = new DissectionOrder(matrix);
        position = order.position();
        return solver.setA(permuted(matrix));
    }

    @Override
    public void solve(double[] rightSide) {
        column.reshape(rightSide.length, 1);
        for (int i = 0; i < rightSide.length; i++) {
            column.data[position[i]] = rightSide[i];
        }
        DMatrixRMaj result = new DMatrixRMaj(rightSide.length, 1);
        solver.solve(column, result);
        for (int i = 0; i < rightSide.length; i++) {
            rightSide[i] = result.data[position[i]];
        }
    }

    /** Columns with ascending rows and no entry twice, both triangles. */
    private DMatrixSparseCSC permuted(ConductanceMatrix matrix) {
        int n = matrix.size;
        double[] diagonal = new double[n];
        int[] start = new int[n + 1];
        for (int k = 0; k < matrix.count; k++) {
            int i = matrix.from[k];
            int j = matrix.to[k];
            if (i >= 0) {
                diagonal[position[i]] += matrix.conductanceS[k];
            }
            if (j >= 0) {
                diagonal[position[j]] += matrix.conductanceS[k];
            }
            if (i >= 0 && j >= 0) {
                start[position[i] + 1]++;
                start[position[j] + 1]++;
            }
        }
        for (int i = 0; i < n; i++) {
            start[i + 1] += start[i];
        }
        int[] branch = new int[start[n]];
        int[] next = start.clone();
        for (int k = 0; k < matrix.count; k++) {
            if (matrix.from[k] >= 0 && matrix.to[k] >= 0) {
                branch[next[position[matrix.from[k]]]++] = k;
                branch[next[position[matrix.to[k]]]++] = k;
            }
        }
        return columns(matrix, diagonal, start, branch);
    }

    private DMatrixSparseCSC columns(ConductanceMatrix matrix, double[] diagonal, int[] start, int[] branch) {
        int n = matrix.size;
        DMatrixSparseCSC result = new DMatrixSparseCSC(n, n, start[n] + n);
        double[] sum = new double[n];
        int[] rows = new int[n];
        int[] columnOf = new int[n];
        int length = 0;
        for (int c = 0; c < n; c++) {
            int count = 0;
            for (int k = start[c]; k < start[c + 1]; k++) {
                int b = branch[k];
                int i = position[matrix.from[b]];
                int r = i == c ? position[matrix.to[b]] : i;
                if (columnOf[r] != c + 1) {
                    columnOf[r] = c + 1;
                    rows[count++] = r;
                }
                sum[r] -= matrix.conductanceS[b];
            }
            rows[count++] = c;
            sum[c] = diagonal[c];
            Arrays.sort(rows, 0, count);
            result.col_idx[c] = length;
            for (int k = 0; k < count; k++) {
                result.nz_rows[length] = rows[k];
                result.nz_values[length++] = sum[rows[k]];
                sum[rows[k]] = 0;
            }
        }
        result.col_idx[n] = length;
        result.nz_length = length;
        result.indicesSorted = true;
        return result;
    }
}
