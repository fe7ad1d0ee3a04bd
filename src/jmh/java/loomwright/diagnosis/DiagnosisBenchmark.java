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
import java.util.function.Consumer;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
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
 * <p>A third as many vehicles have two faults, as many three, which is more than is looked for, and as many none.
 *
 * <p>Arguments: seed, seconds. One vehicle of each plan in turn, until the time is over.
 */
public final class DiagnosisBenchmark {
    private static final int MOST_READINGS = 6;
    private static final double SURE = 0.95;
    /** After so many single faults one vehicle of each other kind. */
    private static final int OTHERS = 3;

    private static final List<Condition> SEEN_IN =
            List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING, Condition.OFF);

    private final Random random;
    private final PrintStream out;
    private final Counts counts = new Counts();
    private boolean contactsOpen;

    private DiagnosisBenchmark(long seed, PrintStream out) {
        this.random = new Random(seed);
        this.out = out;
    }

    /** Counts. */
    private static final class Counts {
        private int faults;
        private int first;
        private int firstThree;
        private int excluded;
        private int wrongAndSure;
        private int confirmed;
        private int confirmedRight;
        private int unsafe;
        private int sound;
        private int accused;
        private int slips;
        private int asked;
        private int doubles;
        private int doublesNamed;
        private int triples;
        private int triplesSure;
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
     * @param args seed, seconds
     */
    public static void main(String[] args) {
        long seed = args.length > 0 ? Long.parseLong(args[0]) : 20;
        long seconds = args.length > 1 ? Long.parseLong(args[1]) : 1800;
        DiagnosisBenchmark benchmark = new DiagnosisBenchmark(seed, System.out);
        Map<String, Plan> plans = new TreeMap<>();
        Plans.exampleNames().forEach(name -> plans.put(name, UsualIntent.complete(Plans.example(name))));
        for (int i = 0; i < 3; i++) {
            plans.put("generated " + i, UsualIntent.complete(RandomVehicle.of(seed + i, 12 + 6 * i)));
        }
        long end = System.nanoTime() + seconds * 1_000_000_000;
        for (int round = 0; System.nanoTime() < end; round++) {
            for (Map.Entry<String, Plan> entry : plans.entrySet()) {
                if (System.nanoTime() < end) {
                    benchmark.run(entry.getKey(), entry.getValue(), round % OTHERS == 0);
                }
            }
        }
        benchmark.report();
    }

    private void run(String name, Plan plan, boolean others) {
        List<SingleFault> all = SingleFaults.listWithinParts(plan);
        boolean shown = false;
        for (int i = 0; !shown && i < all.size(); i++) {
            SingleFault one = some(all, 1).get(0);
            shown = follow(plan, List.of(one), outcome -> count(name, one, outcome));
        }
        if (others) {
            follow(plan, some(all, 2), this::countDouble);
            follow(plan, some(all, 3), this::countTriple);
            soundVehicle(name, plan);
        }
    }

    /** So many faults of which no two are at one part or wire. */
    private List<SingleFault> some(List<SingleFault> all, int count) {
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
        contactsOpen = random.nextBoolean();
        return new Vehicle(built, bench, faults, Set.copyOf(blown), 0.01 * (2 * random.nextDouble() - 1));
    }

    private static Measurement posts(Plan plan) {
        Battery battery = plan.listParts(Battery.class).get(0);
        Probe posts = new Probe(new Point(battery.terminal(Battery.PLUS)), new Point(battery.terminal(Battery.MINUS)));
        return new Measurement(posts, Quantity.VOLTS, Measurement.stepOf(Condition.OFF), Map.of());
    }

    /**
     * What the meter shows; null if the vehicle has no solution, or a wire has melted. The contacts stand as the engine stopped, until it
     * has turned.
     */
    private @Nullable Double shown(Vehicle vehicle, Measurement m) {
        Bench.Measured measured = vehicle.bench()
                .measure(vehicle.faults(), vehicle.blown(), List.of(m))
                .orElse(null);
        if (measured == null || measured.melts()) {
            return null;
        }
        double closed = measured.figures().at(0);
        double open = measured.figures().open(0);
        boolean isOpen = m.contacts() == Contacts.OPEN || (m.contacts() == Contacts.EITHER && contactsOpen);
        if (m.step().engineTurning()) {
            contactsOpen = random.nextBoolean();
        }
        double figure = m.step().engineTurning() ? (closed + open) / 2 : isOpen ? open : closed;
        if (m.part() != null || figure >= Bench.OPEN_OHM) {
            return figure;
        }
        double digits = MeterRange.of(m.quantity(), figure).error(0, 0);
        double shown = figure * (1 + vehicle.meterShare()) + (2 * random.nextDouble() - 1) * digits;
        return m.quantity() == Quantity.OHMS ? Math.max(0, shown) : shown;
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
        for (loomwright.circuit.Consumer consumer : plan.listParts(loomwright.circuit.Consumer.class)) {
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

    /** What the service says in the end, and after how many readings. */
    private record Outcome(DiagnosisReport report, List<SingleFault> faults, int taken) {
        Explanation first() {
            return report.explanations().get(0);
        }
    }

    /**
     * Follows the readings that the service asks for.
     *
     * @return whether it came to an outcome: not if the faults show no sign, or the vehicle has no solution with them
     */
    private boolean follow(Plan plan, List<SingleFault> faults, Consumer<Outcome> outcome) {
        Vehicle vehicle = vehicle(plan, faults);
        Optional<MeterReading> symptom = symptom(vehicle, plan);
        if (symptom.isEmpty()) {
            return false;
        }
        List<MeterReading> readings = new ArrayList<>(List.of(symptom.get()));
        PrimarySide primary = new PrimarySide(plan);
        for (int taken = 0; ; taken++) {
            long start = System.nanoTime();
            DiagnosisReport report = Bedside.diagnose(plan, readings);
            counts.times.add((System.nanoTime() - start) / 1_000_000);
            boolean done = report.conclusion().certainty() == Certainty.CONFIRMED
                    || report.conclusion().certainty() == Certainty.NOT_CONFIRMABLE;
            if (done || taken == MOST_READINGS || report.nextReadings().isEmpty()) {
                outcome.accept(new Outcome(report, faults, taken));
                return true;
            }
            NextReading next = report.nextReadings().get(0);
            Measurement m = new Measurement(
                    Probe.of(next.red(), next.black()),
                    next.quantity(),
                    Measurement.stepOf(next.setting().condition()),
                    next.setting().switches(),
                    next.setting().contacts(),
                    null);
            counts.unsafe += primary.isTouchedBy(m) ? 1 : 0;
            Double shown = shown(vehicle, m);
            if (shown == null) {
                return false;
            }
            readings.add(Bedside.reading(m, shown));
        }
    }

    private void count(String name, SingleFault fault, Outcome outcome) {
        counts.faults++;
        counts.readings.add(outcome.taken());
        int rank = rank(outcome.report(), fault);
        Explanation first = outcome.first();
        counts.first += rank == 1 ? 1 : 0;
        counts.firstThree += rank <= 3 ? 1 : 0;
        counts.excluded += rank == Integer.MAX_VALUE ? 1 : 0;
        counts.wrongAndSure += !names(first, fault) && first.probability() > SURE ? 1 : 0;
        int decile = (int) Math.min(9, 10 * first.probability());
        counts.told[decile]++;
        counts.right[decile] += rank == 1 ? 1 : 0;
        if (outcome.report().conclusion().certainty() == Certainty.CONFIRMED) {
            counts.confirmed++;
            counts.confirmedRight += rank == 1 ? 1 : 0;
        }
        if (rank > 1) {
            out.printf(
                    Locale.ROOT,
                    "%s: %s: rank %s after %d, first %.3f %s %s %s%n",
                    name,
                    fault,
                    rank == Integer.MAX_VALUE ? "none" : String.valueOf(rank),
                    outcome.taken(),
                    first.probability(),
                    outcome.report().conclusion().verdict(),
                    outcome.report().conclusion().certainty(),
                    first.candidates().get(0).description().text());
        }
    }

    private void countDouble(Outcome outcome) {
        counts.doubles++;
        counts.doublesNamed += outcome.report().explanations().stream()
                        .limit(3)
                        .anyMatch(e -> outcome.faults().stream().anyMatch(f -> names(e, f)))
                ? 1
                : 0;
    }

    /** Two of three faults may show as little as if they were not there, so a part that has one of them is not called wrong. */
    private void countTriple(Outcome outcome) {
        counts.triples++;
        Explanation first = outcome.first();
        counts.triplesSure += outcome.report().conclusion().verdict() != Verdict.UNEXPLAINED
                        && first.probability() >= 0.9
                        && outcome.faults().stream().noneMatch(f -> names(first, f))
                ? 1
                : 0;
    }

    /** Whether an explanation accuses what a fault is at. */
    private static boolean names(Explanation explanation, SingleFault fault) {
        return explanation.candidates().stream()
                .anyMatch(c -> c.faults().stream().anyMatch(f -> !Collections.disjoint(f.ids(), fault.ids())));
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

    /** Six places of a sound vehicle; then one of them with leads reversed, and the same in kilovolts. */
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
        counts.sound++;
        if (report.conclusion().verdict() != Verdict.PLAN_CONSISTENT) {
            counts.accused++;
            out.printf(
                    Locale.ROOT,
                    "%s: sound, but %s: %s%n",
                    name,
                    report.conclusion().verdict(),
                    report.conclusion().summary().get(0).text());
        }
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
        Measurement m = readings.get(i).measurement(plan);
        slipped.set(i, Bedside.reading(m, volts));
        counts.slips++;
        counts.asked += Bedside.diagnose(plan, slipped).doubts().stream().anyMatch(d -> d.kind() == kind) ? 1 : 0;
    }

    private void report() {
        out.println();
        out.println("| measured | goal | now |");
        out.println("| --- | --- | --- |");
        row("faults put in, with a sign that shows", "", String.valueOf(counts.faults));
        row("true fault first", "93 %", share(counts.first, counts.faults));
        row("true fault in the first three", "98 %", share(counts.firstThree, counts.faults));
        row("true fault not listed", "0", String.valueOf(counts.excluded));
        row("a wrong part first with more than 95 %", "at most 1 %", share(counts.wrongAndSure, counts.faults));
        row("confirmed", "", share(counts.confirmed, counts.faults));
        row("of these, right", "", share(counts.confirmedRight, counts.confirmed));
        row("readings after the sign, median", "6 at most", String.valueOf(median(counts.readings)));
        row("readings that are not safe", "0", String.valueOf(counts.unsafe));
        row("sound vehicles accused", "0", counts.accused + " of " + counts.sound);
        row("two faults: one of them in the first three", "95 %", share(counts.doublesNamed, counts.doubles));
        row(
                "three faults: another part named with 90 % or more",
                "at most 10 %", share(counts.triplesSure, counts.triples));
        row("slips of whoever measured that are asked about", "all", counts.asked + " of " + counts.slips);
        row("time of one answer, median", "200 ms", median(counts.times) + " ms");
        out.println();
        out.println("| told with | cases | right |");
        out.println("| --- | --- | --- |");
        for (int d = 0; d < counts.told.length; d++) {
            row(
                    10 * d + " to " + (10 * d + 10) + " %",
                    String.valueOf(counts.told[d]),
                    share(counts.right[d], counts.told[d]));
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
