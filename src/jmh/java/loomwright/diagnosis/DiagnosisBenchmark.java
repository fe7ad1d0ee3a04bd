package loomwright.diagnosis;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.Switch;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.circuit.fault.SizedFault;
import loomwright.circuit.tolerance.Spreads;
import loomwright.circuit.tolerance.Tolerances;
import loomwright.diagnosis.DiagnosisReport.Certainty;
import loomwright.diagnosis.DiagnosisReport.DoubtKind;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import loomwright.operation.Contacts;
import loomwright.operation.MeterRange;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.UsualIntent;
import org.jspecify.annotations.Nullable;

/**
 * How often a diagnosis is right: faults drawn at random are put into vehicles whose every figure is off within its tolerance, and
 * the service's own next readings are taken with a meter of 2000 counts, at most six after one sign. Writes a table.
 *
 * <p>Arguments: seed, faults for each plan, sound vehicles for each plan.
 */
public final class DiagnosisBenchmark {
    private static final int MOST_READINGS = 6;
    private static final double SURE = 0.95;
    private static final List<Condition> SEEN_IN =
            List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING, Condition.OFF);

    private final Random random;
    private final PrintStream out;
    private final Tally tally = new Tally();

    private DiagnosisBenchmark(long seed, PrintStream out) {
        this.random = new Random(seed);
        this.out = out;
    }

    /** Counts. */
    private static final class Tally {
        private int faults;
        private int first;
        private int firstThree;
        private int excluded;
        private int wrongAndSure;
        private int confirmed;
        private int confirmedRight;
        private int unsafe;
        private int unsolved;
        private int sound;
        private int accused;
        private int slips;
        private int asked;
        private final int[] told = new int[10];
        private final int[] right = new int[10];
        private final List<Integer> readings = new ArrayList<>();
        private final List<Long> times = new ArrayList<>();
    }

    /** A vehicle with what is wrong with it. */
    private record Vehicle(Plan plan, Bench bench, List<SingleFault> faults, Set<String> blown, double meterShare) {}

    /**
     * Runs.
     *
     * @param args seed, faults for each plan, sound vehicles for each plan
     */
    public static void main(String[] args) {
        long seed = args.length > 0 ? Long.parseLong(args[0]) : 20;
        int faults = args.length > 1 ? Integer.parseInt(args[1]) : 20;
        int sound = args.length > 2 ? Integer.parseInt(args[2]) : 10;
        DiagnosisBenchmark benchmark = new DiagnosisBenchmark(seed, System.out);
        Map<String, Plan> plans = new TreeMap<>();
        Plans.exampleNames().forEach(name -> plans.put(name, Plans.example(name)));
        for (int i = 0; i < 4; i++) {
            plans.put("generated " + i, RandomVehicle.of(seed + i, 12 + 6 * i));
        }
        plans.forEach((name, plan) -> benchmark.run(name, UsualIntent.complete(plan), faults, sound));
        benchmark.report();
    }

    private void run(String name, Plan plan, int faults, int sound) {
        List<SingleFault> all = new ArrayList<>(SingleFaults.listWithinParts(plan));
        Collections.shuffle(all, random);
        int done = 0;
        for (SingleFault fault : all) {
            if (done < faults && followed(name, plan, sized(fault))) {
                done++;
            }
        }
        for (int i = 0; i < sound; i++) {
            soundVehicle(name, plan);
        }
    }

    private SingleFault sized(SingleFault fault) {
        if (!(fault instanceof SizedFault sized)) {
            return fault;
        }
        double least = Math.log(1.3 * sized.smallest());
        double most = Math.log(sized.largest() / 1.3);
        return sized.withSize(Math.exp(least + (most - least) * random.nextDouble()));
    }

    private Vehicle vehicle(Plan plan, List<SingleFault> faults) {
        Spreads spreads = Spreads.of(plan, Tolerances.USUAL);
        Plan built = spreads.moved(random.doubles(spreads.list().size(), -1, 1).toArray());
        Bench bench = Bedside.bench(built);
        Set<String> blown = new LinkedHashSet<>();
        List<Measurement> battery = List.of(posts(plan));
        for (int i = 0; i < 5 && !faults.isEmpty(); i++) {
            Set<String> opening = bench.measure(faults, Set.copyOf(blown), battery)
                    .map(Bench.Measured::opening)
                    .orElse(Set.of());
            if (!blown.addAll(opening)) {
                break;
            }
        }
        return new Vehicle(built, bench, faults, Set.copyOf(blown), 0.01 * (2 * random.nextDouble() - 1));
    }

    private static Measurement posts(Plan plan) {
        Battery battery = plan.listParts(Battery.class).get(0);
        Probe posts = new Probe(new Point(battery.terminal(Battery.PLUS)), new Point(battery.terminal(Battery.MINUS)));
        return new Measurement(posts, Quantity.VOLTS, Measurement.stepOf(Condition.OFF), Map.of());
    }

    /** What the meter shows; null if the vehicle has no solution, or a wire has melted. */
    private @Nullable Double shown(Vehicle vehicle, Measurement m) {
        Bench.Measured measured = vehicle.bench()
                .measure(vehicle.faults(), vehicle.blown(), List.of(m))
                .orElse(null);
        if (measured == null || measured.melts()) {
            return null;
        }
        double closed = measured.figures().at(0);
        double open = measured.figures().open(0);
        boolean isOpen = m.contacts() == Contacts.OPEN || (m.contacts() == Contacts.EITHER && random.nextBoolean());
        double figure = m.step().engineTurning() ? (closed + open) / 2 : isOpen ? open : closed;
        if (m.part() != null || figure >= Bench.OPEN_OHM) {
            return figure;
        }
        double digits = MeterRange.of(m.quantity(), figure).error(0, 0);
        return figure * (1 + vehicle.meterShare()) + (2 * random.nextDouble() - 1) * digits;
    }

    /** Each consumer in each condition, as drawn and with each free switch in its last position. */
    private static List<Measurement> looks(Plan plan) {
        List<Map<String, String>> settings = new ArrayList<>(List.of(Map.of()));
        for (Switch s : plan.listParts(Switch.class)) {
            if (s.free()) {
                settings.add(Map.of(
                        s.id(), s.positions().get(s.positions().size() - 1).name()));
            }
        }
        List<Measurement> looks = new ArrayList<>();
        for (Consumer consumer : plan.listParts(Consumer.class)) {
            Probe across = new Probe(
                    new Point(consumer.terminal(consumer.feedTerminal())),
                    new Point(consumer.terminal(consumer.returnTerminal())));
            for (Condition condition : SEEN_IN) {
                for (Map<String, String> setting : settings) {
                    looks.add(new Measurement(
                            across,
                            Quantity.VOLTS,
                            Measurement.stepOf(condition),
                            setting,
                            Contacts.EITHER,
                            consumer.id()));
                }
            }
        }
        return looks;
    }

    private static @Nullable MeterReading sign(Measurement m, Seen seen, boolean sound) {
        Sign sign = switch (seen) {
            case WORKING -> sound ? Sign.WORKS : Sign.STAYS_ON;
            case WEAK -> Sign.WEAK;
            case GLOWING -> Sign.GLOWS;
            case NOTHING -> Sign.DEAD;
            case FUSE_BLOWN -> Sign.BLOWS_ITS_FUSE;
        };
        return new MeterReading(
                null, "earth", m.part(), m.condition(), m.switches(), Contacts.EITHER, false, null, null, null, sign);
    }

    private Optional<MeterReading> symptom(Vehicle vehicle, Plan plan) {
        List<Measurement> looks = looks(plan);
        Bench.Measured sound =
                Bedside.bench(plan).measure(List.of(), Set.of(), looks).orElse(null);
        Bench.Measured faulty = vehicle.bench()
                .measure(vehicle.faults(), vehicle.blown(), looks)
                .orElse(null);
        if (sound == null || faulty == null || faulty.melts()) {
            return Optional.empty();
        }
        List<MeterReading> signs = new ArrayList<>();
        for (int i = 0; i < looks.size(); i++) {
            if (sound.figures().at(i) != faulty.figures().at(i)) {
                signs.add(sign(looks.get(i), Seen.of(faulty.figures().at(i)), false));
            }
        }
        return signs.isEmpty() ? Optional.empty() : Optional.of(signs.get(random.nextInt(signs.size())));
    }

    /** Follows the readings that the service asks for. */
    private boolean followed(String name, Plan plan, SingleFault fault) {
        Vehicle vehicle = vehicle(plan, List.of(fault));
        Optional<MeterReading> symptom = symptom(vehicle, plan);
        if (symptom.isEmpty()) {
            return false;
        }
        List<MeterReading> readings = new ArrayList<>(List.of(symptom.get()));
        PrimarySide primary = new PrimarySide(plan);
        DiagnosisReport report;
        int taken = 0;
        while (true) {
            long start = System.nanoTime();
            report = Bedside.diagnose(plan, readings);
            tally.times.add((System.nanoTime() - start) / 1_000_000);
            boolean done = report.certainty() == Certainty.CONFIRMED || report.certainty() == Certainty.NOT_CONFIRMABLE;
            if (done || taken == MOST_READINGS || report.nextReadings().isEmpty()) {
                break;
            }
            NextReading next = report.nextReadings().get(0);
            Measurement m = new Measurement(
                    Probe.of(next.red(), next.black()),
                    next.quantity(),
                    Measurement.stepOf(next.condition()),
                    next.switches(),
                    next.contacts(),
                    null);
            tally.unsafe += primary.isTouchedBy(m) ? 1 : 0;
            Double shown = shown(vehicle, m);
            if (shown == null) {
                tally.unsolved++;
                return false;
            }
            readings.add(Bedside.reading(m, shown));
            taken++;
        }
        count(name, fault, report, taken);
        return true;
    }

    private void count(String name, SingleFault fault, DiagnosisReport report, int taken) {
        tally.faults++;
        tally.readings.add(taken);
        int rank = rank(report, fault);
        Explanation first = report.explanations().get(0);
        boolean right = first.candidates().stream()
                .anyMatch(c -> c.faults().stream().anyMatch(f -> !Collections.disjoint(f.ids(), fault.ids())));
        tally.first += rank == 1 ? 1 : 0;
        tally.firstThree += rank <= 3 ? 1 : 0;
        tally.excluded += rank == Integer.MAX_VALUE ? 1 : 0;
        tally.wrongAndSure += !right && first.probability() > SURE ? 1 : 0;
        int decile = (int) Math.min(9, 10 * first.probability());
        tally.told[decile]++;
        tally.right[decile] += rank == 1 ? 1 : 0;
        if (report.certainty() == Certainty.CONFIRMED) {
            tally.confirmed++;
            tally.confirmedRight += rank == 1 ? 1 : 0;
        }
        if (rank > 1) {
            out.printf(
                    Locale.ROOT,
                    "%s: %s: rank %s, first %.3f %s %s%n",
                    name,
                    fault.description(),
                    rank == Integer.MAX_VALUE ? "none" : String.valueOf(rank),
                    first.probability(),
                    report.verdict(),
                    first.candidates().get(0).description().text());
        }
    }

    private static int rank(DiagnosisReport report, SingleFault fault) {
        for (Explanation explanation : report.explanations()) {
            if (explanation.candidates().stream()
                    .anyMatch(c -> c.faults().size() == 1
                            && c.faults().get(0).kind() == fault.kind()
                            && c.faults().get(0).ids().equals(fault.ids()))) {
                return explanation.rank();
            }
        }
        return Integer.MAX_VALUE;
    }

    /** Six places of a sound vehicle; then one of them with leads reversed, and one in millivolts. */
    private void soundVehicle(String name, Plan plan) {
        Vehicle vehicle = vehicle(plan, List.of());
        List<MeterReading> readings = new ArrayList<>();
        List<Measurement> points = new ArrayList<>();
        plan.wires()
                .forEach(w -> List.of(Condition.OFF, Condition.RUN)
                        .forEach(c -> points.add(new Measurement(
                                new Probe(new Point(w.from()), Point.EARTH),
                                Quantity.VOLTS,
                                Measurement.stepOf(c),
                                Map.of()))));
        Collections.shuffle(points, random);
        for (Measurement m : points.subList(0, Math.min(MOST_READINGS, points.size()))) {
            Double shown = shown(vehicle, m);
            if (shown == null) {
                return;
            }
            readings.add(Bedside.reading(m, shown));
        }
        DiagnosisReport report = Bedside.diagnose(plan, readings);
        tally.sound++;
        if (report.verdict() != Verdict.PLAN_CONSISTENT) {
            tally.accused++;
            out.printf(Locale.ROOT, "%s: sound, but %s: %s%n", name, report.verdict(), report.outcome());
        }
        for (int i = 0; i < readings.size(); i++) {
            Double volts = readings.get(i).voltageV();
            if (volts != null && Math.abs(volts) > 2) {
                slip(plan, readings, i, -volts, DoubtKind.LEADS_REVERSED);
                if (Math.abs(volts) < 0.1) {
                    slip(plan, readings, i, 1000 * volts, DoubtKind.FACTOR_THOUSAND);
                }
                slip(plan, readings, i, volts / 1000, DoubtKind.FACTOR_THOUSAND);
                return;
            }
        }
    }

    private void slip(Plan plan, List<MeterReading> readings, int i, double volts, DoubtKind kind) {
        List<MeterReading> slipped = new ArrayList<>(readings);
        Measurement m = readings.get(i).measurement(plan);
        slipped.set(i, Bedside.reading(m, volts));
        tally.slips++;
        tally.asked += Bedside.diagnose(plan, slipped).doubts().stream().anyMatch(d -> d.kind() == kind) ? 1 : 0;
    }

    private void report() {
        out.println();
        out.println("| measured | goal | now |");
        out.println("| --- | --- | --- |");
        row("faults put in, with a sign that shows", "", String.valueOf(tally.faults));
        row("true fault first", "93 %", share(tally.first, tally.faults));
        row("true fault in the first three", "98 %", share(tally.firstThree, tally.faults));
        row("true fault not listed", "0", String.valueOf(tally.excluded));
        row("a wrong part first with more than 95 %", "at most 1 %", share(tally.wrongAndSure, tally.faults));
        row("confirmed", "", share(tally.confirmed, tally.faults));
        row("of these, right", "", share(tally.confirmedRight, tally.confirmed));
        row("readings after the sign, median", "6 at most", String.valueOf(median(tally.readings)));
        row("readings that are not safe", "0", String.valueOf(tally.unsafe));
        row("sound vehicles accused", "0", tally.accused + " of " + tally.sound);
        row("slips of whoever measured that are asked about", "all", tally.asked + " of " + tally.slips);
        row("time of one answer, median", "200 ms", median(tally.times) + " ms");
        out.println();
        out.println("| told with | cases | right |");
        out.println("| --- | --- | --- |");
        for (int d = 0; d < tally.told.length; d++) {
            row(
                    10 * d + " to " + (10 * d + 10) + " %",
                    String.valueOf(tally.told[d]),
                    share(tally.right[d], tally.told[d]));
        }
    }

    private void row(String... cells) {
        out.println("| " + String.join(" | ", Arrays.asList(cells)) + " |");
    }

    private static String share(int part, int whole) {
        return whole == 0 ? "none" : String.format(Locale.ROOT, "%d (%.0f %%)", part, 100.0 * part / whole);
    }

    private static <T extends Number & Comparable<T>> long median(List<T> numbers) {
        return numbers.stream()
                .sorted()
                .skip(numbers.size() / 2)
                .findFirst()
                .map(Number::longValue)
                .orElse(0L);
    }
}
