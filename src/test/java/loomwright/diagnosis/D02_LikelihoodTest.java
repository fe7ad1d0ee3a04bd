package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** How likely readings are beside a prediction. */
class D02_LikelihoodTest {
    private static final Measurement OHMS =
            new Measurement(Probe.of("heater.a", "heater.b"), Quantity.OHMS, Condition.OFF, Map.of());

    private static Likelihood of(Measurement measurement, double... measured) {
        List<MeterReading> readings = Arrays.stream(measured)
                .mapToObj(figure -> Bedside.reading(measurement, figure))
                .toList();
        return new Likelihood(new DiagnosisQuestion(Bedside.TWO_LOADS, readings, MeterAccuracy.USUAL));
    }

    private static PredictedFigures figures(double... values) {
        return new PredictedFigures(values);
    }

    /** commons-math3 has the same density, up to the constant that is left out here. */
    @Property(seed = "41", tries = 200)
    void aDeviationIsWeighedByStudentsTWithFourDegreesOfFreedom(
            @ForAll @DoubleRange(min = 0, max = 100) double measured,
            @ForAll @DoubleRange(min = 0, max = 100) double predicted) {
        TDistribution t = new TDistribution(Likelihood.FREEDOM);
        Likelihood likelihood = of(OHMS, measured);
        double u = likelihood.deviation(0, predicted);
        double z = (measured - predicted) / u;
        assertThat(likelihood.of(figures(predicted)).logLikelihood())
                .isCloseTo(t.logDensity(z) - t.logDensity(0) - Math.log(u), within(1e-9));
    }

    @Test
    void meterAndPartsAddAsRootOfTheSumOfSquares() {
        // 0.5 per cent of 6 ohm and 0.2 ohm: 0.23; the parts 5/√3 per cent of 6: 0.1732
        assertThat(of(OHMS, 6).deviation(0, 6)).isCloseTo(Math.hypot(0.23, 0.173205), within(1e-5));
    }

    /** A divider of two resistances r and s: by how much its middle moves if both are off by themselves. */
    @Property(seed = "42", tries = 100)
    void theMiddleOfADividerIsAsUncertainAsItsTwoResistancesMakeIt(
            @ForAll @DoubleRange(min = 0.1, max = 100) double r, @ForAll @DoubleRange(min = 0.1, max = 100) double s) {
        Uncertainty uncertainty = new Uncertainty(Bedside.TWO_LOADS);
        Measurement m = Bedside.volts("heater.a", Condition.RUN);
        double emfV = uncertainty.supplyV(m);
        double share = Uncertainty.PART_SHARE;
        double step = 1e-6;
        double byR = (emfV * s / (r * (1 + step) + s) - emfV * s / (r + s)) / step * share;
        double byS = (emfV * s * (1 + step) / (r + s * (1 + step)) - emfV * s / (r + s)) / step * share;
        assertThat(uncertainty.ofPlan(m, emfV * s / (r + s))).isCloseTo(Math.hypot(byR, byS), within(1e-4));
    }

    @Test
    void aSupplyThatIsLowForAllReadingsIsNoFault() {
        Measurement m = Bedside.volts("heater.a", Condition.RUN);
        Fit fit = of(m, 12.3, 12.3, 12.3).of(figures(12.5, 12.5, 12.5));
        assertThat(fit.supplyShares().get(Condition.RUN)).isCloseTo(12.3 / 12.5, within(1e-3));
        assertThat(fit.worst()).isLessThan(0.2);
    }

    @Test
    void aSupplyCanBeNoLowerThanItsToleranceAllows() {
        Measurement m = Bedside.volts("heater.a", Condition.RUN);
        Fit fit = of(m, 11, 11, 11).of(figures(12.5, 12.5, 12.5));
        assertThat(fit.supplyShares().get(Condition.RUN)).isCloseTo(0.97, within(1e-9));
        assertThat(fit.explains()).isFalse();
    }

    @Test
    void oneWrongReadingDoesNotPullTheSupplyAway() {
        Measurement m = Bedside.volts("heater.a", Condition.RUN);
        Fit fit = of(m, 12.5, 12.5, 12.5, 0).of(figures(12.5, 12.5, 12.5, 12.5));
        assertThat(fit.supplyShares().get(Condition.RUN)).isCloseTo(1, within(1e-3));
        assertThat(fit.unexplained()).isEqualTo(1);
        assertThat(fit.deviates(3)).isTrue();
    }
}
