package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.junit.jupiter.api.Test;

/** Feature 14: the elimination gives what a Cholesky factorisation of the full matrix gives, and its order is complete. */
class F14EliminationTest {
    /** Branches between nodes 0 to n - 1, all hanging together. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Mesh(int nodes, int[] from, int[] to, double[] conductanceS) {
        static Mesh random(int seed) {
            Random random = new Random(seed);
            int nodes = 2 + random.nextInt(60);
            int[] from = new int[2 * nodes];
            int[] to = new int[from.length];
            for (int b = 0; b < from.length; b++) {
                from[b] = b + 1 < nodes ? b + 1 : random.nextInt(nodes);
                to[b] = b + 1 < nodes ? random.nextInt(b + 1) : (from[b] + 1 + random.nextInt(nodes - 1)) % nodes;
            }
            double[] conductanceS =
                    random.doubles(from.length).map(d -> Math.pow(10, 3 * d)).toArray();
            return new Mesh(nodes, from, to, conductanceS);
        }

        double[] eliminated(double[] currentA) {
            StarElimination elimination = new StarElimination(nodes, from, to);
            double[] bySlot = new double[elimination.slots()];
            for (int b = 0; b < from.length; b++) {
                bySlot[elimination.slot(from[b], to[b])] += conductanceS[b];
            }
            assertThat(elimination.factor(bySlot)).isEqualTo(nodes - 1);
            double[] voltageV = currentA.clone();
            elimination.solve(voltageV);
            return voltageV;
        }

        double[] byCholesky(double[] currentA) {
            Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(nodes, nodes);
            matrix.setEntry(0, 0, 1);
            for (int b = 0; b < from.length; b++) {
                add(matrix, from[b], from[b], conductanceS[b]);
                add(matrix, to[b], to[b], conductanceS[b]);
                add(matrix, from[b], to[b], -conductanceS[b]);
                add(matrix, to[b], from[b], -conductanceS[b]);
            }
            double[] right = currentA.clone();
            right[0] = 0;
            return new CholeskyDecomposition(matrix)
                    .getSolver()
                    .solve(new ArrayRealVector(right))
                    .toArray();
        }

        private static void add(Array2DRowRealMatrix matrix, int row, int column, double s) {
            if (row != 0 && column != 0) {
                matrix.addToEntry(row, column, s);
            }
        }
    }

    @Property(seed = "141", tries = 200)
    void sameVoltagesAsByCholesky(@ForAll @IntRange(max = 1_000_000) int seed) {
        Mesh mesh = Mesh.random(seed);
        double[] currentA = new Random(seed).doubles(mesh.nodes()).toArray();
        double[] expected = mesh.byCholesky(currentA);
        double[] voltageV = mesh.eliminated(currentA);
        for (int node = 0; node < mesh.nodes(); node++) {
            assertThat(voltageV[node]).isCloseTo(expected[node], within(1e-9 * (1 + Math.abs(expected[node]))));
        }
    }

    @Property(seed = "142", tries = 200)
    void theOrderGivesEachNodeOnePlaceAndEarthTheLast(@ForAll @IntRange(max = 1_000_000) int seed) {
        Mesh mesh = Mesh.random(seed);
        int[] place = new EliminationOrder(mesh.nodes(), mesh.from(), mesh.to()).place();
        assertThat(place)
                .containsExactlyInAnyOrder(IntStream.range(0, mesh.nodes()).toArray());
        assertThat(place[0]).isEqualTo(mesh.nodes() - 1);
    }

    /** A tree is eliminated from its leaves: each node has one later neighbour at most, besides earth. */
    @Property(seed = "143", tries = 100)
    void aTreeGetsNoNewBranches(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        int nodes = 3 + random.nextInt(60);
        int[] from = IntStream.range(1, nodes).toArray();
        int[] to = IntStream.range(1, nodes).map(random::nextInt).toArray();
        assertThat(new EliminationOrder(nodes, from, to).later()).hasSizeLessThanOrEqualTo(2 * (nodes - 1));
    }

    /** Where nothing is, nothing moves; a falling conductance that prevails is told by the count. */
    @Test
    void countsTheNodesWithAPositiveSum() {
        StarElimination elimination = new StarElimination(3, new int[] {1, 2}, new int[] {0, 1});
        double[] conductanceS = new double[elimination.slots()];
        conductanceS[elimination.slot(0, 1)] = 2;
        assertThat(elimination.factor(conductanceS)).isEqualTo(1);
        double[] voltageV = {0, 6, 0};
        elimination.solve(voltageV);
        assertThat(voltageV).containsExactly(0, 3, 0);
        conductanceS[elimination.slot(1, 2)] = -1;
        assertThat(elimination.factor(conductanceS)).isEqualTo(1);
        conductanceS[elimination.slot(1, 2)] = 1;
        assertThat(elimination.factor(conductanceS)).isEqualTo(2);
    }

    /** To the last digit: what the elimination of a changed network leaves out had nothing to change. */
    @Property(seed = "15", tries = 200)
    void whatIsEliminatedAnewIsAsIfAllWere(@ForAll @IntRange(max = 1_000_000) int seed) {
        Mesh mesh = Mesh.random(seed);
        Random random = new Random(seed);
        StarElimination kept = new StarElimination(mesh.nodes, mesh.from, mesh.to);
        double[] bySlot = new double[kept.slots()];
        IntStream.range(0, mesh.from.length)
                .forEach(b -> bySlot[kept.slot(mesh.from[b], mesh.to[b])] += mesh.conductanceS[b]);
        for (int change = 0; change < 20; change++) {
            StarElimination fresh = new StarElimination(mesh.nodes, mesh.from, mesh.to);
            assertThat(kept.refactor(bySlot)).isEqualTo(fresh.factor(bySlot));
            double[] currentA = random.doubles(mesh.nodes).toArray();
            double[] keptV = currentA.clone();
            double[] freshV = currentA.clone();
            kept.solve(keptV);
            fresh.solve(freshV);
            assertThat(keptV).containsExactly(freshV);
            int branch = random.nextInt(mesh.from.length);
            bySlot[kept.slot(mesh.from[branch], mesh.to[branch])] = random.nextBoolean() ? 0 : random.nextDouble();
        }
    }
}
