package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Contacts;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Chooses what to measure next: what a meter could tell the leading candidates apart by, for what it takes.
 *
 * <p>A measurement sorts the candidates into classes whose figures lie further apart than meter and tolerances reach. It is worth
 * the entropy of these classes, −Σ p log₂ p (J. de Kleer, B. C. Williams, Diagnosing multiple faults, 1987, section on
 * measurement selection, from memory), divided by its {@link Costs}. Along a feed on which any place is as likely as any other
 * that halves it. The first is the one worth most, the next the one that adds most to it. What is not safe ({@link PrimarySide}), or out
 * of reach, is never chosen.
 */
final class NextReadings {
    private static final int MOST_READINGS = 3;
    private static final int MOST_SETTINGS = 5;
    private static final int MOST_STEPS = 6;
    private static final double LEAST_BITS = 0.02;
    /** Figures off by this share of what a divider makes of them are not told apart. */
    private static final double PLAN_SHARE = 0.08 / 1.7320508;

    private final Bench bench;
    private final DiagnosisQuestion question;
    private final Costs costs;
    private final List<Measurement> taken;
    private final PrimarySide primarySide;
    /** EMF of the supply in each condition, and how far a reading may be off with it: not at all where it has been read. */
    private final Map<Condition, Double> supplyV = new EnumMap<>(Condition.class);

    private final Map<Condition, Double> supplyShare = new EnumMap<>(Condition.class);

    NextReadings(Bench bench, DiagnosisQuestion question) {
        this.bench = bench;
        this.question = question;
        this.costs = new Costs(question.plan());
        this.taken = question.readings().stream()
                .map(r -> r.measurement(question.plan()))
                .toList();
        this.primarySide = new PrimarySide(question.plan());
        for (Condition condition : Condition.values()) {
            ResolvedSupply supply = question.plan().supply(condition);
            boolean known = taken.stream().anyMatch(t -> t.isVolts() && t.condition() == condition);
            supplyV.put(condition, supply.emfV());
            supplyShare.put(condition, known ? 0 : supply.tolerancePercent() / 100 / 2);
        }
    }

    /** What a candidate would show: between these, and the same figure twice unless contacts or an engine make a difference. */
    record Band(double low, double high) {}

    /**
     * One measurement.
     *
     * @param bands what each of the leading candidates would show, in their order
     * @param classes by candidate: those of one number cannot be told apart by it
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Chosen(Measurement measurement, double gainBits, double cost, List<Band> bands, int[] classes) {}

    /** A step of a procedure: what to measure, and for each class of candidates the step that follows, or null. */
    record Planned(int number, Chosen chosen, List<@Nullable Integer> next) {}

