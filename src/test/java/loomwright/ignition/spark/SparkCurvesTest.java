package loomwright.ignition.spark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.primary.Firing;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What is plotted is what is calculated: 1 current over the dwell, 2 kilovolts over speed and supply. */
class SparkCurvesTest {
    private static SparkInput asked(
            double speedRpm, SwitchInput closing, @Nullable SweepRange speeds, @Nullable SweepRange supplies) {
        return new SparkInput(
                speedRpm,
                new FeedInput(13.0, null, 1.2, null, null),
                new CoilInput(CoilPreset.FOR_BALLAST, null, null, null, null, null, null, null),
                null,
                null,
                closing,
                new EngineInput(4, 4, Firing.Arrangement.DISTRIBUTOR),
                new GapInput(null, null, null, null, null, null, null, null, null),
                null,
                new SearchInput(null, null, null, null, speeds, supplies));
    }

    private static SwitchInput breaker() {
        return new SwitchInput(SwitchInput.Kind.CONTACT_BREAKER, null, null, null, null, null, null, null, null);
    }

    private static SwitchInput limiting() {
        return new SwitchInput(
                SwitchInput.Kind.MODULE, 1.0, 3.0, SwitchInput.DwellRule.CONSTANT_TIME, null, 8e-3, 0.9, null, null);
    }

    @Test
    void theCurrentRunsFromTheStartCurrentToThatOfTheBreak() {
        for (SwitchInput closing : List.of(breaker(), limiting())) {
            SparkCurves curves = SparkCurves.of(asked(3000, closing, null, null));
            SparkCurves.Instant first = curves.charging().get(0);
            SparkCurves.Instant last = curves.charging().get(curves.charging().size() - 1);
            assertThat(first)
                    .isEqualTo(new SparkCurves.Instant(0, curves.at().build().residualA()));
            assertThat(last)
                    .isEqualTo(new SparkCurves.Instant(
                            curves.at().timing().dwellS(), curves.at().build().peakA()));
            assertThat(curves.charging())
                    .extracting(SparkCurves.Instant::currentA)
                    .isSorted();
            assertThat(curves.charging()).extracting(SparkCurves.Instant::timeS).isSorted();
        }
    }

    /** Each point against L di/dt = V - R i, integrated numerically (Commons Math, Dormand-Prince 8(5,3)). */
    @Test
    void theRiseSolvesTheCircuitEquation() {
        SparkInput input = asked(2400, breaker(), null, null);
        SparkSystem system = input.resolve().system();
        var circuit = system.circuit(13, false);
        FirstOrderDifferentialEquations rise = new FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 1;
            }

            @Override
            public void computeDerivatives(double t, double[] i, double[] slope) {
                slope[0] = (circuit.drivingV() - circuit.resistanceOhm() * i[0]) / circuit.inductanceH();
            }
        };
        SparkCurves curves = SparkCurves.of(input);
        double[] current = {curves.charging().get(0).currentA()};
        for (int n = 1; n < curves.charging().size() - 1; n++) {
            double from = curves.charging().get(n - 1).timeS();
            double to = curves.charging().get(n).timeS();
            new DormandPrince853Integrator(1e-12, to, 1e-12, 1e-12).integrate(rise, from, current, to, current);
            assertThat(curves.charging().get(n).currentA()).isCloseTo(current[0], within(1e-9));
        }
    }

    @Test
    void aModuleHoldsItsLimitToTheBreak() {
        SparkCurves curves = SparkCurves.of(asked(1500, limiting(), null, null));
        List<SparkCurves.Instant> charging = curves.charging();
        SparkCurves.Instant bend = charging.get(charging.size() - 2);
        assertThat(curves.at().build().heldS()).isPositive();
        assertThat(bend.currentA()).isCloseTo(3, within(1e-9));
        assertThat(bend.timeS())
                .isCloseTo(curves.at().timing().dwellS() - curves.at().build().heldS(), within(1e-12));
    }

    @Test
    void withoutASweepTheCurvesGoABitBeyondWhatIsAsked() {
        SparkCurves curves = SparkCurves.of(asked(3000, breaker(), null, null));
        double lastRpm = curves.overSpeed().get(curves.overSpeed().size() - 1).speedRpm();
        assertThat(curves.overSpeed().get(0).speedRpm()).isEqualTo(200);
        assertThat(lastRpm).isBetween(4500.0, 8000.0);
        if (curves.marginEndsRpm().kind() == Boundary.Kind.AT) {
            assertThat(lastRpm)
                    .isGreaterThan(Math.min(7999, curves.marginEndsRpm().value()));
        }
        assertThat(curves.overSupply())
                .anyMatch(point -> point.supplyV() < curves.at().supplyV());
        assertThat(curves.overSupply())
                .anyMatch(point -> point.supplyV() > curves.at().supplyV());
        assertThat(curves.requiredLowestV())
                .isLessThanOrEqualTo(curves.at().margin().requiredV());
        assertThat(curves.requiredHighestV())
                .isGreaterThanOrEqualTo(curves.at().margin().requiredV());
    }

    @Property(seed = "20260513", tries = 30)
    void theSweepsAreThoseOfTheAnswer(@ForAll @DoubleRange(min = 1000, max = 6000) double speedRpm) {
        SparkInput input = asked(speedRpm, breaker(), new SweepRange(500, 6000, 11), new SweepRange(6, 15, 9));
        SparkCurves curves = SparkCurves.of(input);
        SparkResult result = Spark.calculate(input).result();
        assertThat(curves.overSpeed()).isEqualTo(result.speedSweep());
        assertThat(curves.overSupply()).isEqualTo(result.supplySweep());
        assertThat(curves.at()).isEqualTo(result.at());
        assertThat(curves.marginEndsRpm()).isEqualTo(result.ends().marginEndsRpm());
    }
}
