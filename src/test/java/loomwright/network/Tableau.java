package loomwright.network;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.BlockRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * A second formulation: all node voltages and all branch currents as unknowns at once, Kirchhoff's current law and the
 * branch relations as equations (the full tableau), solved by LU factorisation with pivoting (commons-math3).
 */
final class Tableau {
    private Tableau() {}

    /** p·v + q·i = c. */
    record Relation(int from, int to, double p, double q, double c) {
        static Relation of(Element e) {
            if (e instanceof Resistor r) {
                return new Relation(e.from(), e.to(), 1, -r.resistanceOhm(), 0);
            }
            if (e instanceof VoltageSource s) {
                return new Relation(e.from(), e.to(), 1, -s.resistanceOhm(), -s.voltageV());
            }
            if (e instanceof CurrentSource s) {
                return new Relation(e.from(), e.to(), 0, 1, s.currentA());
            }
            throw new IllegalArgumentException("not linear: " + e);
        }
    }

    /** Voltages of the nodes, node 0 being the reference, then currents; empty if the equations are singular. */
    static Optional<double[]> solve(int nodes, List<Relation> relations) {
        int size = nodes + relations.size();
        RealMatrix matrix = new BlockRealMatrix(size, size);
        ArrayRealVector right = new ArrayRealVector(size);
        matrix.setEntry(0, 0, 1);
        for (int k = 0; k < relations.size(); k++) {
            Relation r = relations.get(k);
            int row = nodes + k;
            matrix.addToEntry(row, r.from, r.p);
            matrix.addToEntry(row, r.to, -r.p);
            matrix.addToEntry(row, row, r.q);
            right.setEntry(row, r.c);
            if (r.from != 0) {
                matrix.addToEntry(r.from, row, 1);
            }
            if (r.to != 0) {
                matrix.addToEntry(r.to, row, -1);
            }
        }
        LUDecomposition lu = new LUDecomposition(matrix, 1e-13);
        return lu.getSolver().isNonSingular()
                ? Optional.of(lu.getSolver().solve(right).toArray())
                : Optional.empty();
    }
}
