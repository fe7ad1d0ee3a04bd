package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;

/**
 * Chooses what to measure next: what a meter could tell the leading candidates apart by.
 *
 * <p>A measurement sorts the candidates into classes whose figures lie further apart than meter and tolerances reach. It is worth
 * the entropy of these classes, −Σ p log₂ p (J. de Kleer, B. C. Williams, Diagnosing multiple faults, 1987, section on
 * measurement selection, from memory). What is not safe ({@link PrimarySide}) is never chosen. The first is the one worth most, the next the one that adds most to it.
 */
final class NextReadings {
    private static final int MOST_READINGS = 3;
    private static final int MOST_SETTINGS = 5;
    private static final double LEAST_BITS = 0.05;

    private final Bench bench;
    private final DiagnosisQuestion question;
    private final Uncertainty uncertainty;
    private final List<Measurement> taken;
    private final PrimarySide primarySide;

    NextReadings(Bench bench, DiagnosisQuestion question) {
        this.bench = bench;
        this.question = question;
        this.uncertainty = new Uncertainty(question.plan());
        this.taken = question.readings().stream().map(MeterReading::measurement).toList();
        this.primarySide = new PrimarySide(question.plan());
    }

    /**
     * One measurement.
     *
     * @param figures what each of the leading candidates would show, in their order
     */
    record Chosen(Measurement measurement, double gainBits, List<Double> figures) {}

    /**
     * Chooses.
     *
     * @param leading two or more candidates to tell apart
     * @param weights their probabilities, in the same order; they need not sum to 1
     * @return the best first; empty if nothing that is considered tells them apart
     */
    List<Chosen> of(List<FaultCandidate> leading, List<Double> weights) {
        List<Chosen> chosen = new ArrayList<>();
        int[] classes = new int[leading.size()];
        choose(volts(), leading, weights, classes, chosen);
        if (Arrays.stream(classes).distinct().count() < leading.size()) {
            choose(ohms(), leading, weights, classes, chosen);
        }
        return chosen;
    }

    private void choose(
            List<Measurement> from,
            List<FaultCandidate> leading,
            List<Double> weights,
            int[] classes,
            List<Chosen> chosen) {
        List<PredictedFigures> figures = new ArrayList<>();
        for (FaultCandidate candidate : leading) {
            bench.measure(candidate.faults(), candidate.fusesBlown(), from)
                    .map(Bench.Measured::figures)
                    .ifPresent(figures::add);
        }
        if (figures.size() < leading.size()) {
            // In some setting one of them has no solution, and no figures to compare.
            return;
        }
        while (chosen.size() < MOST_READINGS) {
            double before = entropy(classes, weights);
            int best = -1;
            double most = LEAST_BITS;
            for (int m = 0; m < from.size(); m++) {
                double gain = entropy(refined(classes, from.get(m), m, figures), weights) - before;
                if (gain > most * (1 + 1e-6)) {
                    most = gain;
                    best = m;
                }
            }
            if (best < 0) {
                return;
            }
            int measurement = best;
            int[] next = refined(classes, from.get(best), best, figures);
            System.arraycopy(next, 0, classes, 0, next.length);
            chosen.add(new Chosen(
                    from.get(best),
                    most,
                    figures.stream().map(f -> f.at(measurement)).toList()));
        }
    }

