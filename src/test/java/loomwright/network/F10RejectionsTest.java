package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** Feature 10: what cannot be calculated with is rejected with all its faults, and every kind of element has a law. */
class F10RejectionsTest {
    private static List<InputError> faults(ThrowingCallable call) {
        return catchThrowableOfType(RejectedInput.class, call).faults();
    }

    @Test
    void anElementMustLieBetweenTwoNodesThatExist() {
        List<Element> elements =
                List.of(new Resistor("r", 0, 0, 5), new Resistor("r", 0, 2, 5), new Resistor("q", -1, 0, 5));
        assertThat(faults(() -> new Network(List.of("a", "b"), elements, 3)))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(
                        tuple(InputError.Code.UNKNOWN_REFERENCE, "/reference"),
                        tuple(InputError.Code.CONTRADICTION, "/elements/0"),
                        tuple(InputError.Code.UNKNOWN_REFERENCE, "/elements/1/to"),
                        tuple(InputError.Code.UNKNOWN_REFERENCE, "/elements/2/from"));
    }

    @Test
    void valuesMustBeInTheirRanges() {
        assertThat(faults(() -> new Resistor("r", 0, 1, -1)).get(0).pointer()).isEqualTo("/resistanceOhm");
        assertThat(faults(() -> new Resistor("r", 0, 1, Double.NaN)).get(0).code())
                .isEqualTo(InputError.Code.OUT_OF_RANGE);
        assertThat(faults(() -> new VoltageSource("s", 0, 1, Double.POSITIVE_INFINITY, -1)))
                .hasSize(2);
        assertThat(faults(() -> new CurrentSource("i", 0, 1, Double.NaN))).hasSize(1);
        assertThat(faults(() -> new PowerLoad("p", 0, 1, -1, 0))).hasSize(2);
        assertThat(faults(() -> new UnidirectionalElement("d", 0, 1, 1e9, 1e-30, 0)))
                .hasSize(3);
        assertThat(faults(() -> new Lamp("l", 0, 1, 0, 0, 2))).hasSize(3);
    }

    @Test
    void aNetworkLargerThanTheLimitsIsRejected() {
        NetworkSolver solver = new NetworkSolver(new NetworkLimits(2, 1, 100));
        List<Element> elements = List.of(new Resistor("r", 0, 1, 5), new Resistor("q", 1, 2, 5));
        Network network = new Network(List.of("a", "b", "c"), elements, 0);
        assertThat(faults(() -> solver.solve(network)))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(
                        tuple(InputError.Code.OVER_LIMIT, "/nodes"), tuple(InputError.Code.OVER_LIMIT, "/elements"));
    }

    @Test
    void everyKindOfElementHasALaw() {
        List<Element> one = List.of(
                new Resistor("r", 0, 1, 5),
                new VoltageSource("s", 0, 1, 12, 1),
                new TwoSlopeSource("b", 0, 1, 12, 0.01, 0.2),
                new CurrentSource("i", 0, 1, 1),
                new PowerLoad("p", 0, 1, 10, 6),
                new UnidirectionalElement("d", 0, 1, 0.7, 0.1, 5),
                new SensedSource("g", 0, 1, 14, 0.1, 5, 1, 0, 4),
                new Lamp("l", 0, 1, 12, 21, 0.1));
        assertThat(Stream.of(Element.class.getPermittedSubclasses()))
                .containsExactlyInAnyOrderElementsOf(
                        one.stream().map(Object::getClass).toList());
        for (Element element : one) {
            BranchLaw branch = BranchLaw.of(element);
            assertSlopeIsTheDerivative(branch);
        }
    }

    private static void assertSlopeIsTheDerivative(BranchLaw branch) {
        for (double v : Arrays.asList(-20.0, -3.0, -0.01, 0.001, 0.2, 0.4, 9.0, 30.0)) {
            double h = 1e-6;
            double numeric = (branch.currentA(v + h) - branch.currentA(v - h)) / (2 * h);
            assertThat(branch.slopeS(v, branch.currentA(v)))
                    .isCloseTo(numeric, org.assertj.core.api.Assertions.within(1e-4 * (1 + Math.abs(numeric))));
        }
    }
}
