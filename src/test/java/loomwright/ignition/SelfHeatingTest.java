package loomwright.ignition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.ignition.SelfHeating.Runaway;
import loomwright.ignition.SelfHeating.Settled;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** A winding that heats itself: it settles, or it runs away. */
class SelfHeatingTest {
    private static final double ALPHA = SelfHeating.COPPER_PER_K;

    @Test
    @DisplayName("copper doubles its resistance at 276.4 C with 0.0039, 274.5 C with 0.00393"
            + " (OpenStax University Physics vol. 2, section 9.3, problem)")
    void copperDoublesWhereThePublishedProblemSays() {
        assertThat(SelfHeating.resistanceOhm(1, 0.0039, 276.4)).isCloseTo(2, within(2e-4));
        assertThat(SelfHeating.resistanceOhm(1, ALPHA, 274.5)).isCloseTo(2, within(2e-4));
    }

    /** T - Ta = Rth I^2 R20 (1 + alpha (T - 20)) is linear in T. */
    @Property(seed = "20260310")
    void atConstantCurrentItSettlesWhereTheLineSaysOrRunsAway(
            @ForAll @DoubleRange(min = 0.1, max = 8) double currentA,
            @ForAll @DoubleRange(min = 0.3, max = 4) double ohm,
            @ForAll @DoubleRange(min = 0, max = 30) double kPerW) {
        SelfHeating.End end = new SelfHeating(ohm, ALPHA, kPerW, 30).solve(r -> currentA * currentA * r, 200);
        double coldRiseK = kPerW * currentA * currentA * ohm * (1 + ALPHA * 10);
        double loop = kPerW * currentA * currentA * ohm * ALPHA;
        double expectedC = 30 + coldRiseK / (1 - loop);
        if (loop < 1 && expectedC < 200) {
            assertThat(end).isInstanceOf(Settled.class);
            assertThat(((Settled) end).hot().temperatureC()).isCloseTo(expectedC, within(1e-6));
        } else {
            assertThat(end).isInstanceOf(Runaway.class);
        }
    }

    @Property(seed = "20260311")
    void atConstantVoltageItSettlesWhereAGeneralRootFinderSays(
            @ForAll @DoubleRange(min = 1, max = 16) double volts,
            @ForAll @DoubleRange(min = 0.5, max = 10) double ohm,
            @ForAll @DoubleRange(min = 0.1, max = 20) double kPerW) {
        SelfHeating.End end = new SelfHeating(ohm, ALPHA, kPerW, 25).solve(r -> volts * volts / r, 1e5);
        double expectedC = new BrentSolver(1e-10, 1e-10)
                .solve(
                        1000,
                        t -> 25 + kPerW * volts * volts / (ohm * (1 + ALPHA * (t - 20))) - t,
                        25,
                        26 + kPerW * volts * volts / (ohm * (1 + ALPHA * 5)));
        assertThat(end)
                .asInstanceOf(InstanceOfAssertFactories.type(Settled.class))
                .satisfies(settled -> {
                    assertThat(settled.hot().temperatureC()).isCloseTo(expectedC, within(1e-6));
                    assertThat(settled.hot().powerW())
                            .isLessThanOrEqualTo(settled.cold().powerW());
                });
    }

    @Test
    void withoutThermalResistanceItStaysAsCold() {
        SelfHeating.End end = new SelfHeating(3, ALPHA, 0, 20).solve(r -> 144 / r, 200);
        assertThat(end).isInstanceOf(Settled.class);
        assertThat(((Settled) end).hot()).isEqualTo(end.cold());
    }

    @Test
    void runawayIsAResultThatNamesBothEnds() {
        SelfHeating.End end = new SelfHeating(3, ALPHA, 50, 20).solve(r -> 25 * r, 200);
        assertThat(end).isInstanceOf(Runaway.class);
        assertThat(end.cold().powerW()).isCloseTo(75, within(1e-9));
        assertThat(((Runaway) end).atCeiling().temperatureC()).isEqualTo(200);
    }
}
