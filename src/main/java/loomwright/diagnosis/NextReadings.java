package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import loomwright.diagnosis.Separation.Band;
import loomwright.operation.Contacts;
import loomwright.operation.Probe;
import org.jspecify.annotations.Nullable;

/**
 * Chooses what to measure next: what a meter could tell the leading candidates apart by, for what it takes.
 *
 * <p>A measurement sorts the candidates into classes whose figures lie further apart than meter and tolerances reach. It is worth
 * the entropy of these classes, −Σ p log₂ p (J. de Kleer, B. C. Williams, Diagnosing multiple faults, 1987, section on
 * measurement selection, from memory), divided by its {@link Costs}. Along a feed on which any place is as likely as any other
 * that halves it. The first is the one worth most, the next the one that adds most to it. What is not safe or out of reach
 * is never chosen ({@link PossibleReadings}).
 */
final class NextReadings {
    private static final int MOST_READINGS = 3;
    private static final int MOST_STEPS = 6;
    private static final double LEAST_BITS = 0.02;

    private final Bench bench;
    private final Costs costs;
    private final List<Measurement> taken;
    private final PossibleReadings possible;
    private final Separation separation;

    NextReadings(Bench bench, DiagnosisQuestion question) {
        this.bench = bench;
        this.costs = new Costs(question.plan());
        this.taken = question.readings().stream()
                .map(r -> r.measurement(question.plan()))
                .toList();
        this.possible = new PossibleReadings(question, taken);
        this.separation = new Separation(question, taken);
    }

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

    /** How far a reading may lie from a figure, and which figures that parts. */
    Separation separation() {
        return separation;
    }

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
        Options volts = options(possible.volts(), leading);
        choose(volts, weights, classes, chosen);
        if (Arrays.stream(classes).distinct().count() < leading.size() && chosen.size() < MOST_READINGS) {
            choose(options(possible.ohms(), leading), weights, classes, chosen);
        }
        return chosen;
    }

    /** The reading across a place that tells a candidate best from the others; empty if none does, or nobody gets there. */
    Optional<Chosen> across(Probe across, FaultCandidate accused, List<FaultCandidate> others) {
        List<FaultCandidate> all = new ArrayList<>(List.of(accused));
        all.addAll(others);
        Options options = options(possible.across(across), all);
        Chosen best = null;
        double most = 0;
        for (int m = 0; m < options.list().size(); m++) {
            Measurement measurement = options.list().get(m);
            double worth = 0;
            for (int k = 1; k < all.size(); k++) {
                worth += separation.apart(
                                measurement,
                                options.bands().get(m).get(0),
                                options.bands().get(m).get(k))
                        ? 1
                        : 0;
            }
            worth /= costs.of(measurement);
            if (worth > most * (1 + 1e-6)) {
                most = worth;
                int[] classes = separation.refined(
                        new int[all.size()], measurement, options.bands().get(m));
                best = new Chosen(
                        measurement, 0, costs.of(measurement), options.bands().get(m), classes);
            }
        }
        return Optional.ofNullable(best);
    }

    /** The readings planned in advance, at most {@value #MOST_STEPS} one after the other. */
    List<Planned> procedure(List<FaultCandidate> leading, List<Double> weights) {
        List<Measurement> all = new ArrayList<>(possible.volts());
        all.addAll(possible.ohms());
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
            int[] next = separation.refined(classes, best.measurement(), best.bands());
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
        double before = Separation.entropy(classes, weights);
        Chosen best = null;
        double most = 0;
        for (int m = 0; m < options.list().size(); m++) {
            Measurement measurement = options.list().get(m);
            if (used.contains(measurement)) {
                continue;
            }
            List<Band> all = options.bands().get(m);
            List<Band> bands = Arrays.stream(which).mapToObj(all::get).toList();
            double gain = Separation.entropy(separation.refined(classes, measurement, bands), weights) - before;
            double cost = costs.of(measurement);
            if (gain > LEAST_BITS && gain / cost > most * (1 + 1e-6)) {
                most = gain / cost;
                int[] own = separation.refined(new int[which.length], measurement, bands);
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
                        held |= Math.abs(f.at(m) - f.open(m)) > separation.limit(measurement, f.at(m));
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
}
