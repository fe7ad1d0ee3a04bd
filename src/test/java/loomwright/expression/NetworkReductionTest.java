package loomwright.expression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import loomwright.answer.RejectedInput;
import loomwright.message.Argument.Verbatim;
import loomwright.network.Circuit;
import loomwright.network.Element;
import loomwright.network.Network;
import loomwright.network.RandomNetwork;
import loomwright.network.Resistor;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Test;

/** Feature 12: a network between two of its nodes is reduced if it is series/parallel, and solved if not. */
class NetworkReductionTest {
    private static NetworkReduction between(Circuit circuit, String a, String b) {
        Network network = circuit.network();
        return NetworkReduction.between(
                network, network.nodes().indexOf(a), network.nodes().indexOf(b));
    }

    private static Circuit bridge(double across) {
        return new Circuit()
                .resistor("a", "s", "l", 100)
                .resistor("b", "l", "0", 200)
                .resistor("c", "s", "r", 200)
                .resistor("d", "r", "0", 100)
                .resistor("across", "l", "r", across);
    }

    @Test
    void seriesAndParallelStepsAreGiven() {
        NetworkReduction r = between(
                new Circuit()
                        .resistor("r1", "a", "m", 1)
                        .resistor("r2", "m", "0", 6)
                        .resistor("r3", "0", "m", 13)
                        .resistor("dead", "m", "x", 9),
                "a",
                "0");
        assertThat(r.method()).isEqualTo(NetworkReduction.Method.SERIES_PARALLEL);
        assertThat(r.totalOhm().orElseThrow()).isCloseTo(1 + 78.0 / 19, within(1e-14));
        assertThat(r.steps())
                .extracting(Reduction.Step::rule)
                .containsExactlyInAnyOrder(Reduction.Rule.PARALLEL, Reduction.Rule.LEFT_OUT, Reduction.Rule.SERIES);
    }

    @Test
    void whatIsTakenTogetherHasANameOfItsOwn() {
        Circuit circuit = new Circuit()
                .resistor("T1", "s", "m", 1)
                .resistor("T2", "m", "n", 2)
                .resistor("R", "n", "0", 3);
        assertThat(between(circuit, "s", "0").steps())
                .extracting(step -> step.working().arguments().get("name"))
                .hasSize(2)
                .doesNotContain(new Verbatim("T1"), new Verbatim("T2"));
    }

    /** The bridge of 12 V and 87.273 mA in all: recomputed, no outside source. */
    @Test
    void aBridgeTakesAStarDeltaStep() {
        NetworkReduction r = between(bridge(50), "s", "0");
        assertThat(r.method()).isEqualTo(NetworkReduction.Method.STAR_DELTA);
        assertThat(r.totalOhm().orElseThrow()).isCloseTo(12 / 0.08727272727272727, within(1e-10));
        assertThat(r.steps().get(0).rule()).isEqualTo(Reduction.Rule.STAR_DELTA);
    }

    /** Opposite corners of a cube of equal resistors: 5/6 of one of them (a classic; follows from its symmetry). */
    @Test
    void aCubeIsSolved() {
        Circuit cube = new Circuit();
        for (int corner = 0; corner < 8; corner++) {
            for (int bit = 1; bit < 8; bit *= 2) {
                if ((corner & bit) == 0) {
                    cube.resistor(corner + "-" + bit, "" + corner, "" + (corner | bit), 1);
                }
            }
        }
        NetworkReduction r = between(cube, "0", "7");
        assertThat(r.method()).isEqualTo(NetworkReduction.Method.SOLVED);
        assertThat(r.totalOhm().orElseThrow()).isCloseTo(5.0 / 6, within(1e-14));
    }

    @Test
    void nothingBetweenAndNothingButAJoint() {
        Circuit circuit = new Circuit().resistor("j", "a", "b", 0).resistor("r", "0", "c", 5);
        assertThat(between(circuit, "a", "0").method()).isEqualTo(NetworkReduction.Method.OPEN);
        assertThat(between(circuit, "a", "0").totalOhm()).isEmpty();
        assertThat(between(circuit, "a", "b").totalOhm()).hasValue(0);
    }

    @Test
    void onlyResistorsAreTaken() {
        assertThatThrownBy(() -> between(new Circuit().source("s", "0", "a", 12, 1), "a", "0"))
                .isInstanceOf(RejectedInput.class)
                .hasMessageContaining("/elements/0");
    }

    /** (ea − eb)ᵀ·L⁺·(ea − eb), L⁺ the pseudo-inverse of the conductance matrix, by singular values (commons-math3). */
    @Property(seed = "121", tries = 300)
    void agreesWithThePseudoInverse(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        int n = 3 + random.nextInt(6);
        List<Element> elements = new ArrayList<>();
        RealMatrix laplace = new Array2DRowRealMatrix(n, n);
        int count = n + random.nextInt(n);
        for (int k = 0; k < count; k++) {
            int from = k < n - 1 ? k + 1 : random.nextInt(n);
            int to = k < n - 1 ? random.nextInt(k + 1) : (from + 1 + random.nextInt(n - 1)) % n;
            double ohm = Math.pow(10, 3 * random.nextDouble());
            elements.add(new Resistor("r" + k, from, to, ohm));
            laplace.addToEntry(from, from, 1 / ohm);
            laplace.addToEntry(to, to, 1 / ohm);
            laplace.addToEntry(from, to, -1 / ohm);
            laplace.addToEntry(to, from, -1 / ohm);
        }
        RealMatrix inverse = new SingularValueDecomposition(laplace).getSolver().getInverse();
        double expected = inverse.getEntry(0, 0) + inverse.getEntry(n - 1, n - 1) - 2 * inverse.getEntry(0, n - 1);
        Network network = new Network(RandomNetwork.names(n), elements, 0);
        NetworkReduction r = NetworkReduction.between(network, 0, n - 1);
        assertThat(r.totalOhm().orElseThrow()).isCloseTo(expected, within(1e-8 * expected));
    }
}
