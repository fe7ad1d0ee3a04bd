package loomwright.diagnosis;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.circuit.fault.SizedFault;
import loomwright.diagnosis.DiagnosisReport.Certainty;
import loomwright.diagnosis.DiagnosisReport.DoubtKind;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.SuspectFault;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * How often a diagnosis is right: faults drawn at random are put into vehicles whose every figure is off within its tolerance, and
 * the service's own next readings are taken with a meter of 2000 counts, at most six after one sign. Writes a table, and before it
 * each case that did not go as it should.
 *
 * <p>Arguments: seed, seconds, and what to put in, with commas between: {@code single} faults, {@code double}, {@code triple},
 * {@code crossed} wires, parts of another {@code kind}, {@code sound} vehicles, {@code slip}s of whoever measures. One vehicle of each
 * plan in turn, until the time is over.
 */
public final class DiagnosisBenchmark {
    private static final int MOST_READINGS = 6;
    private static final double SURE = 0.95;
    private static final double CALLED = 0.9;
    private static final String ALL = "single,double,triple,crossed,kind,sound,slip";

    private final Random random;
    private final PrintStream out;
    private final BenchmarkTable table = new BenchmarkTable();
    private String name = "";

    private DiagnosisBenchmark(long seed, PrintStream out) {
        this.random = new Random(seed);
        this.out = out;
    }

    /**
     * Runs.
     *
     * @param args seed, seconds, what to put in
     */
    public static void main(String[] args) {
        long seed = args.length > 0 ? Long.parseLong(args[0]) : 20;
        long seconds = args.length > 1 ? Long.parseLong(args[1]) : 1800;
        List<String> what = List.of((args.length > 2 ? args[2] : ALL).split(","));
        DiagnosisBenchmark benchmark = new DiagnosisBenchmark(seed, System.out);
        Map<String, Plan> plans = BenchmarkPlans.of(seed);
        long end = System.nanoTime() + seconds * 1_000_000_000;
        while (System.nanoTime() < end) {
            for (Map.Entry<String, Plan> entry : plans.entrySet()) {
                for (String one : what) {
                    if (System.nanoTime() < end) {
                        benchmark.name = entry.getKey();
                        benchmark.run(one, entry.getValue());
                    }
                }
            }
        }
        benchmark.table.write(System.out);
    }

    private void run(String what, Plan plan) {
        switch (what) {
            case "single" -> single(plan);
            case "double" -> two(plan);
            case "triple" -> three(plan);
            case "crossed" -> unlisted(plan, "crossed wires", true);
            case "kind" -> unlisted(plan, "part of another kind", false);
            case "sound" -> sound(plan);
            case "slip" -> slips(plan);
            default -> throw new IllegalArgumentException("no such fault: " + what);
        }
    }

    /** So many faults of which no two are at one part or wire. */
    private List<SingleFault> some(Plan plan, int count) {
        List<SingleFault> all = SingleFaults.listWithinParts(plan);
        List<SingleFault> chosen = new ArrayList<>();
        while (chosen.size() < count) {
            SingleFault fault = sized(all.get(random.nextInt(all.size())));
            if (chosen.stream().allMatch(c -> Collections.disjoint(c.ids(), fault.ids()))) {
                chosen.add(fault);
            }
        }
        return chosen;
    }

    private SingleFault sized(SingleFault fault) {
        if (!(fault instanceof SizedFault sized)) {
            return fault;
        }
        double least = Math.log(1.3 * sized.smallest());
        double most = Math.log(sized.largest() / 1.3);
        return sized.withSize(Math.exp(least + (most - least) * random.nextDouble()));
    }

    /** What the service says in the end, and what was measured until then. */
    private record Outcome(DiagnosisReport report, List<MeterReading> readings, Set<String> blown) {
        Explanation first() {
            return report.explanations().get(0);
        }

        int taken() {
            return readings.size() - 1;
        }
    }