    /** All that may be measured, and what each candidate shows. */
    private record Options(List<Measurement> list, List<List<Band>> bands) {}

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
        Options volts = options(volts(), leading);
        choose(volts, weights, classes, chosen);
        if (Arrays.stream(classes).distinct().count() < leading.size() && chosen.size() < MOST_READINGS) {
            choose(options(ohms(), leading), weights, classes, chosen);
        }
        return chosen;
    }

    /** The reading across a place that tells a candidate best from the others; empty if none does, or nobody gets there. */
    Optional<Chosen> across(Probe across, FaultCandidate accused, List<FaultCandidate> others) {
        List<FaultCandidate> all = new ArrayList<>(List.of(accused));
        all.addAll(others);
        List<Measurement> list = new ArrayList<>();
        for (Condition condition : Condition.values()) {
            for (Map<String, String> switches : settings()) {
                list.add(new Measurement(across, Quantity.VOLTS, Measurement.stepOf(condition), switches));
            }
        }
        list.add(new Measurement(across, Quantity.OHMS, Measurement.stepOf(Condition.OFF), Map.of()));
        Options options = options(list.stream().filter(this::isPossible).toList(), all);
        Chosen best = null;
        double most = 0;
        for (int m = 0; m < options.list().size(); m++) {
            Measurement measurement = options.list().get(m);
            double worth = 0;
            for (int k = 1; k < all.size(); k++) {
                worth += apart(
                                measurement,
                                options.bands().get(m).get(0),
                                options.bands().get(m).get(k))
                        ? 1
                        : 0;
            }
            worth /= costs.of(measurement);
            if (worth > most * (1 + 1e-6)) {
                most = worth;
                int[] classes = refined(
                        new int[all.size()], measurement, options.bands().get(m));
                best = new Chosen(
                        measurement, 0, costs.of(measurement), options.bands().get(m), classes);
            }
        }
        return Optional.ofNullable(best);
    }

    /** The readings planned in advance, at most {@value #MOST_STEPS} one after the other. */
    List<Planned> procedure(List<FaultCandidate> leading, List<Double> weights) {
        List<Measurement> all = new ArrayList<>(volts());
        all.addAll(ohms());
        Options options = options(all, leading);
        List<Planned> steps = new ArrayList<>();
        int[] everybody = IntStream.range(0, leading.size()).toArray();
        plan(options, weights, everybody, MOST_STEPS, steps);
        return steps.stream().sorted(Comparator.comparingInt(Planned::number)).toList();
    }

    private @Nullable Integer plan(Options options, List<Double> weights, int[] which, int left, List<Planned> steps) {
        if (which.length < 2 || left == 0) {
            return null;
        }
        List<Double> own = Arrays.stream(which).mapToObj(weights::get).toList();
        Chosen best = best(options, which, own, new int[which.length], Set.of());
        if (best == null) {
            return null;
        }
        int number = steps.stream().mapToInt(Planned::number).max().orElse(0) + 1;
        // The place is taken before the steps that follow.
        int place = steps.size();
        steps.add(new Planned(number, best, List.of()));
        List<@Nullable Integer> next = new ArrayList<>();
        int classes = Arrays.stream(best.classes()).filter(c -> c >= 0).max().orElse(-1) + 1;
        for (int c = 0; c < classes; c++) {
            int wanted = c;
            int[] those = Arrays.stream(which)
                    .filter(i -> best.classes()[i] == wanted)
                    .toArray();
            next.add(plan(options, weights, those, left - 1, steps));
        }
        steps.set(place, new Planned(number, best, next));
        return number;
    }

    private void choose(Options options, List<Double> weights, int[] classes, List<Chosen> chosen) {
        int[] everybody = IntStream.range(0, classes.length).toArray();
        Set<Measurement> used = new HashSet<>();
        chosen.forEach(c -> used.add(c.measurement()));
        while (chosen.size() < MOST_READINGS) {
            Chosen best = best(options, everybody, weights, classes, used);
            if (best == null) {
                return;
            }
            int[] next = refined(classes, best.measurement(), best.bands());
            System.arraycopy(next, 0, classes, 0, next.length);
            used.add(best.measurement());
            chosen.add(best);
        }
    }

    /**
     * The measurement that adds most to what is known, for what it takes.
     *
     * @param which of the candidates are left
     * @param classes of those, so far
     * @return with classes for all candidates, -1 for those not left; null if nothing adds anything
     */
    private @Nullable Chosen best(
            Options options, int[] which, List<Double> weights, int[] classes, Set<Measurement> used) {
        double before = entropy(classes, weights);
        Chosen best = null;
        double most = 0;
        for (int m = 0; m < options.list().size(); m++) {
            Measurement measurement = options.list().get(m);
            if (used.contains(measurement)) {
                continue;
            }
            List<Band> all = options.bands().get(m);
            List<Band> bands = Arrays.stream(which).mapToObj(all::get).toList();
            double gain = entropy(refined(classes, measurement, bands), weights) - before;
            double cost = costs.of(measurement);
            if (gain > LEAST_BITS && gain / cost > most * (1 + 1e-6)) {
                most = gain / cost;
                int[] own = refined(new int[which.length], measurement, bands);
                int[] everybody = new int[all.size()];
                Arrays.fill(everybody, -1);
                for (int k = 0; k < which.length; k++) {
                    everybody[which[k]] = own[k];
                }
                best = new Chosen(measurement, gain, cost, all, everybody);
            }
        }
        return best;
    }

    /** What each candidate shows; nothing if one of them has no solution in some setting. */
    private Options options(List<Measurement> list, List<FaultCandidate> candidates) {
        List<PredictedFigures> figures = new ArrayList<>();
        for (FaultCandidate candidate : candidates) {
            bench.measure(candidate.faults(), candidate.fusesBlown(), list)
                    .map(Bench.Measured::figures)
                    .ifPresent(figures::add);
        }
        List<Measurement> measurements = new ArrayList<>();
        List<List<Band>> bands = new ArrayList<>();
        if (figures.size() == candidates.size()) {
            for (int m = 0; m < list.size(); m++) {
                Measurement measurement = list.get(m);
                boolean held = false;
                if (!measurement.step().engineTurning()) {
                    for (PredictedFigures f : figures) {
                        held |= Math.abs(f.at(m) - f.open(m)) > limit(measurement, f.at(m));
                    }
                }
                for (Contacts contacts : held ? List.of(Contacts.CLOSED, Contacts.OPEN) : List.of(Contacts.EITHER)) {
                    Measurement one = with(measurement, contacts);
                    if (!taken.contains(one)) {
                        int index = m;
                        measurements.add(one);
                        bands.add(figures.stream()
                                .map(f -> band(f, index, contacts))
                                .toList());
                    }
                }
            }
        }
        return new Options(measurements, bands);
    }

    private static Measurement with(Measurement m, Contacts contacts) {
        return new Measurement(m.probe(), m.quantity(), m.step(), m.switches(), contacts, null);
    }

    private static Band band(PredictedFigures figures, int m, Contacts contacts) {
        double closed = figures.at(m);
        double open = figures.open(m);
        return switch (contacts) {
            case CLOSED -> new Band(closed, closed);
            case OPEN -> new Band(open, open);
            case EITHER -> new Band(Math.min(closed, open), Math.max(closed, open));
        };
    }

    /** The classes split further by one measurement. */
    private int[] refined(int[] classes, Measurement measurement, List<Band> bands) {
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

    private boolean apart(Measurement measurement, Band one, Band other) {
        double gap = Math.max(other.low() - one.high(), one.low() - other.high());
        return gap > reach(measurement, one.high()) + reach(measurement, other.low());
    }

    /** The same classes by small numbers, in the order of their figures. */
    private static int[] numbered(int[] classes, List<Integer> order) {
        List<Integer> known = new ArrayList<>(
                new LinkedHashSet<>(order.stream().map(i -> classes[i]).toList()));
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

    private double limit(Measurement measurement, double figure) {
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

    private boolean isPossible(Measurement m) {
        return !primarySide.isTouchedBy(m)
                && question.reaches(m.probe().from())
                && question.reaches(m.probe().to());
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
                    all.add(new Measurement(probe, Quantity.VOLTS, Measurement.stepOf(condition), switches));
                }
            }
        }
        return all.stream().filter(this::isPossible).toList();
    }

    /** Along every wire and between neighbouring terminals of every part, and every point to earth, key off. */
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
        probes.addAll(toEarth());
        return probes.stream()
                .map(p -> new Measurement(p, Quantity.OHMS, Measurement.stepOf(Condition.OFF), Map.of()))
                .filter(this::isPossible)
                .toList();
    }

    private Set<Probe> toEarth() {
        Plan plan = question.plan();
        Set<Probe> probes = new LinkedHashSet<>();
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
        return probes;
    }

    private Set<Probe> probes() {
        Plan plan = question.plan();
        Set<Probe> probes = new LinkedHashSet<>();
        plan.listParts(Battery.class)
                .forEach(b -> probes.add(between(b.terminal(Battery.PLUS), b.terminal(Battery.MINUS))));
        probes.addAll(toEarth());
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
