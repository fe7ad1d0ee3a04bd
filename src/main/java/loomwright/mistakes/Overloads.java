package loomwright.mistakes;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import loomwright.circuit.Battery;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.Generator;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import loomwright.mistakes.MistakesReport.Limit;
import loomwright.mistakes.MistakesReport.Overload;
import loomwright.operation.Branch;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.StepFinding;
import loomwright.operation.StepFindings;
import org.jspecify.annotations.Nullable;

/** Collects what a mistake overloads, each at its worst. */
final class Overloads {
    /** A starter cable is above its continuous rating in a sound plan too: only what grows by a tenth is the mistake's. */
    private static final double GROWN = 1.1;
    /** While cranking and while the engine runs down a wire has no time to get hot (common practice, no source). */
    private static final double SHORT_TIME = 3;

    /** Nothing but a motor takes as much (common practice, no source). */
    private static final double SHORT_A = 100;

    private static final double SHORT_GROWN = 2;

    private record Key(Limit kind, String id) {}

    private final Map<Key, Overload> found = new LinkedHashMap<>();
    private final Set<Key> lasting = new TreeSet<>((a, b) -> (a.kind() + a.id()).compareTo(b.kind() + b.id()));
    private final Capacities capacities;

    Overloads(Capacities capacities) {
        this.capacities = capacities;
    }

    /**
     * Compares the currents of one step.
     *
     * @param last whether the fuses that blow are open already
     */
    void compare(SolvedStep sound, SolvedStep faulty, Instant when, boolean last) {
        collect(sound, shortA(sound), !shorts(sound).isEmpty(), faulty, when, last);
    }

    /** What one step overloads by itself. */
    void add(SolvedStep solved, Instant when, boolean last) {
        collect(null, 0, false, solved, when, last);
    }

    private void collect(
            @Nullable SolvedStep sound,
            double shortBeforeA,
            boolean shortedBefore,
            SolvedStep faulty,
            Instant when,
            boolean last) {
        if (!faulty.solved()) {
            return;
        }
        Map<String, Part> parts = faulty.plan().partsById();
        for (int i = 0; i < faulty.branches().size(); i++) {
            compareCurrent(sound, faulty, parts, i, when, last);
        }
        compareBattery(shortBeforeA, faulty, when, last);
        if (shortedBefore) {
            return;
        }
        for (StepFinding finding : shorts(faulty)) {
            add(
                    new Overload(
                            Limit.DEAD_SHORT,
                            battery(faulty).id(),
                            when,
                            batteryA(faulty),
                            0,
                            false,
                            finding.message()),
                    last);
        }
    }

    /** A short with as little resistance as the battery itself leaves half its voltage and counts as no dead short. */
    private void compareBattery(double shortBeforeA, SolvedStep faulty, Instant when, boolean last) {
        double nowA = shortA(faulty);
        if (isShorted(shortBeforeA, nowA)) {
            Message shorted = MistakeText.BATTERY_SHORTED.with(
                    arg("battery", battery(faulty).thing()), arg("currentA", nowA), arg("when", when));
            add(new Overload(Limit.DEAD_SHORT, battery(faulty).id(), when, nowA, 0, false, shorted), last);
        }
    }

    private static boolean isShorted(double beforeA, double nowA) {
        return nowA > SHORT_A && nowA > SHORT_GROWN * beforeA;
    }

    /**
     * Whether a step is sure to overload nothing anew whose currents are known by how far they are from those of the sound plan.
     *
     * @param faulty the plan that it is a step of
     * @param movedA no current is further away, A
     * @param terminalV of each battery of the sound plan, V
     */
    boolean addsNothing(SolvedStep sound, Plan faulty, double movedA, ToDoubleFunction<Battery> terminalV) {
        Map<String, Part> parts = faulty.partsById();
        for (int i = 0; i < sound.branches().size(); i++) {
            double mostA = Math.abs(sound.currentA(i)) + movedA;
            Allowed allowed = allowed(sound.branches().get(i), parts, sound.step());
            if (allowed != null && allowed.isOver(mostA) && mostA > GROWN * Math.abs(sound.currentA(i))) {
                return false;
            }
        }
        // What motors take may be less by as much as what the battery gives is more.
        double beforeA = shortA(sound);
        return !isShorted(beforeA, beforeA + 2 * movedA)
                && sound.plan().listParts(Battery.class).stream()
                        .noneMatch(battery -> StepFindings.isDeadShort(
                                battery, sound, batteryA(sound) + movedA, terminalV.applyAsDouble(battery)));
    }

    /** The first battery; the alternator of a plan that has none. */
    /** The battery that gives most; in a plan without any the machine. */
    private static Part battery(SolvedStep solved) {
        return Stream.<Part>concat(
                        solved.plan().listParts(Battery.class).stream()
                                .sorted(Comparator.comparingDouble(battery -> -batteryA(solved, battery))),
                        solved.plan().listParts(Generator.class).stream())
                .findFirst()
                .orElseThrow();
    }

    /** What the battery gives beside what motors take. */
    private static double shortA(SolvedStep solved) {
        if (!solved.solved()) {
            return 0;
        }
        double motorA = solved.plan().listParts(Motor.class).stream()
                .mapToDouble(motor -> Math.abs(solved.currentA(motor)))
                .sum();
        return batteryA(solved) - motorA;
    }

    private static double batteryA(SolvedStep solved) {
        return solved.plan().listParts(Battery.class).stream()
                .mapToDouble(battery -> batteryA(solved, battery))
                .max()
                .orElse(0);
    }

