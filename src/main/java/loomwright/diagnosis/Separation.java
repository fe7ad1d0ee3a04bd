package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.circuit.Condition;
import loomwright.circuit.ResolvedSupply;
import loomwright.operation.Quantity;

/** Sorts candidates into classes whose figures lie further apart than meter and tolerances reach. */
final class Separation {
    /** Figures off by this share of what a divider makes of them are not told apart. */
    private static final double PLAN_SHARE = 0.08 / 1.7320508;

    private final DiagnosisQuestion question;
    /** EMF of the supply in each condition, and how far a reading may be off with it: not at all where it has been read. */
    private final Map<Condition, Double> supplyV = new EnumMap<>(Condition.class);

    private final Map<Condition, Double> supplyShare = new EnumMap<>(Condition.class);

    /**
     * Of a question.
     *
     * @param taken what has been measured
     */
    Separation(DiagnosisQuestion question, List<Measurement> taken) {
        this.question = question;
        for (Condition condition : Condition.values()) {
            ResolvedSupply supply = question.plan().supply(condition);
            boolean known = taken.stream().anyMatch(t -> t.isVolts() && t.condition() == condition);
            supplyV.put(condition, supply.emfV());
            supplyShare.put(condition, known ? 0 : supply.tolerancePercent() / 100 / 2);
        }
    }

    /** What a candidate would show: between these, and the same figure twice unless contacts or an engine make a difference. */
    record Band(double low, double high) {}

    /** The classes split further by one measurement. */
    int[] refined(int[] classes, Measurement measurement, List<Band> bands) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < classes.length; i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble(i -> bands.get(i).low()));
        int[] refined = new int[classes.length];
        int cluster = 0;
        Band reach = new Band(0, 0);
        for (int k = 0; k < order.size(); k++) {
            Band band = bands.get(order.get(k));
            if (k > 0 && apart(measurement, reach, band)) {
                cluster++;
            }
            reach = k == 0 || band.high() > reach.high() || apart(measurement, reach, band) ? band : reach;
            int i = order.get(k);
            refined[i] = classes[i] * (classes.length + 1) + cluster;
        }
        return numbered(refined, order);
    }

    boolean apart(Measurement measurement, Band one, Band other) {
        double gap = Math.max(other.low() - one.high(), one.low() - other.high());
        return gap > reach(measurement, one.high()) + reach(measurement, other.low());
    }

    /** The same classes by small numbers, in the order of their figures. */
    private static int[] numbered(int[] classes, List<Integer> order) {
        List<Integer> known = new ArrayList<>(
                new LinkedHashSet<>(order.stream().map(i -> classes[i]).toList()));
        return Arrays.stream(classes).map(known::indexOf).toArray();
    }

    static double entropy(int[] classes, List<Double> weights) {
        double total = weights.stream().mapToDouble(w -> w).sum();
        double[] share = new double[classes.length];
        for (int i = 0; i < classes.length; i++) {
            share[classes[i]] += weights.get(i) / total;
        }
        return Arrays.stream(share)
                .filter(p -> p > 0)
                .map(p -> -p * Math.log(p) / Math.log(2))
                .sum();
    }

    double limit(Measurement measurement, double figure) {
        return Likelihood.meterLimit(question, measurement, figure);
    }

    /** How far from a figure a reading of it may lie. */
    double reach(Measurement measurement, double figure) {
        if (measurement.quantity() == Quantity.OHMS) {
            return figure >= Bench.OPEN_OHM ? 0 : limit(measurement, figure) + 3 * PLAN_SHARE * figure;
        }
        double v = Math.abs(figure);
        double ofSupply = v / Objects.requireNonNull(supplyV.get(measurement.condition()));
        double divided = Math.sqrt(2) * PLAN_SHARE * v * Math.max(0, 1 - ofSupply);
        double supply = v * Objects.requireNonNull(supplyShare.get(measurement.condition()));
        return limit(measurement, figure) + 1.5 * divided + supply;
    }
}
