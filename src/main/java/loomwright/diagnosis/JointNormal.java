package loomwright.diagnosis;

import java.util.List;

/**
 * A joint normal distribution of some readings: each is off by something of its own, and by causes that move several readings
 * together.
 */
final class JointNormal {
    /** With no more causes than this the inverse is that of a matrix of the causes, not of the readings. */
    private static final int FEW = 4;

    private final double[] residual;
    private final double[] own;
    private final double[][] common;
    /** Of all readings; empty where there are few causes. */
    private final double[][] covariance;

    /**
     * A distribution.
     *
     * @param residual by reading, how far it is from the middle
     * @param own by reading, its own variance, more than 0
     * @param common by reading and cause, the deviation it has by it; a cause moves all readings together
     */
    JointNormal(double[] residual, double[] own, double[][] common) {
        this.residual = residual.clone();
        this.own = own.clone();
        this.common = common.clone();
        int n = residual.length;
        boolean few = n == 0 || common[0].length <= FEW;
        this.covariance = new double[few ? 0 : n][n];
        for (int k = 0; k < covariance.length; k++) {
            for (int j = 0; j <= k; j++) {
                covariance[k][j] = product(common[k], common[j]) + (j == k ? own[k] : 0);
            }
        }
    }

    /** How far a reading is from the middle, in standard deviations. */
    double deviation(int k) {
        return residual[k] / Math.sqrt(own[k] + product(common[k], common[k]));
    }

    /** The density of some of the readings; the indices ascend. */
    Density of(List<Integer> left) {
        return covariance.length == 0 ? byCauses(left) : byReadings(left);
    }

    /**
     * A density.
     *
     * @param log its natural logarithm
     * @param precision by reading, the inverse of its variance given the others
     * @param pull by reading, its distance from where the others have it, times that
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Density(double log, double[] precision, double[] pull) {
        /** The logarithm of the density of one reading given the others. */
        double logGivenTheOthers(int k) {
            return (Math.log(precision[k] / (2 * Math.PI)) - pull[k] * pull[k] / precision[k]) / 2;
        }
    }

    /**
     * By the matrix inversion lemma, (D + UUᵀ)⁻¹ = D⁻¹ − D⁻¹U(I + UᵀD⁻¹U)⁻¹UᵀD⁻¹, with the determinant |D|·|I + UᵀD⁻¹U|
     * (M. A. Woodbury, 1950, from memory).
     */
    private Density byCauses(List<Integer> left) {
        int n = left.size();
        int causes = n == 0 ? 0 : common[0].length;
        double[][] inner = new double[causes][causes];
        double[] projected = new double[causes];
        double squares = 0;
        double logDeterminant = 0;
        for (int c = 0; c < causes; c++) {
            inner[c][c] = 1;
        }
        for (int k : left) {
            squares += residual[k] * residual[k] / own[k];
            logDeterminant += Math.log(own[k]);
            for (int c = 0; c < causes; c++) {
                projected[c] += common[k][c] * residual[k] / own[k];
                for (int e = 0; e < causes; e++) {
                    inner[c][e] += common[k][c] * common[k][e] / own[k];
                }
            }
        }
        logDeterminant += invert(inner);
        double[] fitted = times(inner, projected);
        double[] precision = new double[n];
        double[] pull = new double[n];
        for (int k = 0; k < n; k++) {
            int i = left.get(k);
            double[] u = common[i];
            precision[k] = 1 / own[i] - product(u, times(inner, u)) / (own[i] * own[i]);
            pull[k] = (residual[i] - product(u, fitted)) / own[i];
        }
        double log = -(squares - product(projected, fitted) + logDeterminant + n * Math.log(2 * Math.PI)) / 2;
        return new Density(log, precision, pull);
    }

    /**
     * By Cholesky's factor L of the covariance. With L⁻¹ the diagonal of the inverse is the sum of the squares of each of its
     * columns.
     */
    private Density byReadings(List<Integer> left) {
        int n = left.size();
        double[][] lower = new double[n][n];
        double logDeterminant = 0;
        for (int k = 0; k < n; k++) {
            for (int j = 0; j <= k; j++) {
                double sum = covariance[left.get(k)][left.get(j)];
                for (int m = 0; m < j; m++) {
                    sum -= lower[k][m] * lower[j][m];
                }
                lower[k][j] = j == k ? Math.sqrt(Math.max(sum, 1e-12)) : sum / lower[j][j];
            }
            logDeterminant += 2 * Math.log(lower[k][k]);
        }
        double[] pull = new double[n];
        double squares = 0;
        for (int k = 0; k < n; k++) {
            double sum = residual[left.get(k)];
            for (int m = 0; m < k; m++) {
                sum -= lower[k][m] * pull[m];
            }
            pull[k] = sum / lower[k][k];
            squares += pull[k] * pull[k];
        }
        for (int k = n - 1; k >= 0; k--) {
            for (int m = k + 1; m < n; m++) {
                pull[k] -= lower[m][k] * pull[m];
            }
            pull[k] /= lower[k][k];
        }
        double log = -(squares + logDeterminant + n * Math.log(2 * Math.PI)) / 2;
        return new Density(log, inverseDiagonal(lower), pull);
    }

    private static double[] inverseDiagonal(double[][] lower) {
        int n = lower.length;
        double[] diagonal = new double[n];
        double[] column = new double[n];
        for (int c = 0; c < n; c++) {
            for (int k = c; k < n; k++) {
                double sum = k == c ? 1 : 0;
                for (int m = c; m < k; m++) {
                    sum -= lower[k][m] * column[m];
                }
                column[k] = sum / lower[k][k];
                diagonal[c] += column[k] * column[k];
            }
        }
        return diagonal;
    }

    private static double product(double[] one, double[] other) {
        double sum = 0;
        for (int c = 0; c < one.length; c++) {
            sum += one[c] * other[c];
        }
        return sum;
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] result = new double[vector.length];
        for (int c = 0; c < result.length; c++) {
            result[c] = product(matrix[c], vector);
        }
        return result;
    }

    /** In place, by Gauss and Jordan without pivots, which a positive definite matrix does without; its log determinant. */
    private static double invert(double[][] matrix) {
        double logDeterminant = 0;
        for (int c = 0; c < matrix.length; c++) {
            double pivot = matrix[c][c];
            logDeterminant += Math.log(pivot);
            matrix[c][c] = 1;
            for (int e = 0; e < matrix.length; e++) {
                matrix[c][e] /= pivot;
            }
            for (int row = 0; row < matrix.length; row++) {
                if (row != c) {
                    double factor = matrix[row][c];
                    matrix[row][c] = 0;
                    for (int e = 0; e < matrix.length; e++) {
                        matrix[row][e] -= factor * matrix[c][e];
                    }
                }
            }
        }
        return logDeterminant;
    }
}