    /**
     * Follows the readings that the service asks for.
     *
     * @return empty if the faults show no sign, or the vehicle has no solution with them
     */
    private Optional<Outcome> follow(Plan plan, FaultyVehicle vehicle) {
        Optional<MeterReading> symptom = vehicle.symptom();
        if (symptom.isEmpty()) {
            return Optional.empty();
        }
        List<MeterReading> readings = new ArrayList<>(List.of(symptom.get()));
        PrimarySide primary = new PrimarySide(plan);
        while (true) {
            DiagnosisReport report = diagnose(plan, readings);
            boolean done = report.conclusion().certainty() == Certainty.CONFIRMED
                    || report.conclusion().certainty() == Certainty.NOT_CONFIRMABLE;
            if (done || readings.size() > MOST_READINGS || report.nextReadings().isEmpty()) {
                return Optional.of(new Outcome(report, List.copyOf(readings), vehicle.blownFuses()));
            }
            NextReading next = report.nextReadings().get(0);
            Measurement m = new Measurement(
                    Probe.of(next.red(), next.black()),
                    next.quantity(),
                    Measurement.stepOf(next.setting().condition()),
                    next.setting().switches(),
                    next.setting().contacts(),
                    null);
            table.count("readings: not safe", primary.isTouchedBy(m));
            Double shown = vehicle.shown(m);
            if (shown == null) {
                return Optional.empty();
            }
            readings.add(Bedside.reading(m, shown));
        }
    }

