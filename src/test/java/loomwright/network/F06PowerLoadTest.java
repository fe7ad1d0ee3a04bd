package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

/** Feature 6: constant-power loads stand at the solution of higher voltage, or say that the feed cannot supply them. */
class F06PowerLoadTest {
    /** v² − E·v + R·P = 0 has a solution while P ≤ E²/4R. */
    @Property(seed = "66", tries = 300)
    void behindAResistorItSolvesTheQuadraticEquation(
            @ForAll @Scale(6) @DoubleRange(min = 6, max = 48) double emfV,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 10) double ohm,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 2) double fraction) {
        double watts = fraction * emfV * emfV / (4 * ohm);
        double minimumV = 0.1 * emfV;
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", emfV, ohm)
                .power("p", "a", "0", watts, minimumV)
                .solve();
        if (fraction < 1) {
            double expected = (emfV + Math.sqrt(emfV * emfV - 4 * ohm * watts)) / 2;
            assertThat(r.volts("a")).isCloseTo(expected, within(1e-6 * emfV));
            assertThat(r.watts("p")).isCloseTo(watts, within(1e-9 * watts));
            assertThat(r.solution().findings()).isEmpty();
        } else if (fraction > 1) {
            assertThat(r.volts("a")).isLessThan(minimumV);
            assertThat(r.finding(NetworkFinding.Kind.OVERLOADED).elementIds()).containsExactly("p");
        }
    }

    @Test
    void belowItsMinimumEvenUnloadedItIsAResistor() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 5, 1)
                .power("p", "a", "0", 10, 10)
                .solve();
        assertThat(r.amps("p")).isCloseTo(5.0 / 11, within(1e-12));
        assertThat(r.finding(NetworkFinding.Kind.BELOW_MINIMUM).elementIds()).containsExactly("p");
    }

    @Test
    void withoutAFeedItTakesNothingAndSaysNothing() {
        Circuit.Reading r = new Circuit()
                .power("p", "a", "0", 10, 10)
                .resistor("r", "a", "0", 10)
                .solve();
        assertThat(r.amps("p")).isZero();
        assertThat(r.solution().findings()).isEmpty();
    }

    @Test
    void reversedItTakesTheSamePower() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", -12, 0.1)
                .power("p", "a", "0", 60, 9)
                .solve();
        assertThat(r.watts("p")).isCloseTo(60, within(1e-8));
        assertThat(r.amps("p")).isNegative();
    }

    @Test
    void severalOnOneFeedShareItsDrop() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0.05)
                .resistor("wire", "a", "b", 0.05)
                .power("p1", "b", "0", 60, 8)
                .power("p2", "b", "0", 60, 8)
                .lamp("l", "b", "0", 12, 21)
                .oneWay("d", "b", "c", 0.7, 0)
                .power("p3", "c", "0", 30, 8)
                .solve();
        assertThat(r.watts("p1") + r.watts("p2") + r.watts("p3")).isCloseTo(150, within(1e-6));
        assertThat(r.solution().findings()).isEmpty();
    }
}
