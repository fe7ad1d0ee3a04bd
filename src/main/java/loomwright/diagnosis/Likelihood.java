package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;
import loomwright.operation.Quantity;

/**
 * How likely the readings are if a prediction is true.
 *
 * <p>Each deviation z = (measured − predicted) / u follows Student's t with {@value #FREEDOM} degrees of freedom:
 * ln L = −ln u − (ν + 1)/2 · ln(1 + z²/ν). Beside the normal distribution it forgives a reading or two that are simply
 * wrong, so that an explanation of all others is not lost (K. L. Lange, R. J. A. Little, J. M. G. Taylor, Robust statistical
 * modeling using the t distribution, 1989, from memory). u is the root of the sum of squares of the meter's accuracy, taken as one standard
 * deviation because leads and hands add to it (common practice, no source), and {@link Uncertainty#ofPlan}.
 *
 * <p>The supply is unknown within its tolerance but the same for all readings of a condition: all their voltages are
 * taken as proportional to it, and its share of the plan's EMF is the one that makes them most likely.
 */
final class Likelihood {
    static final double FREEDOM = 4;
    /** Readings from which a first guess of the supply is taken. */
    private static final int MOST_GUESSES = 8;

    private static final int REFINEMENTS = 4;
    /** A point tells of the supply if it has at least this share of its voltage. */
    private static final double TELLING = 0.2;

    private final List<Measurement> measurements;
    private final double[] measured;
    private final double[] meter;
    private final Uncertainty uncertainty;
    private final Map<Condition, List<Integer>> voltsIn = new EnumMap<>(Condition.class);

    Likelihood(DiagnosisQuestion question) {
        this.measurements =
                question.readings().stream().map(MeterReading::measurement).toList();
        this.measured =
                question.readings().stream().mapToDouble(MeterReading::figure).toArray();
        this.uncertainty = new Uncertainty(question.plan());
        this.meter = new double[measured.length];
        for (int i = 0; i < measured.length; i++) {
            Measurement m = measurements.get(i);
            meter[i] = Uncertainty.ofMeter(question.meterOf(question.readings().get(i)), m, measured[i]);
            if (m.quantity() == Quantity.VOLTS) {
                voltsIn.computeIfAbsent(m.condition(), c -> new ArrayList<>()).add(i);
            }
        }
    }

    List<Measurement> measurements() {
        return measurements;
    }

    double measured(int reading) {
        return measured[reading];
    }

    /** How far the meter may be off at a reading, V or ohm. */
    double meter(int reading) {
        return meter[reading];
    }

    /** The standard deviation of a reading beside a prediction, V or ohm. */
    double deviation(int reading, double predicted) {
        return Math.hypot(meter[reading], uncertainty.ofPlan(measurements.get(reading), predicted));
    }

    /** How much a reading differs between two predictions, in parts of what the meter can tell. */
    double change(int reading, PredictedFigures one, PredictedFigures other) {
        return Math.abs(one.at(reading) - other.at(reading)) / meter[reading];
    }

    /** Whether a meter could not tell two predictions apart by any of the readings. */
    boolean alike(PredictedFigures one, PredictedFigures other) {
        for (int i = 0; i < measured.length; i++) {
            if (change(i, one, other) > 1) {
                return false;
            }
        }
        return true;
    }

    Fit of(PredictedFigures predicted) {
        double logLikelihood = 0;
        Map<Condition, Double> shares = new EnumMap<>(Condition.class);
        for (Map.Entry<Condition, List<Integer>> in : voltsIn.entrySet()) {
            double share = share(predicted, in.getValue());
            shares.put(in.getKey(), share);
            logLikelihood += prior(share, in.getValue());
        }
        List<Double> deviations = new ArrayList<>();
        for (int i = 0; i < measured.length; i++) {
            double share = measurements.get(i).quantity() == Quantity.VOLTS
                    ? shares.getOrDefault(measurements.get(i).condition(), 1.0)
                    : 1;
            double u = deviation(i, predicted.at(i));
            double z = (measured[i] - share * predicted.at(i)) / u;
            deviations.add(z);
            logLikelihood += logOf(z) - Math.log(u);
        }
        return new Fit(logLikelihood, deviations, shares);
    }

    private static double logOf(double z) {
        return -(FREEDOM + 1) / 2 * Math.log1p(z * z / FREEDOM);
    }

    private double prior(double share, List<Integer> readings) {
        double tolerance = uncertainty.supplyShare(measurements.get(readings.get(0)));
        return tolerance == 0 ? 0 : -Math.pow((share - 1) / tolerance, 2) / 2;
    }

    /** The supply's share of what the plan says that makes the readings of a condition most likely. */
    private double share(PredictedFigures predicted, List<Integer> readings) {
        Measurement first = measurements.get(readings.get(0));
        double tolerance = uncertainty.supplyShare(first);
        if (tolerance == 0) {
            return 1;
        }
        double[] u = new double[measured.length];
        for (int i : readings) {
            u[i] = deviation(i, predicted.at(i));
        }
        double best = 1;
        double most = logOf(predicted, readings, u, 1);
        int stride = 1 + readings.size() / MOST_GUESSES;
        for (int k = 0; k < readings.size(); k += stride) {
            int i = readings.get(k);
            if (Math.abs(predicted.at(i)) > TELLING * uncertainty.supplyV(first)) {
                double guess = within(measured[i] / predicted.at(i), tolerance);
                double log = logOf(predicted, readings, u, guess);
                if (log > most) {
                    most = log;
                    best = guess;
                }
            }
        }
        return refined(predicted, readings, u, tolerance, best);
    }

    /** Least squares with the weights of Student's t, again and again. */
    private double refined(
            PredictedFigures predicted, List<Integer> readings, double[] u, double tolerance, double start) {
        double share = start;
        for (int round = 0; round < REFINEMENTS; round++) {
            double above = 1 / (tolerance * tolerance);
            double below = above;
            for (int i : readings) {
                double z = (measured[i] - share * predicted.at(i)) / u[i];
                double weight = (FREEDOM + 1) / (FREEDOM + z * z) / (u[i] * u[i]);
                above += weight * measured[i] * predicted.at(i);
                below += weight * predicted.at(i) * predicted.at(i);
            }
            share = within(above / below, tolerance);
        }
        return share;
    }

    /** A tolerance is a limit. */
    private static double within(double share, double tolerance) {
        double limit = Math.sqrt(3) * tolerance;
        return Math.min(1 + limit, Math.max(1 - limit, share));
    }

    private double logOf(PredictedFigures predicted, List<Integer> readings, double[] u, double share) {
        double log = prior(share, readings);
        for (int i : readings) {
            log += logOf((measured[i] - share * predicted.at(i)) / u[i]);
        }
        return log;
    }
}
