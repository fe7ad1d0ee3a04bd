package loomwright.ignition.gap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Pressure and temperature in the gap, from compression ratio and manifold. */
class CompressionTest {
    @Test
    @DisplayName("8:1 from 1 bar with exponent 1.3 at top dead centre: 8^1.3 = 14.93 bar (follows from the law)")
    void atTopDeadCentreTheWholeRatioCounts() {
        Compression compression = new Compression(8, 100_000, 40, 1.3, 0);
        assertThat(compression.ratioAtSpark()).isCloseTo(8, within(1e-12));
        assertThat(compression.pressurePa() / 1e5).isCloseTo(14.93, within(0.005));
    }

    /** The ideal gas law between the two states: p V / T is the same. */
    @Property(seed = "20260317")
    void theGasLawHoldsBetweenBottomAndSpark(
            @ForAll @DoubleRange(min = 4, max = 25) double ratio,
            @ForAll @DoubleRange(min = 0, max = 60) double advance,
            @ForAll @DoubleRange(min = 1.1, max = 1.4) double exponent) {
        Compression compression = new Compression(ratio, 90_000, 40, exponent, advance);
        double spark = compression.pressurePa() / compression.ratioAtSpark() / (compression.temperatureC() + 273.15);
        assertThat(spark).isCloseTo(90_000 / 313.15, within(1e-8));
    }

    /** Second method: the piston's place is where the rod, 3.5 cranks long, closes the triangle. */
    @Property(seed = "20260318")
    void theRatioFollowsFromTheTriangleOfCrankAndRod(
            @ForAll @DoubleRange(min = 4, max = 25) double ratio,
            @ForAll @DoubleRange(min = 1, max = 60) double advance) {
        double crankX = Math.sin(Math.toRadians(advance));
        double crankY = Math.cos(Math.toRadians(advance));
        double pistonY =
                new BrentSolver(1e-12).solve(1000, y -> Math.hypot(crankX, y - crankY) - 3.5, crankY + 3, crankY + 4);
        double clearance = 2 / (ratio - 1);
        double expected = (2 + clearance) / (4.5 - pistonY + clearance);
        assertThat(new Compression(ratio, 90_000, 40, 1.3, advance).ratioAtSpark())
                .isCloseTo(expected, within(1e-8 * expected));
    }
}
