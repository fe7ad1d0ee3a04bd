package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.circuit.Condition;
import loomwright.circuit.ResolvedSupply;
import loomwright.operation.Contacts;
import loomwright.operation.MeterRange;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * How likely the readings are if a prediction is true.
 *
 * <p>Figures follow a joint normal distribution about the prediction. Its covariance is that of the sheet of readings: each
 * figure of the plan is off by its tolerance, each by itself but the same for all readings; so are the supply of a condition
 * and the share by which a meter is off; the last digits of the meter are each reading's own. Limits become standard deviations
 * by 1/√3 (JCGM 100:2008, GUM, 4.3.7, from memory). While the engine turns, a meter shows something between closed and open
 * contacts.
 *
 * <p>Each reading is simply wrong with probability {@value #WRONG}: then it is anything the meter can show. The sum over all
 * sets of wrong readings is taken along the likeliest, one more wrong reading at a time. What it costs to leave one out follows
 * from the inverse of the covariance (C. E. Rasmussen, C. K. I. Williams, Gaussian Processes for Machine Learning, 2006,
 * 5.12, from memory).
 */
final class Likelihood {
    /** A reading is wrong so often: a lead on the wrong terminal, a bad contact, a slip of the pen (common practice, no source). */
    static final double WRONG = 0.02;
    /** A fault that is not in the set leaves no more than this share of the readings as the plan has them. */
    private static final double TOUCHED = 0.5;

    private static final double LIMIT_TO_DEVIATION = 1 / Math.sqrt(3);
    /** Leads move, contacts breathe (common practice, no source). */
    private static final double HAND_V = 0.003;

    private static final double HAND_OHM = 0.05;
    /** Roughly, before the influences are known: resistances within 8 per cent. */
    private static final double ROUGH_SHARE = 0.08;

    /** The supply, the meter on volts, the meter on ohms. */
    private static final int COMMON = 3;

    private static final double MOST_V = 20;
    private static final int MOST_WRONG = 6;
    private static final double SIGN_WORDS = Sign.values().length;

    private final DiagnosisQuestion question;
    private final List<Measurement> measurements;
    private final double[] measured;
    private final double nominalV;
    private final boolean contactsUnknown;
    private final Map<Condition, ResolvedSupply> supplies = new EnumMap<>(Condition.class);

    Likelihood(DiagnosisQuestion question) {
        this.question = question;
        this.measurements = question.readings().stream()
                .map(r -> r.measurement(question.plan()))
                .toList();
        this.measured =
                question.readings().stream().mapToDouble(MeterReading::figure).toArray();
        this.nominalV = question.plan().system().nominalVoltageV();
        for (Condition condition : Condition.values()) {
            supplies.put(condition, question.plan().supply(condition));
        }
        this.contactsUnknown = Contacts.matter(question.plan())
                && measurements.stream()
                        .anyMatch(m ->
                                m.contacts() == Contacts.EITHER && !m.step().engineTurning());
    }

    private ResolvedSupply supply(Measurement m) {
        return Objects.requireNonNull(supplies.get(m.condition()));
    }

    List<Measurement> measurements() {
        return measurements;
    }

    double measured(int reading) {
        return measured[reading];
    }

    /** How far a meter may be off at a figure, V or ohm: a limit. */
    static double meterLimit(DiagnosisQuestion question, Measurement m, double figure) {
        return MeterRange.of(m.quantity(), figure).error(figure, question.meterFraction());
    }

    /** Whether a meter could not tell two predictions apart by any of the readings. */
    boolean alike(PredictedFigures one, PredictedFigures other) {
        for (int i = 0; i < measured.length; i++) {
            if (differs(i, one.at(i), other.at(i)) || differs(i, one.open(i), other.open(i))) {
                return false;
            }
        }
        return true;
    }

    /** Whether a figure of the meter, not only a sign, speaks for one of two predictions. */
    boolean toldByMeter(Fit one, Fit other) {
        for (int i = 0; i < measured.length; i++) {
            double apart = Math.abs(one.deviations().get(i) - other.deviations().get(i));
            if (measurements.get(i).part() == null && apart > 1) {
                return true;
            }
        }
        return false;
    }

    private boolean differs(int i, double one, double other) {
        Measurement m = measurements.get(i);
        if (m.part() != null) {
            return one != other;
        }
        double digits = MeterRange.of(m.quantity(), measured[i]).error(0, 0);
        double share = m.quantity() == Quantity.OHMS ? question.meterFraction() * Math.min(one, other) : 0;
        return Math.abs(one - other) > digits + share;
    }

    /** How likely the readings are. */
    Fit of(PredictedFigures predicted) {
        Fit closed = of(predicted, false, false);
        if (!contactsUnknown || predicted.single()) {
            return closed;
        }
        Fit open = of(predicted, true, false);
        Fit better = open.logLikelihood() > closed.logLikelihood() ? open : closed;
        return new Fit(
                sum(closed.logLikelihood(), open.logLikelihood()) - Math.log(2),
                better.deviations(),
                better.wrong(),
                open.logLikelihood() > closed.logLikelihood());
    }

    /**
     * The logarithm of how likely the readings are if there is something that was not thought of: any of them may be as the
     * plan has it, dead, at the supply's voltage or anything else.
     *
     * @param sound what the plan as drawn shows; null if it has no solution
     */
    double ofUnexplained(@Nullable PredictedFigures sound) {
        if (sound == null) {
            double log = 0;
            for (int i = 0; i < measured.length; i++) {
                log += Math.log(anything(i));
            }
            return log;
        }
        double closed = of(sound, false, true).logLikelihood();
        return contactsUnknown && !sound.single()
                ? sum(closed, of(sound, true, true).logLikelihood()) - Math.log(2)
                : closed;
    }

    private Fit of(PredictedFigures predicted, boolean contactsOpen, boolean unexplained) {
        double log = 0;
        Double[] deviations = new Double[measured.length];
        Set<Integer> wrong = new LinkedHashSet<>();
        List<Integer> figures = new ArrayList<>();
        for (int i = 0; i < measured.length; i++) {
            Measurement m = measurements.get(i);
            double figure = contactsOpen && isUnknown(m) ? predicted.open(i) : predicted.at(i);
            deviations[i] = 0.0;
            if (m.part() != null) {
                double seen = Seen.of(figure).likelihoodOf(Sign.of(measured[i]));
                log += Math.log(unexplained ? (1 - TOUCHED) * seen + TOUCHED / SIGN_WORDS : seen);
                if (seen < Seen.EXPLAINED) {
                    deviations[i] = 2 * Fit.LIMIT;
                    wrong.add(i);
                }
            } else if (m.quantity() == Quantity.OHMS && (figure >= Bench.OPEN_OHM || isOpen(i))) {
                boolean same = figure >= Bench.OPEN_OHM && isOpen(i);
                double odd = unexplained ? TOUCHED * anything(i) : WRONG * slip(i);
                log += Math.log(same ? (1 - (unexplained ? TOUCHED : WRONG)) + odd : odd);
                if (!same) {
                    deviations[i] = 2 * Fit.LIMIT;
                    wrong.add(i);
                }
            } else {
                figures.add(i);
            }
        }
        Normal normal = new Normal(predicted, contactsOpen, figures, deviations);
        log += normal.log(unexplained, wrong);
        return new Fit(log, Arrays.asList(deviations), wrong, contactsOpen);
    }

    private static boolean isUnknown(Measurement m) {
        return m.contacts() == Contacts.EITHER && !m.step().engineTurning();
    }

    private boolean isOpen(int i) {
        return measurements.get(i).quantity() == Quantity.OHMS && measured[i] >= Bench.OPEN_OHM;
    }

    /** Density of a reading that is wrong: anything the meter shows, resistances by their logarithm. */
    private double slip(int i) {
        if (measurements.get(i).quantity() == Quantity.OHMS) {
            return isOpen(i) ? 0.3 : 0.7 / (Math.max(measured[i], 0.1) * Math.log(Bench.OPEN_OHM / 0.1));
        }
        return 1 / (2 * Math.max(MOST_V * nominalV / 12, Math.abs(measured[i])));
    }

    /** Density of a reading about which nothing is known but that it is one of a vehicle. */
    private double anything(int i) {
        Measurement m = measurements.get(i);
        if (m.part() != null) {
            return 1 / SIGN_WORDS;
        } else if (m.quantity() == Quantity.OHMS) {
            return slip(i);
        }
        double supplyV = supply(m).emfV();
        double v = Math.abs(measured[i]);
        double even = v < 1.25 * supplyV ? 1 / (1.25 * supplyV) : 1e-3 / nominalV;
        return 0.5 * even + 0.25 * normal(v, 0.02 + 0.002 * nominalV) + 0.25 * normal(v - supplyV, 0.03 * supplyV);
    }

    private static double normal(double x, double deviation) {
        double z = x / deviation;
        return Math.exp(-z * z / 2) / (deviation * Math.sqrt(2 * Math.PI));
    }

    static double sum(double oneLog, double otherLog) {
        double most = Math.max(oneLog, otherLog);
        return most == Double.NEGATIVE_INFINITY
                ? most
                : most + Math.log(Math.exp(oneLog - most) + Math.exp(otherLog - most));
    }

    /** The joint normal distribution of some of the readings. */
    private final class Normal {
        private final List<Integer> readings;
        private final double[] residual;
        private final double[][] covariance;
        /** Of each reading by itself; what moves them together comes on top. */
        private final double[] own;
        /** Roughly only the supply and the meter move readings together: by how much each, a deviation. Else empty. */
        private final double[][] common;

        Normal(PredictedFigures predicted, boolean contactsOpen, List<Integer> readings, Double[] deviations) {
            this.readings = readings;
            int n = readings.size();
            this.residual = new double[n];
            this.own = new double[n];
            boolean roughly = predicted.spread(false) == null;
            this.covariance = new double[roughly ? 0 : n][n];
            this.common = new double[roughly ? n : 0][COMMON];
            List<Map<String, Double>> moves = new ArrayList<>(n);
            for (int k = 0; k < n; k++) {
                int i = readings.get(k);
                Measurement m = measurements.get(i);
                double closed = predicted.at(i);
                double open = predicted.open(i);
                boolean between = m.step().engineTurning();
                double figure = between ? (closed + open) / 2 : contactsOpen && isUnknown(m) ? open : closed;
                residual[k] = measured[i] - figure;
                double alone = MeterRange.of(m.quantity(), measured[i]).error(0, 0) * LIMIT_TO_DEVIATION;
                alone = Math.hypot(alone, m.quantity() == Quantity.OHMS ? HAND_OHM : HAND_V * nominalV / 12);
                if (between) {
                    alone = Math.hypot(alone, Math.abs(open - closed) / Math.sqrt(12));
                }
                PredictedFigures.Spread spread = predicted.spread(contactsOpen && isUnknown(m));
                alone = Math.hypot(alone, ownSpread(m, spread, i, measured[i]));
                own[k] = alone * alone;
                if (spread != null) {
                    moves.add(spread.moves()[i]);
                }
            }
            double share = question.meterFraction() * LIMIT_TO_DEVIATION;
            for (int k = 0; k < n; k++) {
                Measurement m = measurements.get(readings.get(k));
                double shown = measured[readings.get(k)];
                if (roughly) {
                    boolean volts = m.quantity() == Quantity.VOLTS;
                    common[k][0] = volts ? shown * supply(m).tolerancePercent() / 100 * LIMIT_TO_DEVIATION : 0;
                    common[k][1] = volts ? share * shown : 0;
                    common[k][2] = volts ? 0 : share * shown;
                } else {
                    for (int j = 0; j <= k; j++) {
                        // A meter that shows too much does so at every reading.
                        double meter =
                                quantity(k) == quantity(j) ? share * share * shown * measured[readings.get(j)] : 0;
                        double both = product(moves.get(k), moves.get(j)) / 3 + meter + (j == k ? own[k] : 0);
                        covariance[k][j] = both;
                        covariance[j][k] = both;
                    }
                }
                deviations[readings.get(k)] = residual[k] / Math.sqrt(variance(k));
            }
        }

        private double variance(int k) {
            return common.length == 0 ? covariance[k][k] : own[k] + product(common[k], common[k]);
        }

        /** What is off in one reading only. */
        private double ownSpread(Measurement m, PredictedFigures.@Nullable Spread spread, int i, double figure) {
            if (m.quantity() == Quantity.OHMS) {
                return (spread == null ? 2 * ROUGH_SHARE * figure : spread.ohms()[i]) * LIMIT_TO_DEVIATION;
            } else if (spread != null) {
                return 0;
            }
            double supplyV = supply(m).emfV();
            double v = Math.abs(figure);
            return Math.sqrt(2) * ROUGH_SHARE * LIMIT_TO_DEVIATION * v * Math.max(0, 1 - v / supplyV);
        }

        private Quantity quantity(int k) {
            return measurements.get(readings.get(k)).quantity();
        }

        private static double product(double[] one, double[] other) {
            double sum = 0;
            for (int c = 0; c < one.length; c++) {
                sum += one[c] * other[c];
            }
            return sum;
        }

        private static double product(Map<String, Double> one, Map<String, Double> other) {
            Map<String, Double> less = one.size() < other.size() ? one : other;
            Map<String, Double> more = less == one ? other : one;
            double sum = 0;
            for (Map.Entry<String, Double> entry : less.entrySet()) {
                sum += entry.getValue() * more.getOrDefault(entry.getKey(), 0.0);
            }
            return sum;
        }

        /**
         * The density, wrong readings summed over.
         *
         * @param wrong is given the readings that are likelier wrong than right
         */
        double log(boolean unexplained, Set<Integer> wrong) {
            double right = Math.log(1 - (unexplained ? TOUCHED : WRONG));
            List<Integer> left = new ArrayList<>();
            for (int k = 0; k < readings.size(); k++) {
                left.add(k);
            }
            int most = unexplained ? left.size() : Math.min(MOST_WRONG, left.size());
            double total = Double.NEGATIVE_INFINITY;
            double soFar = 0;
            double best = Double.NEGATIVE_INFINITY;
            List<Integer> out = new ArrayList<>();
            int bestOut = 0;
            while (true) {
                Factored factored = new Factored(left);
                double log = soFar + right * left.size() + factored.log;
                total = sum(total, log);
                if (log > best) {
                    best = log;
                    bestOut = out.size();
                }
                if (out.size() == most || left.isEmpty()) {
                    break;
                }
                int worst = 0;
                double gain = Double.NEGATIVE_INFINITY;
                for (int k = 0; k < left.size(); k++) {
                    double without = odd(left.get(k), unexplained) - right - factored.logOf(k);
                    if (without > gain) {
                        gain = without;
                        worst = k;
                    }
                }
                if (gain < -12) {
                    break;
                }
                soFar += odd(left.get(worst), unexplained);
                out.add(left.remove(worst));
            }
            out.subList(0, bestOut).forEach(k -> wrong.add(readings.get(k)));
            return total;
        }

        private double odd(int k, boolean unexplained) {
            int i = readings.get(k);
            return Math.log(unexplained ? TOUCHED * anything(i) : WRONG * slip(i));
        }

        /** The distribution of some of them, and what each is given the others. */
        private final class Factored {
            private final double log;
            private final double[] precision;
            private final double[] pull;

            Factored(List<Integer> left) {
                int n = left.size();
                precision = new double[n];
                pull = new double[n];
                log = common.length == 0 ? ofAll(left) : ofFewCommon(left);
            }

            /**
             * By the matrix inversion lemma, (D + UUᵀ)⁻¹ = D⁻¹ − D⁻¹U(I + UᵀD⁻¹U)⁻¹UᵀD⁻¹, with the determinant |D|·|I + UᵀD⁻¹U|
             * (M. A. Woodbury, 1950, from memory).
             */
            private double ofFewCommon(List<Integer> left) {
                int n = left.size();
                double[][] inner = new double[COMMON][COMMON];
                double[] projected = new double[COMMON];
                double squares = 0;
                double logDeterminant = 0;
                for (int c = 0; c < COMMON; c++) {
                    inner[c][c] = 1;
                }
                for (int k : left) {
                    squares += residual[k] * residual[k] / own[k];
                    logDeterminant += Math.log(own[k]);
                    for (int c = 0; c < COMMON; c++) {
                        projected[c] += common[k][c] * residual[k] / own[k];
                        for (int e = 0; e < COMMON; e++) {
                            inner[c][e] += common[k][c] * common[k][e] / own[k];
                        }
                    }
                }
                logDeterminant += invert(inner);
                double[] fitted = times(inner, projected);
                for (int k = 0; k < n; k++) {
                    int i = left.get(k);
                    double[] u = common[i];
                    precision[k] = 1 / own[i] - product(u, times(inner, u)) / (own[i] * own[i]);
                    pull[k] = (residual[i] - product(u, fitted)) / own[i];
                }
                return -(squares - product(projected, fitted) + logDeterminant + n * Math.log(2 * Math.PI)) / 2;
            }

            private double[] times(double[][] matrix, double[] vector) {
                double[] result = new double[vector.length];
                for (int c = 0; c < result.length; c++) {
                    result[c] = product(matrix[c], vector);
                }
                return result;
            }

            /** In place, by Gauss and Jordan without pivots, which a positive definite matrix does without; its log determinant. */
            private double invert(double[][] matrix) {
                double logDeterminant = 0;
                for (int c = 0; c < matrix.length; c++) {
                    double pivot = matrix[c][c];
                    logDeterminant += Math.log(pivot);
                    matrix[c][c] = 1;
                    for (int e = 0; e < matrix.length; e++) {
                        matrix[c][e] /= pivot;
                    }
                    for (int row = 0; row < matrix.length; row++) {
                        if (row != c) {
                            double factor = matrix[row][c];
                            matrix[row][c] = 0;
                            for (int e = 0; e < matrix.length; e++) {
                                matrix[row][e] -= factor * matrix[c][e];
                            }
                        }
                    }
                }
                return logDeterminant;
            }

            private double ofAll(List<Integer> left) {
                int n = left.size();
                double[][] lower = new double[n][n];
                double logDeterminant = 0;
                for (int k = 0; k < n; k++) {
                    for (int j = 0; j <= k; j++) {
                        double sum = covariance[left.get(k)][left.get(j)];
                        for (int m = 0; m < j; m++) {
                            sum -= lower[k][m] * lower[j][m];
                        }
                        lower[k][j] = j == k ? Math.sqrt(Math.max(sum, 1e-12)) : sum / lower[j][j];
                    }
                    logDeterminant += 2 * Math.log(lower[k][k]);
                }
                double squares = 0;
                double[] column = new double[n];
                for (int c = -1; c < n; c++) {
                    for (int k = 0; k < n; k++) {
                        double sum = c < 0 ? residual[left.get(k)] : k == c ? 1 : 0;
                        for (int m = 0; m < k; m++) {
                            sum -= lower[k][m] * column[m];
                        }
                        column[k] = sum / lower[k][k];
                    }
                    double[] solved = column.clone();
                    for (int k = n - 1; k >= 0; k--) {
                        for (int m = k + 1; m < n; m++) {
                            solved[k] -= lower[m][k] * solved[m];
                        }
                        solved[k] /= lower[k][k];
                    }
                    if (c < 0) {
                        for (double x : column) {
                            squares += x * x;
                        }
                        System.arraycopy(solved, 0, pull, 0, n);
                    } else {
                        precision[c] = solved[c];
                    }
                }
                return -(squares + logDeterminant + n * Math.log(2 * Math.PI)) / 2;
            }

            /** Of one reading given the others. */
            double logOf(int k) {
                return (Math.log(precision[k] / (2 * Math.PI)) - pull[k] * pull[k] / precision[k]) / 2;
            }
        }
    }
}
