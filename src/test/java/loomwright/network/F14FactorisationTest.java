package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Feature 14: the full, the sparse and the star-mesh elimination agree, and the order is a permutation. */
class F14FactorisationTest {
    private static ConductanceMatrix random(int seed) {
        Random random = new Random(seed);
        int nodes = 2 + random.nextInt(60);
        Branch[] branches = new Branch[2 * nodes];
        double[] slopeS = new double[branches.length];
        for (int b = 0; b < branches.length; b++) {
            int from = b + 1 < nodes ? b + 1 : random.nextInt(nodes);
            int to = b + 1 < nodes ? random.nextInt(b + 1) : (from + 1 + random.nextInt(nodes - 1)) % nodes;
            slopeS[b] = Math.pow(10, 3 * random.nextDouble());
            branches[b] = new Branch.Linear(from, to, 0, slopeS[b], 0);
        }
        Contraction contraction = new Contraction(nodes, 0, branches);
        return new ConductanceMatrix(contraction, Islands.of(contraction, slopeS), slopeS);
    }

    @Property(seed = "141", tries = 200)
    void threeWaysAgree(@ForAll @IntRange(max = 1_000_000) int seed) {
        ConductanceMatrix matrix = random(seed);
        double[] right = new Random(seed).doubles(matrix.size).toArray();
        double[] dense = solved(new DenseFactorisation(), matrix, right);
        double[] sparse = solved(new SparseFactorisation(), matrix, right);
        double[] starMesh = solved(new StarMeshFactorisation(), matrix, right);
        for (int i = 0; i < right.length; i++) {
            assertThat(sparse[i]).isCloseTo(dense[i], within(1e-9 * (1 + Math.abs(dense[i]))));
            assertThat(starMesh[i]).isCloseTo(dense[i], within(1e-9 * (1 + Math.abs(dense[i]))));
        }
    }

    private static double[] solved(Factorisation factorisation, ConductanceMatrix matrix, double[] right) {
        assertThat(factorisation.factor(matrix)).isTrue();
        double[] x = right.clone();
        factorisation.solve(x);
        return x;
    }

    @Property(seed = "142", tries = 200)
    void theOrderNumbersEachUnknownOnce(@ForAll @IntRange(max = 1_000_000) int seed) {
        ConductanceMatrix matrix = random(seed);
        assertThat(new DissectionOrder(matrix).position())
                .containsExactlyInAnyOrder(IntStream.range(0, matrix.size).toArray());
    }
}