    private static double batteryA(SolvedStep solved, Battery battery) {
        double mostA = 0;
        for (int i = solved.firstBranchOf(battery.id()); i < solved.endBranchOf(battery.id()); i++) {
            mostA = Math.max(mostA, Math.abs(solved.currentA(i)));
        }
        return mostA;
    }

    private void compareCurrent(
            @Nullable SolvedStep sound, SolvedStep faulty, Map<String, Part> parts, int i, Instant when, boolean last) {
        Branch branch = faulty.branches().get(i);
        double nowA = Math.abs(faulty.currentA(i));
        Allowed allowed = allowed(branch, parts, faulty.step());
        if (allowed == null) {
            return;
        }
        double figure = allowed.ofPower() ? faulty.powerW(i) : nowA;
        if (figure > allowed.most() && hasGrown(sound, branch, nowA)) {
            over(allowed, faulty.plan().thing(branch.id()), when, figure, last);
        }
    }

    /**
     * What a branch may carry.
     *
     * @param limit as the answer gives it
     * @param most as it is judged in this step
     * @param resistanceOhm where both are watts; 0 where they are amperes
     */
    private record Allowed(Limit kind, double limit, double most, double resistanceOhm) {
        boolean ofPower() {
            return resistanceOhm > 0;
        }

        boolean isOver(double currentA) {
            return (ofPower() ? currentA * currentA * resistanceOhm : currentA) > most;
        }
    }

    /**
     * Absent where nothing is known.
     *
     * @param parts of the plan, by id
     */
    private @Nullable Allowed allowed(Branch branch, Map<String, Part> parts, Step step) {
        Part part = branch.owner() == Branch.Owner.PART ? parts.get(branch.id()) : null;
        if (part instanceof Fuse fuse) {
            return new Allowed(Limit.FUSE_RATING, fuse.continuousA(), fuse.continuousA(), 0);
        }
        Double ratingW = part instanceof FixedResistor resistor ? resistor.ratingW() : null;
        if (ratingW != null && part instanceof FixedResistor resistor) {
            return new Allowed(Limit.PART_RATING, ratingW, ratingW, resistor.resistanceOhm());
        }
        OptionalDouble limitA = capacities.currentA(branch);
        if (limitA.isEmpty()) {
            return null;
        }
        Limit kind = branch.owner() == Branch.Owner.WIRE ? Limit.WIRE_AMPACITY : Limit.PART_RATING;
        boolean brief = step == Step.CRANK || step == Step.OFF_ENGINE_TURNING;
        double most = (brief ? SHORT_TIME : 1) * limitA.getAsDouble();
        return new Allowed(kind, limitA.getAsDouble(), most, 0);
    }

    /** Asked only of what is over its limit, which little is. */
    private static boolean hasGrown(@Nullable SolvedStep sound, Branch branch, double nowA) {
        double soundA = sound == null || !sound.solved() ? 0 : largestA(sound, branch);
        return nowA > GROWN * soundA;
    }

    private void over(Allowed allowed, Thing thing, Instant when, double figure, boolean last) {
        Message message = allowed.ofPower()
                ? MistakeText.HEAT_OVER_LIMIT.with(
                        arg("thing", thing), arg("powerW", figure), arg("limitW", allowed.limit()), arg("when", when))
                : MistakeText.CURRENT_OVER_LIMIT.with(
                        arg("thing", thing),
                        arg("currentA", figure),
                        arg("limitA", allowed.limit()),
                        arg("when", when));
        add(new Overload(allowed.kind(), thing.id(), when, figure, allowed.limit(), false, message), last);
    }

    void add(Overload overload, boolean last) {
        Key key = new Key(overload.kind(), overload.id());
        found.merge(key, overload, (a, b) -> b.figure() > a.figure() ? b : a);
        if (last) {
            lasting.add(key);
        }
    }

    private static List<StepFinding> shorts(SolvedStep solved) {
        return StepFindings.of(solved).stream()
                .filter(f -> f.kind() == StepFinding.Kind.DEAD_SHORT || f.kind() == StepFinding.Kind.UNSOLVABLE)
                .toList();
    }

    private static double largestA(SolvedStep solved, Branch branch) {
        double largestA = 0;
        for (int i = 0; i < solved.branches().size(); i++) {
            if (isSame(solved.branches().get(i), branch)) {
                largestA = Math.max(largestA, Math.abs(solved.currentA(i)));
            }
        }
        return largestA;
    }

    /** A wire is the same wire wherever its ends are; of a part each way counts by itself. */
    private static boolean isSame(Branch one, Branch other) {
        if (one.owner() != other.owner()) {
            return false;
        }
        return one.owner() == Branch.Owner.PART
                ? one.from().equals(other.from()) && one.to().equals(other.to())
                : one.id().equals(other.id());
    }

    /** Those that are more than borderline: a tenth above their limit. */
    List<Overload> listClear() {
        return list().stream().filter(o -> o.figure() > GROWN * o.limit()).toList();
    }

    /** The worst first: what lasts before what a fuse ends. */
    List<Overload> list() {
        List<Overload> all = new ArrayList<>();
        found.forEach((key, o) -> all.add(
                new Overload(o.kind(), o.id(), o.when(), o.figure(), o.limit(), !lasting.contains(key), o.message())));
        all.sort(Comparator.comparing(Overload::endedByFuse)
                .thenComparing(Overload::kind)
                .thenComparing(o -> o.limit() == 0 ? 0 : -o.figure() / o.limit()));
        return all;
    }
}
