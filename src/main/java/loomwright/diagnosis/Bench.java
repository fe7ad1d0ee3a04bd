package loomwright.diagnosis;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.fault.BatteryFault;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.network.NetworkLimits;
import loomwright.operation.ChangeScan;
import loomwright.operation.Contacts;
import loomwright.operation.DisconnectedPlan;
import loomwright.operation.PlanSolver;
import org.jspecify.annotations.Nullable;

/**
 * Says what a meter would show on a plan with faults in it, and what would be seen of its parts. Looks at the clock before
 * each solution.
 *
 * <p>Not thread safe: the solver holds work space.
 */
final class Bench {
    /** What stands for an open circuit: more than a common meter's range shows (common practice, no source). */
    static final double OPEN_OHM = 2e6;

    private final Plan plan;
    private final Progress progress;
    private final int expected;
    private final PlanSolver solver;
    private final Map<Variant, Plan> variants = new HashMap<>();
    private final Map<Asked, Optional<Measured>> known = new HashMap<>();
    private final Map<Measurement, Double> soundV = new HashMap<>();
    private final boolean scanning;
    private final Map<Variant, Map<Condition, DisconnectedPlan>> soundDisconnected = new HashMap<>();
    private final Map<Variant, ChangeScan> scans = new HashMap<>();
    private ChangeScan.@Nullable Room room;
    private int solutions;
    private int scanned;

    Bench(Plan plan, DiagnosisLimits limits, NetworkLimits networkLimits, Progress progress) {
        this(plan, limits, networkLimits, progress, true);
    }

    /**
     * As above.
     *
     * @param scanning whether faults that change a few resistances may be looked at by {@link ChangeScan}
     */
    Bench(Plan plan, DiagnosisLimits limits, NetworkLimits networkLimits, Progress progress, boolean scanning) {
        this.plan = plan;
        this.scanning = scanning;
        this.progress = new Deadline(limits.timeMs(), progress);
        this.expected = limits.maxSolutions();
        this.solver = new PlanSolver(networkLimits, new Deadline(limits.timeMs(), progress.untold()));
    }

    Plan plan() {
        return plan;
    }

    /** How often a plan was solved so far. */
    int solutions() {
        return solutions;
    }

    /** How many of these by a change to the sound plan's solution. */
    int scanned() {
        return scanned;
    }

    /**
     * What was found on the bench.
     *
     * @param figures what a meter shows, one for each measurement; 0 V where nothing joins the points, as a meter's own
     *     resistance has it; of a part that is looked at, the number of what is {@link Seen}
     * @param opening the fuses that carry more than opens them, the worst in each setting of the switches
     * @param openingBeforeAReading those of them that open before a reading could be taken
     * @param melting of a short that opens no fuse by then: the highest current in a wire as a share of that at which it melts
     *     before a reading could be taken
     */
    record Measured(PredictedFigures figures, Set<String> opening, Set<String> openingBeforeAReading, double melting) {
        boolean melts() {
            return melting >= 1;
        }
    }

    /** The same question is answered from memory. */
    private record Asked(List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {}

    /** A plan to solve: switches set, contacts held. */
    record Variant(Map<String, String> switches, Contacts contacts) {}

    /**
     * Measures.
     *
     * @return empty if the plan with these faults has no solution
     * @throws loomwright.answer.OutOfTime if the time is up
     */
    Optional<Measured> measure(List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {
        Asked asked = new Asked(faults, fusesBlown, measurements);
        Optional<Measured> before = known.get(asked);
        if (before == null) {
            before = new BenchSession(this, faults, fusesBlown, measurements, false).measured();
            known.put(asked, before);
        }
        return before;
    }

    /** The same, with how far the figures may be off in a vehicle that is otherwise sound. */
    Optional<Measured> measureWithSpread(
            List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {
        return new BenchSession(this, faults, fusesBlown, measurements, true).measured();
    }

    boolean scanning() {
        return scanning;
    }

    PlanSolver solver() {
        return solver;
    }

    /** What consumers work on in the sound plan, as far as they were looked at. */
    Map<Measurement, Double> soundV() {
        return soundV;
    }

    /** The sound plan with the battery off, as far as it was asked for. */
    Map<Condition, DisconnectedPlan> soundDisconnected(Variant variant) {
        return soundDisconnected.computeIfAbsent(variant, v -> new EnumMap<>(Condition.class));
    }

    /** The sound plan, set. */
    Plan variant(Variant variant) {
        return variants.computeIfAbsent(variant, this::set);
    }

    /** The sound plan, set, to be changed. */
    ChangeScan scan(Variant variant) {
        return scans.computeIfAbsent(variant, v -> solver.settings(variant(v)).scanChanges(room()));
    }

    /** For all faults that are looked for. */
    private ChangeScan.Room room() {
        ChangeScan.Room known = room;
        if (known == null) {
            known = ChangeScan.room(
                    plan,
                    SingleFaults.listWithinParts(plan).stream()
                            .filter(fault -> !(fault instanceof BatteryFault))
                            .map(fault -> fault.applyTo(plan))
                            .toList());
            room = known;
        }
        return known;
    }

    /** How the contacts may stand: one state where they make no difference. */
    List<Contacts> states(Measurement m) {
        return Contacts.matter(plan) ? m.contacts().states() : List.of(Contacts.CLOSED);
    }

    private Plan set(Variant variant) {
        Plan changed = plan;
        for (Map.Entry<String, String> entry : variant.switches().entrySet()) {
            Switch chosen = (Switch) changed.findPart(entry.getKey()).orElseThrow();
            changed = changed.withPart(chosen.withPosition(entry.getValue()));
        }
        return Contacts.matter(plan) ? variant.contacts().held(changed) : changed;
    }

    void countScanned() {
        scanned++;
    }

    void count() {
        solutions++;
        progress.at(Math.min(solutions, expected), expected);
    }
}
