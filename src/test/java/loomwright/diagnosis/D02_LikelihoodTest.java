package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;
import loomwright.circuit.ResolvedSupply;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.MultivariateNormalDistribution;
import org.junit.jupiter.api.Test;

/** How likely readings are beside a prediction. */
class D02_LikelihoodTest {
    private static Likelihood of(Measurement measurement, double... measured) {
        List<MeterReading> readings = Arrays.stream(measured)
                .mapToObj(figure -> Bedside.reading(measurement, figure))
                .toList();
        return new Likelihood(DiagnosisQuestion.of(Bedside.TWO_LOADS, readings));
    }

    private static PredictedFigures figures(double... values) {
        return new PredictedFigures(values);
    }

    /** The joint density of three readings, tolerances and a common supply in it, by commons-math3. */
    @Property(seed = "41", tries = 200)
    void rightReadingsAreJointlyNormal(
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double first,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double second,
            @ForAll @DoubleRange(min = 0.1, max = 1) double moved) {
        double[] predicted = {12, 6, 3};
        double[] measured = {12 + 0.05 * first, 6 + 0.05 * second, 3};
        Likelihood likelihood = of(Bedside.volts("heater.a", Condition.RUN), measured);
        List<Map<String, Double>> moves =
                List.of(Map.of("a", moved), Map.of("a", moved / 2, "b", 0.5), Map.of("b", 1.0));
        PredictedFigures figures = figures(predicted).withSpread(spread(moves), spread(moves));
        double[][] covariance = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (String figure : List.of("a", "b")) {
                    covariance[i][j] += moves.get(i).getOrDefault(figure, 0.0)
                            * moves.get(j).getOrDefault(figure, 0.0)
                            / 3;
                }
                covariance[i][j] += 0.01 * 0.01 / 3 * measured[i] * measured[j];
            }
            // Two steps of the last digit on the range of 20 V, and an unsteady hand.
            covariance[i][i] += 0.02 * 0.02 / 3 + 0.003 * 0.003;
        }
        double all = Math.log(new MultivariateNormalDistribution(predicted, covariance).density(measured));
        double right = 3 * Math.log(1 - Likelihood.WRONG) + all;
        assertThat(likelihood.of(figures).logLikelihood()).isBetween(right - 1e-9, right + 0.5);
    }

    /** Before the tolerances' influences are known: a divider's own spread, supply and meter common to all; by commons-math3. */
    @Property(seed = "42", tries = 200)
    void roughlyTheSupplyAndTheMeterMoveAllReadings(
            @ForAll @DoubleRange(min = -0.2, max = 0.2) double first,
            @ForAll @DoubleRange(min = -0.2, max = 0.2) double second) {
        double[] predicted = {12, 6, 3};
        double[] measured = {12 + first, 6 + second, 3};
        ResolvedSupply supply = Bedside.TWO_LOADS.supply(Condition.RUN);
        double[][] covariance = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double shared = Math.pow(supply.tolerancePercent() / 100, 2) + 0.01 * 0.01;
                covariance[i][j] += shared / 3 * measured[i] * measured[j];
            }
            double divided = 0.08 * measured[i] * Math.max(0, 1 - measured[i] / supply.emfV());
            covariance[i][i] += 0.02 * 0.02 / 3 + 0.003 * 0.003 + 2 * divided * divided / 3;
        }
        double all = Math.log(new MultivariateNormalDistribution(predicted, covariance).density(measured));
        double right = 3 * Math.log(1 - Likelihood.WRONG) + all;
        assertThat(of(Bedside.volts("heater.a", Condition.RUN), measured)
                        .of(figures(predicted))
                        .logLikelihood())
                .isBetween(right - 1e-9, right + 2);
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static PredictedFigures.Spread spread(List<Map<String, Double>> moves) {
        return new PredictedFigures.Spread(moves.toArray(new Map[0]), new double[moves.size()]);
    }

    @Test
    void aSupplyThatIsLowForAllReadingsIsNoFault() {
        Measurement m = Bedside.volts("heater.a", Condition.RUN);
        Fit fit = of(m, 12.3, 12.3, 12.3).of(figures(12.5, 12.5, 12.5));
        assertThat(fit.explains()).isTrue();
        assertThat(fit.worst()).isLessThan(Fit.LIMIT);
    }

    @Test
    void aSupplyCanBeNoLowerThanItsToleranceAllows() {
        Measurement m = Bedside.volts("heater.a", Condition.RUN);
        Fit right = of(m, 12.3, 12.3, 12.3).of(figures(12.5, 12.5, 12.5));
        Fit fit = of(m, 10.5, 10.5, 10.5).of(figures(12.5, 12.5, 12.5));
        assertThat(fit.worst()).isGreaterThan(Fit.LIMIT);
        assertThat(fit.logLikelihood()).isLessThan(right.logLikelihood() - 10);
    }

    @Test
    void oneWrongReadingIsNamedAndLeavesTheOthersRight() {
        Measurement m = Bedside.volts("heater.a", Condition.RUN);
        Fit fit = of(m, 12.5, 12.5, 12.5, 0).of(figures(12.5, 12.5, 12.5, 12.5));
        assertThat(fit.wrong()).containsExactly(3);
    }
}