    private DiagnosisReport diagnose(Plan plan, List<MeterReading> readings) {
        long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        DiagnosisReport report = Bedside.diagnose(plan, readings);
        table.answered((ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1_000_000);
        return report;
    }

    private void single(Plan plan) {
        for (int tried = 0; tried < 20; tried++) {
            List<SingleFault> faults = some(plan, 1);
            Optional<Outcome> outcome = follow(plan, FaultyVehicle.of(plan, faults, random));
            if (outcome.isPresent()) {
                count(plan, faults.get(0), outcome.get());
                return;
            }
        }
    }

    private void count(Plan plan, SingleFault fault, Outcome outcome) {
        int rank = rank(outcome, fault);
        Explanation first = outcome.first();
        table.readings(outcome.taken());
        table.count("one fault: first", rank == 1);
        table.count("one fault: in the first three", rank <= 3);
        table.count("one fault: not listed", rank == Integer.MAX_VALUE);
        table.count("one fault: a wrong part first with more than 95 %", isWrong(first, fault, SURE));
        table.told(first.probability(), rank == 1);
        boolean confirmed = outcome.report().conclusion().certainty() == Certainty.CONFIRMED;
        table.count("one fault: confirmed", confirmed);
        if (confirmed) {
            table.count("one fault: confirmed and right", rank == 1);
        }
        if (rank > 1) {
            print(plan, "rank " + (rank == Integer.MAX_VALUE ? "none" : rank), List.of(fault), outcome);
        }
    }

    /** Whether an explanation accuses something else than what a fault is at, with more than a probability. */
    private static boolean isWrong(Explanation first, SingleFault fault, double probability) {
        return first.faultCount() > 0 && !names(first, fault) && first.probability() > probability;
    }

    private void two(Plan plan) {
        List<SingleFault> faults = some(plan, 2);
        FaultyVehicle vehicle = FaultyVehicle.of(plan, faults, random);
        Outcome outcome = follow(plan, vehicle).orElse(null);
        if (outcome == null) {
            return;
        }
        SingleFault found = faults.stream()
                .filter(f -> isInFirstThree(outcome.report(), f))
                .findFirst()
                .orElse(null);
        table.count("two faults: one of them in the first three", found != null);
        if (found == null) {
            print(plan, "neither", faults, outcome);
            table.count("two faults: both, the first mended", false);
            return;
        }
        List<SingleFault> left = faults.stream().filter(f -> f != found).toList();
        if (left.stream().allMatch(f -> isInFirstThree(outcome.report(), f))) {
            table.count("two faults: both, the first mended", true);
            return;
        }
        follow(plan, vehicle.with(vehicle.built(), left)).ifPresent(second -> {
            boolean both = isInFirstThree(second.report(), left.get(0));
            table.count("two faults: both, the first mended", both);
            if (!both) {
                print(plan, "not the other", left, second);
            }
        });
    }

    private static boolean isInFirstThree(DiagnosisReport report, SingleFault fault) {
        return report.explanations().stream().limit(3).anyMatch(e -> names(e, fault));
    }

    /** Two of three faults may show as little as if they were not there, so a part that has one of them is not called wrong. */
    private void three(Plan plan) {
        List<SingleFault> faults = some(plan, 3);
        follow(plan, FaultyVehicle.of(plan, faults, random)).ifPresent(outcome -> {
            boolean innocent = faults.stream().noneMatch(f -> names(outcome.first(), f));
            outside(plan, "three faults", innocent, faults, outcome);
        });
    }

    private void unlisted(Plan plan, String what, boolean crossed) {
        FaultyVehicle sound = FaultyVehicle.of(plan, List.of(), random);
        UnlistedFaults.Changed changed = (crossed
                        ? UnlistedFaults.crossedWires(sound.built(), random)
                        : UnlistedFaults.otherKind(sound.built(), random))
                .orElse(null);
        if (changed != null) {
            follow(plan, sound.with(changed.built(), List.of()))
                    .ifPresent(outcome ->
                            outside(plan, what, !names(outcome.first(), changed.ids()), changed.ids(), outcome));
        }
    }

    private void outside(Plan plan, String what, boolean innocent, Object faults, Outcome outcome) {
        Explanation first = outcome.first();
        boolean called = first.faultCount() > 0
                && first.probability() >= CALLED
                && outcome.report().conclusion().verdict() != Verdict.UNEXPLAINED
                && outcome.report().conclusion().verdict() != Verdict.CHECK_READINGS;
        boolean wrong = called && innocent;
        table.count("outside the set, " + what + ": another part named with 90 % or more", wrong);
        table.count(
                "outside the set, " + what + ": told unexplained",
                outcome.report().conclusion().verdict() == Verdict.UNEXPLAINED
                        || outcome.report().conclusion().verdict() == Verdict.CHECK_READINGS);
        if (wrong) {
            print(plan, what, faults, outcome);
        }
    }

    /** Whether an explanation accuses what a fault is at. */
    private static boolean names(Explanation explanation, SingleFault fault) {
        return names(explanation, Set.copyOf(fault.ids()));
    }

    private static boolean names(Explanation explanation, Set<String> ids) {
        return explanation.candidates().stream()
                .anyMatch(c -> c.faults().stream().anyMatch(f -> !Collections.disjoint(f.ids(), ids)));
    }

    /** Beside the fault an explanation may name fuses that it has really blown, and nothing else. */
    private static int rank(Outcome outcome, SingleFault fault) {
        for (Explanation explanation : outcome.report().explanations()) {
            if (explanation.candidates().stream()
                    .anyMatch(c -> c.faults().stream().anyMatch(f -> isSame(f, fault))
                            && c.faults().stream()
                                    .allMatch(f -> isSame(f, fault)
                                            || (f.kind() == SingleFault.Kind.FUSE_BLOWN
                                                    && outcome.blown().containsAll(f.ids()))))) {
                return explanation.rank();
            }
        }
        return Integer.MAX_VALUE;
    }

    private static boolean isSame(SuspectFault suspect, SingleFault fault) {
        return suspect.kind() == fault.kind() && suspect.ids().equals(fault.ids());
    }

    /** Six places of a sound vehicle, as the meter shows them; empty if it has no solution. */
    private List<MeterReading> anyReadings(Plan plan) {
        FaultyVehicle vehicle = FaultyVehicle.of(plan, List.of(), random);
        List<Measurement> points = new ArrayList<>();
        plan.wires()
                .forEach(w -> List.of(Condition.OFF, Condition.RUN)
                        .forEach(c -> points.add(new Measurement(
                                new Probe(new Point(w.from()), Point.EARTH),
                                Quantity.VOLTS,
                                Measurement.stepOf(c),
                                Map.of()))));
        Collections.shuffle(points, random);
        List<MeterReading> readings = new ArrayList<>();
        for (Measurement m : points.subList(0, Math.min(MOST_READINGS, points.size()))) {
            Double shown = vehicle.shown(m);
            if (shown == null) {
                return List.of();
            }
            readings.add(Bedside.reading(m, shown));
        }
        return readings;
    }

    private void sound(Plan plan) {
        List<MeterReading> readings = anyReadings(plan);
        if (!readings.isEmpty()) {
            DiagnosisReport report = diagnose(plan, readings);
            boolean accused = report.conclusion().verdict() != Verdict.PLAN_CONSISTENT;
            table.count("sound vehicles: accused", accused);
            if (accused) {
                print(plan, "sound", List.of(), new Outcome(report, readings, Set.of()));
            }
        }
    }

    /** One of six readings of a sound vehicle with leads reversed, and the same in kilovolts. */
    private void slips(Plan plan) {
        List<MeterReading> readings = anyReadings(plan);
        for (int i = 0; i < readings.size(); i++) {
            Double volts = readings.get(i).voltageV();
            if (volts != null && Math.abs(volts) > 2) {
                slip(plan, readings, i, -volts, DoubtKind.LEADS_REVERSED);
                slip(plan, readings, i, volts / 1000, DoubtKind.FACTOR_THOUSAND);
                return;
            }
        }
    }

    private void slip(Plan plan, List<MeterReading> readings, int i, double volts, DoubtKind kind) {
        List<MeterReading> slipped = new ArrayList<>(readings);
        slipped.set(i, Bedside.reading(readings.get(i).measurement(plan), volts));
        DiagnosisReport report = diagnose(plan, slipped);
        boolean asked = report.doubts().stream().anyMatch(d -> d.kind() == kind);
        table.count("slips: asked about", asked);
        if (!asked) {
            print(plan, kind + " of reading " + i, List.of(), new Outcome(report, slipped, Set.of()));
        }
    }

    /** A case that did not go as it should, with all that it takes to see why. */
    private void print(Plan plan, String what, Object faults, Outcome outcome) {
        Explanation first = outcome.first();
        DiagnosisReport report = outcome.report();
        out.printf(
                Locale.ROOT,
                "%s: %s: %s after %d, %s %s, unexplained %.4f%n",
                name,
                faults,
                what,
                outcome.taken(),
                report.conclusion().verdict(),
                report.conclusion().certainty(),
                report.unexplained());
        report.explanations().stream()
                .limit(3)
                .forEach(e -> out.printf(
                        Locale.ROOT,
                        "    %.4f (%d alike, %s) %s%n",
                        e.probability(),
                        e.candidates().size(),
                        e.notExplained(),
                        e.candidates().get(0).description().text()));
        List<@Nullable Double> truth = truth(plan, faults, outcome);
        for (int i = 0; i < outcome.readings().size(); i++) {
            Measurement m = outcome.readings().get(i).measurement(plan);
            out.printf(
                    Locale.ROOT,
                    "    %s %s %s-%s %s %s %s: %s; first %s, fault %s%n",
                    m.part() == null ? "" : m.part(),
                    m.quantity(),
                    m.probe().from(),
                    m.probe().to(),
                    m.step(),
                    m.switches(),
                    m.contacts(),
                    m.part() == null
                            ? outcome.readings().get(i).figure()
                            : outcome.readings().get(i).sign(),
                    first.predicted().get(i),
                    truth.get(i));
        }
        out.flush();
    }

    /** What the plan with the faults shows; nothing known where there are none that can be put in. */
    private List<@Nullable Double> truth(Plan plan, Object faults, Outcome outcome) {
        List<SingleFault> put = new ArrayList<>();
        if (faults instanceof List<?> list) {
            list.stream().map(SingleFault.class::cast).forEach(put::add);
        }
        Diagnosis diagnosis = new Diagnosis(
                DiagnosisQuestion.of(plan, outcome.readings()), DiagnosisLimits.defaults(), Bedside.bench(plan));
        List<@Nullable Double> shown = new ArrayList<>();
        Optional<FaultCandidate> candidate = diagnosis.trials().of(put, Set.of());
        candidate.ifPresent(c -> out.printf(
                Locale.ROOT,
                "    weight %.2f fit %.2f lasts %s; first: weight %.2f fit %.2f%n",
                c.logWeight(),
                c.fit().logLikelihood(),
                diagnosis.trials().lasts(c),
                diagnosis.groups().get(0).get(0).logWeight(),
                diagnosis.groups().get(0).get(0).fit().logLikelihood()));
        for (int i = 0; i < outcome.readings().size(); i++) {
            int at = i;
            shown.add(candidate.map(c -> c.figures().at(at)).orElse(null));
        }
        return shown;
    }
}
