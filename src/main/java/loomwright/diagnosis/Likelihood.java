package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
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

    /** Between two readings the engine was cranked or pushed so often, nobody having said so (common practice, no source). */
    private static final double MOVED = 0.1;

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
    private final Unsaid unsaid;
    private final List<Measurement> predicted;
    private final double[] measured;
    private final double nominalV;
    private final boolean contactsUnknown;
    private final Map<Condition, ResolvedSupply> supplies = new EnumMap<>(Condition.class);

    Likelihood(DiagnosisQuestion question) {
        this(question, Unsaid.NOTHING);
    }

    /**
     * Of a question.
     *
     * @param unsaid what nobody complains of
     */
    Likelihood(DiagnosisQuestion question, Unsaid unsaid) {
        this.unsaid = unsaid;
        this.question = question;
        this.measurements = question.readings().stream()
                .map(r -> r.measurement(question.plan()))
                .toList();
        this.predicted =
                Stream.concat(measurements.stream(), unsaid.looks().stream()).toList();
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

    /** What is to be predicted: what was measured, in that order, and what nobody complains of. */
    List<Measurement> predicted() {
        return predicted;
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
        return of(predicted, false);
    }

    /**
     * With the contacts as nobody said they stood: closed for all readings or open for all; seldom, where the engine was moved in
     * between, each reading with those that suit it.
     */
    private Fit of(PredictedFigures predicted, boolean unexplained) {
        Fit closed = of(predicted, Set.of(), unexplained);
        if (!contactsUnknown || predicted.single()) {
            return closed;
        }
        Set<Integer> all = new LinkedHashSet<>();
        Set<Integer> nearer = new LinkedHashSet<>();
        int differing = 0;
        for (int i = 0; i < measured.length; i++) {
            if (isUnknown(measurements.get(i))) {
                all.add(i);
                differing += predicted.at(i) == predicted.open(i) ? 0 : 1;
                if (isNearerOpen(predicted, i)) {
                    nearer.add(i);
                }
            }
        }
        Fit open = of(predicted, all, unexplained);
        double still = Math.log((1 - MOVED) / 2);
        double log = still + sum(closed.logLikelihood(), open.logLikelihood());
        Fit better = open.logLikelihood() > closed.logLikelihood() ? open : closed;
        if (differing > 1) {
            Fit mixed = of(predicted, nearer, unexplained);
            double moved = Math.log(MOVED) - differing * Math.log(2) + mixed.logLikelihood();
            better = moved > still + better.logLikelihood() ? mixed : better;
            log = sum(log, moved);
        }
        return new Fit(log, better.deviations(), better.wrong(), better.contactsOpen());
    }

    private boolean isNearerOpen(PredictedFigures predicted, int i) {
        if (measurements.get(i).part() != null) {
            Sign sign = Sign.of(measured[i]);
            return Seen.of(predicted.open(i)).likelihoodOf(sign)
                    > Seen.of(predicted.at(i)).likelihoodOf(sign);
        }
        return Math.abs(measured[i] - predicted.open(i)) < Math.abs(measured[i] - predicted.at(i));
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
        return of(sound, true).logLikelihood();
    }

    private Fit of(PredictedFigures predicted, Set<Integer> contactsOpen, boolean unexplained) {
        double log = 0;
        Double[] deviations = new Double[measured.length];
        Set<Integer> wrong = new LinkedHashSet<>();
        List<Integer> figures = new ArrayList<>();
        for (int i = 0; i < measured.length; i++) {
            Measurement m = measurements.get(i);
            double figure = contactsOpen.contains(i) ? predicted.open(i) : predicted.at(i);
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
        log += log(normal(predicted, contactsOpen, figures, deviations), figures, unexplained, wrong);
        if (!unexplained) {
            log += unsaid.log(predicted, measured.length);
        }
        return new Fit(log, Arrays.asList(deviations), wrong, contactsOpen);
    }

    private static boolean isUnknown(Measurement m) {
        return m.contacts() == Contacts.EITHER && !m.step().engineTurning();
    }

    private boolean isOpen(int i) {
        return measurements.get(i).quantity() == Quantity.OHMS && measured[i] >= Bench.OPEN_OHM;
    }

    /** Density of a reading that is wrong: anything the meter shows, resistances by their logarithm. */
    double slip(int i) {
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
    private JointNormal normal(
            PredictedFigures predicted, Set<Integer> contactsOpen, List<Integer> readings, Double[] deviations) {
        int n = readings.size();
        boolean roughly = predicted.spread(false) == null;
        double[] residual = new double[n];
        double[] own = new double[n];
        double[][] common = new double[n][COMMON];
        List<Map<String, Double>> moves = new ArrayList<>(n);
        double share = question.meterFraction() * LIMIT_TO_DEVIATION;
        for (int k = 0; k < n; k++) {
            int i = readings.get(k);
            Measurement m = measurements.get(i);
            boolean volts = m.quantity() == Quantity.VOLTS;
            double closed = predicted.at(i);
            double open = predicted.open(i);
            boolean between = m.step().engineTurning();
            double figure = between ? (closed + open) / 2 : contactsOpen.contains(i) ? open : closed;
            residual[k] = measured[i] - figure;
            double alone = MeterRange.of(m.quantity(), measured[i]).error(0, 0) * LIMIT_TO_DEVIATION;
            alone = Math.hypot(alone, volts ? HAND_V * nominalV / 12 : HAND_OHM);
            if (between) {
                alone = Math.hypot(alone, Math.abs(open - closed) / Math.sqrt(12));
            }
            PredictedFigures.Spread spread = predicted.spread(contactsOpen.contains(i));
            alone = Math.hypot(alone, ownSpread(m, spread, i, measured[i]));
            own[k] = alone * alone;
            if (spread != null) {
                moves.add(spread.moves()[i]);
            }
            // A meter that shows too much does so at every reading.
            boolean supplied = roughly && volts;
            common[k][0] = supplied ? measured[i] * supply(m).tolerancePercent() / 100 * LIMIT_TO_DEVIATION : 0;
            common[k][1] = volts ? share * measured[i] : 0;
            common[k][2] = volts ? 0 : share * measured[i];
        }
        JointNormal normal =
                roughly ? new JointNormal(residual, own, common) : new JointNormal(residual, own, with(common, moves));
        for (int k = 0; k < n; k++) {
            deviations[readings.get(k)] = normal.deviation(k);
        }
        return normal;
    }

    /** By how much, a deviation, each figure of the plan moves each reading, beside what moves them in common. */
    private static double[][] with(double[][] common, List<Map<String, Double>> moves) {
        Map<String, Integer> places = new HashMap<>();
        moves.forEach(m -> m.keySet().forEach(name -> places.putIfAbsent(name, COMMON + places.size())));
        double[][] all = new double[common.length][];
        for (int k = 0; k < all.length; k++) {
            double[] row = Arrays.copyOf(common[k], COMMON + places.size());
            moves.get(k).forEach((name, move) -> row[places.getOrDefault(name, 0)] = move * LIMIT_TO_DEVIATION);
            all[k] = row;
        }
        return all;
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

    /**
     * The density, wrong readings summed over.
     *
     * @param readings of which it is the distribution
     * @param wrong is given the readings that are likelier wrong than right
     */
    private double log(JointNormal normal, List<Integer> readings, boolean unexplained, Set<Integer> wrong) {
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
            JointNormal.Density density = normal.of(left);
            double log = soFar + right * left.size() + density.log();
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
                double without = odd(readings.get(left.get(k)), unexplained) - right - density.logGivenTheOthers(k);
                if (without > gain) {
                    gain = without;
                    worst = k;
                }
            }
            if (gain < -12) {
                break;
            }
            soFar += odd(readings.get(left.get(worst)), unexplained);
            out.add(left.remove(worst));
        }
        out.subList(0, bestOut).forEach(k -> wrong.add(readings.get(k)));
        return total;
    }

    private double odd(int i, boolean unexplained) {
        return Math.log(unexplained ? TOUCHED * anything(i) : WRONG * slip(i));
    }
}
