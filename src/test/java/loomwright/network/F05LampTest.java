package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;

/** Feature 5: filament lamps, against a root search in one unknown. */
class F05LampTest {
    /** Source, resistor and lamp in one loop: the lamp's voltage by Brent's method (commons-math3). */
    @Property(seed = "55", tries = 300)
    void aLampBehindAResistorAgreesWithARootSearch(
            @ForAll @Scale(6) @DoubleRange(min = -48, max = 48) double emfV,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double ohm,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 100) double watts) {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", emfV, ohm)
                .lamp("lamp", "a", "0", 12, watts)
                .solve();
        double sign = Math.signum(emfV);
        double size = Math.abs(emfV);
        double expected = size == 0
                ? 0
                : sign * new BrentSolver(1e-15, 1e-13).solve(1000, v -> v + ohm * lampA(v, watts) - size, 0, size);
        assertThat(r.volts("a")).isCloseTo(expected, within(1e-9 * (1 + size)));
    }

    private static double lampA(double v, double watts) {
        return Math.min(watts / 12 * Math.pow(v / 12, 0.55), v * watts / 144 * 14);
    }

    @Test
    void twoEqualLampsInSeriesHaveHalfTheVoltageEach() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .lamp("l1", "a", "m", 12, 21)
                .lamp("l2", "m", "0", 12, 21)
                .solve();
        assertThat(r.volts("m")).isCloseTo(6, within(1e-10));
        assertThat(r.amps("l1")).isCloseTo(1.75 * Math.pow(0.5, 0.55), within(1e-10));
    }

    @Test
    void aSmallLampInSeriesWithALargeOneTakesNearlyAll() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .lamp("small", "a", "m", 12, 2)
                .lamp("large", "m", "0", 12, 60)
                .solve();
        assertThat(r.volts("m")).isBetween(0.0, 0.1);
        assertThat(r.amps("small")).isCloseTo(2.0 / 12, within(2e-3));
    }

    @Test
    void aLampBehindABlockingElementIsDark() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", -12, 0)
                .oneWay("d", "a", "m", 0.7, 0)
                .lamp("l", "m", "0", 12, 21)
                .solve();
        assertThat(r.amps("l")).isZero();
    }
}
