package loomwright.network;

import java.util.ArrayList;
import java.util.List;

/**
 * A solved network with each element as the straight line that touches its law at the solution. It says what small changes
 * do, to first order: by the adjoint network (S. W. Director, R. A. Rohrer, The generalized adjoint network and network
 * sensitivities, IEEE Transactions on Circuit Theory 16, 1969, from memory) one response for each reading is enough for the
 * changes of all elements.
 *
 * <p>Every node leaks a little to the reference, so that nodes which hang in the air have a response as well; a resistance below
 * 1e-6 ohm counts as 1e-6 ohm. Both are below what a tolerance amounts to. Cost: n³/6 multiplications for n nodes, then n²
 * for each response.
 */
public final class Linearisation {
    private static final double LEAK_S = 1e-9;
    private static final double MOST_S = 1e6;

    private final int[] row;
    /** L and D of the conductance matrix as L·D·Lᵀ. */
    private final double[][] factors;

    private final double[] slopeS;
    private final List<Regulator> regulators = new ArrayList<>();

    /**
     * A regulator that measures elsewhere makes the network one that is not its own adjoint: the change of one row. By the formula
     * of Sherman and Morrison.
     *
     * @param slopes of its sources, by row where they take their current
     * @param measured response to 1 A put in where it would measure otherwise and taken out where it measures
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Regulator(double[] slopes, double[] measured) {
        void apply(double[] x) {
            double share = product(slopes, x) / (1 + product(slopes, measured));
            for (int k = 0; k < x.length; k++) {
                x[k] -= share * measured[k];
            }
        }

        private static double product(double[] one, double[] other) {
            double sum = 0;
            for (int k = 0; k < one.length; k++) {
                sum += one[k] * other[k];
            }
            return sum;
        }
    }

    private Linearisation(int[] row, double[][] factors, double[] slopeS) {
        this.row = row;
        this.factors = factors;
        this.slopeS = slopeS;
    }

    private void regulate(List<Element> elements, Solution solution) {
        List<SensedSource> known = new ArrayList<>();
        for (Element element : elements) {
            if (element instanceof SensedSource source
                    && known.stream().noneMatch(source::hasRegulatorOf)
                    && RemoteSensing.lostV(source, solution) < source.highestRaiseV()) {
                known.add(source);
                double[] slopes = new double[factors.length];
                for (int e = 0; e < slopeS.length; e++) {
                    if (elements.get(e) instanceof SensedSource own && own.hasRegulatorOf(source)) {
                        put(slopes, own.from(), own.to(), slopeS[e]);
                    }
                }
                regulators.add(new Regulator(slopes, solve(source.above(), source.below())));
            }
        }
    }

    private void put(double[] rows, int from, int to, double amount) {
        if (row[from] >= 0) {
            rows[row[from]] += amount;
        }
        if (row[to] >= 0) {
            rows[row[to]] -= amount;
        }
    }

    /** Of a solution that has figures. */
    public static Linearisation of(Network network, Solution solution) {
        List<Element> elements = network.elements();
        int nodes = network.nodes().size();
        int[] row = new int[nodes];
        for (int n = 0; n < nodes; n++) {
            row[n] = n == network.reference() ? -1 : n < network.reference() ? n : n - 1;
        }
        double[] slopeS = new double[elements.size()];
        double[][] matrix = new double[nodes - 1][];
        for (int n = 0; n < nodes - 1; n++) {
            matrix[n] = new double[n + 1];
            matrix[n][n] = LEAK_S;
        }
        for (int e = 0; e < slopeS.length; e++) {
            slopeS[e] = slope(elements.get(e), solution);
            add(matrix, row[elements.get(e).from()], row[elements.get(e).to()], slopeS[e]);
        }
        factor(matrix);
        Linearisation linearisation = new Linearisation(row, matrix, slopeS);
        linearisation.regulate(elements, solution);
        return linearisation;
    }

    private static double slope(Element element, Solution solution) {
        BranchLaw law = BranchLaw.of(
                element instanceof SensedSource source
                        ? source.raised(source.wantedRaiseV(RemoteSensing.lostV(source, solution)))
                        : element);
        if (law instanceof BranchLaw.Ideal) {
            return MOST_S;
        }
        double driveV = solution.voltageV(element.from()) - solution.voltageV(element.to()) + law.biasV;
        double slopeS = law.slopeS(driveV, law.currentA(driveV));
        return Math.min(MOST_S, Math.max(0, slopeS));
    }

    private static void add(double[][] matrix, int from, int to, double slopeS) {
        if (from >= 0) {
            matrix[from][from] += slopeS;
        }
        if (to >= 0) {
            matrix[to][to] += slopeS;
        }
        if (from >= 0 && to >= 0) {
            matrix[Math.max(from, to)][Math.min(from, to)] -= slopeS;
        }
    }

    /** Cholesky's method without roots, in place; each row from its first figure on, before which nothing comes about. */
    private static void factor(double[][] matrix) {
        int[] first = new int[matrix.length];
        for (int k = 0; k < matrix.length; k++) {
            double[] rowK = matrix[k];
            int start = 0;
            while (rowK[start] == 0) {
                start++;
            }
            first[k] = start;
            for (int j = start; j < k; j++) {
                double[] rowJ = matrix[j];
                double sum = rowK[j];
                for (int m = Math.max(start, first[j]); m < j; m++) {
                    sum -= rowK[m] * rowJ[m];
                }
                rowK[j] = sum;
            }
            double pivot = rowK[k];
            for (int j = start; j < k; j++) {
                double scaled = rowK[j] / matrix[j][j];
                pivot -= rowK[j] * scaled;
                rowK[j] = scaled;
            }
            rowK[k] = Math.max(pivot, LEAK_S * LEAK_S);
        }
    }

    /** Derivative of an element's current by its voltage, S. */
    public double slopeS(int element) {
        return slopeS[element];
    }

    /** Voltage of each node to the reference for 1 A put in at one node and taken out at another, V. */
    public double[] response(int from, int to) {
        double[] x = solve(from, to);
        double[] voltsV = new double[row.length];
        for (int n = 0; n < row.length; n++) {
            voltsV[n] = row[n] < 0 ? 0 : x[row[n]];
        }
        return voltsV;
    }

    private double[] solve(int from, int to) {
        double[] x = new double[factors.length];
        put(x, from, to, 1);
        for (int k = 0; k < x.length; k++) {
            for (int j = 0; j < k; j++) {
                x[k] -= factors[k][j] * x[j];
            }
        }
        for (int k = 0; k < x.length; k++) {
            x[k] /= factors[k][k];
        }
        for (int k = x.length - 1; k >= 0; k--) {
            for (int j = 0; j < k; j++) {
                x[j] -= factors[k][j] * x[k];
            }
        }
        regulators.forEach(regulator -> regulator.apply(x));
        return x;
    }
}