    /** The classes split further by one measurement. */
    private int[] refined(int[] classes, Measurement measurement, int index, List<PredictedFigures> figures) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < classes.length; i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble(i -> figures.get(i).at(index)));
        int[] refined = new int[classes.length];
        int cluster = 0;
        for (int k = 0; k < order.size(); k++) {
            if (k > 0) {
                double low = figures.get(order.get(k - 1)).at(index);
                double high = figures.get(order.get(k)).at(index);
                if (high - low > Fit.LIMIT * Math.max(deviation(measurement, low), deviation(measurement, high))) {
                    cluster++;
                }
            }
            int i = order.get(k);
            refined[i] = classes[i] * classes.length + cluster;
        }
        return numbered(refined);
    }

    /** The same classes by small numbers. */
    private static int[] numbered(int[] classes) {
        List<Integer> known = Arrays.stream(classes).distinct().sorted().boxed().toList();
        return Arrays.stream(classes).map(known::indexOf).toArray();
    }

    private static double entropy(int[] classes, List<Double> weights) {
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

    private double deviation(Measurement measurement, double figure) {
        double meter = Uncertainty.ofMeter(question.meter(), measurement, figure);
        boolean supplyKnown = measurement.quantity() == Quantity.OHMS
                || taken.stream()
                        .anyMatch(t -> t.quantity() == Quantity.VOLTS && t.condition() == measurement.condition());
        double supply = supplyKnown ? 0 : uncertainty.supplyShare(measurement) * figure;
        return Math.hypot(Math.hypot(meter, uncertainty.ofPlan(measurement, figure)), supply);
    }

    /**
     * Each battery from post to post, every wired point to earth, and along every wire and fuse, in every condition and
     * some settings.
     */
    private List<Measurement> volts() {
        List<Measurement> all = new ArrayList<>();
        for (Condition condition : Condition.values()) {
            for (Map<String, String> switches : settings()) {
                for (Probe probe : probes()) {
                    all.add(new Measurement(probe, Quantity.VOLTS, condition, switches));
                }
            }
        }
        all.removeAll(taken);
        all.removeIf(primarySide::isTouchedBy);
        return all;
    }

    /** Along every wire and between neighbouring terminals of every part, key off. */
    private List<Measurement> ohms() {
        Set<Probe> probes = new LinkedHashSet<>();
        Plan plan = question.plan();
        plan.wires().forEach(w -> probes.add(between(w.from(), w.to())));
        for (Part part : plan.parts()) {
            for (int i = 1; i < part.terminals().size() && !(part instanceof Joint); i++) {
                probes.add(between(
                        part.terminal(part.terminals().get(i - 1)),
                        part.terminal(part.terminals().get(i))));
            }
        }
        List<Measurement> all = new ArrayList<>();
        probes.forEach(p -> all.add(new Measurement(p, Quantity.OHMS, Condition.OFF, Map.of())));
        all.removeAll(taken);
        return all;
    }

    private Set<Probe> probes() {
        Plan plan = question.plan();
        Set<Probe> probes = new LinkedHashSet<>();
        plan.listParts(Battery.class)
                .forEach(b -> probes.add(between(b.terminal(Battery.PLUS), b.terminal(Battery.MINUS))));
        Set<String> splices = new HashSet<>();
        for (Wire wire : plan.wires()) {
            for (TerminalRef terminal : List.of(wire.from(), wire.to())) {
                boolean again = plan.findPart(terminal.part()).orElseThrow() instanceof Joint joint
                        && joint.resistanceOhm() == 0
                        && !splices.add(joint.id());
                if (!again) {
                    probes.add(new Probe(new Point(terminal), Point.EARTH));
                }
            }
        }
        plan.wires().forEach(w -> probes.add(between(w.from(), w.to())));
        for (Part part : plan.parts()) {
            if (part instanceof Fuse || part instanceof FusibleLink) {
                probes.add(between(part.terminal("a"), part.terminal("b")));
            }
        }
        return probes;
    }

    private static Probe between(TerminalRef one, TerminalRef other) {
        return new Probe(new Point(one), new Point(other));
    }

    /** As in the readings, as drawn, and each free switch in each other position. */
    private List<Map<String, String>> settings() {
        Set<Map<String, String>> settings = new LinkedHashSet<>();
        taken.forEach(t -> settings.add(t.switches()));
        settings.add(Map.of());
        for (Switch chosen : question.plan().listParts(Switch.class)) {
            if (chosen.free()) {
                chosen.positions().stream()
                        .filter(p -> !p.equals(chosen.in(Condition.OFF)))
                        .forEach(p -> settings.add(new TreeMap<>(Map.of(chosen.id(), p.name()))));
            }
        }
        return settings.stream().limit(MOST_SETTINGS).toList();
    }
}
