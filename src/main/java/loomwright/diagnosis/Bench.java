package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.fault.BatteryFault;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.OffValue;
import loomwright.circuit.fault.ShortBetween;
import loomwright.circuit.fault.ShortToEarth;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.mistakes.Fuses;
import loomwright.network.NetworkLimits;
import loomwright.network.NoConvergence;
import loomwright.operation.ChangeScan;
import loomwright.operation.Contacts;
import loomwright.operation.DisconnectedPlan;
import loomwright.operation.PlanSolver;
import loomwright.operation.Quantity;
import loomwright.operation.ReadingSpread;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.StepFigures;
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
     * @param melts whether a wire melts before a reading could be taken
     */
    record Measured(PredictedFigures figures, Set<String> opening, Set<String> openingBeforeAReading, boolean melts) {}

    /** The same question is answered from memory. */
    private record Asked(List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {}

    /** A plan to solve: switches set, contacts held. */
    private record Variant(Map<String, String> switches, Contacts contacts) {}

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
            before = new Session(faults, fusesBlown, measurements, false).measured();
            known.put(asked, before);
        }
        return before;
    }

    /** The same, with how far the figures may be off in a vehicle that is otherwise sound. */
    Optional<Measured> measureWithSpread(
            List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {
        return new Session(faults, fusesBlown, measurements, true).measured();
    }

    /** One go at all measurements. */
    private final class Session {
        private final List<SingleFault> faults;
        private final Set<String> fusesBlown;
        private final List<Measurement> measurements;
        private final boolean spread;
        private final double[] closed;
        private final double[] open;
        private final PredictedFigures.Spread closedSpread;
        private final PredictedFigures.Spread openSpread;
        private final Set<String> opening = new LinkedHashSet<>();
        private final Set<String> openingBeforeAReading = new LinkedHashSet<>();
        private boolean melts;

        @SuppressWarnings({"unchecked", "rawtypes"}) // an array of maps
        Session(List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements, boolean spread) {
            this.faults = faults;
            this.fusesBlown = fusesBlown;
            this.measurements = measurements;
            this.spread = spread;
            int count = measurements.size();
            this.closed = new double[count];
            this.open = new double[count];
            this.closedSpread = new PredictedFigures.Spread(new Map[count], new double[count]);
            this.openSpread = new PredictedFigures.Spread(new Map[count], new double[count]);
        }

        Optional<Measured> measured() {
            Map<Variant, List<Integer>> groups = new LinkedHashMap<>();
            for (int i = 0; i < measurements.size(); i++) {
                Measurement m = measurements.get(i);
                for (Contacts state : states(m)) {
                    groups.computeIfAbsent(new Variant(m.switches(), state), key -> new ArrayList<>())
                            .add(i);
                }
            }
            try {
                for (Map.Entry<Variant, List<Integer>> group : groups.entrySet()) {
                    if (!solve(group.getKey(), group.getValue())) {
                        return Optional.empty();
                    }
                }
            } catch (NoConvergence none) {
                return Optional.empty();
            }
            for (int i = 0; i < measurements.size(); i++) {
                List<Contacts> states = states(measurements.get(i));
                if (states.size() == 1) {
                    boolean isOpen = states.get(0) == Contacts.OPEN;
                    copy(i, isOpen ? open : closed, isOpen ? closed : open);
                    copy(i, isOpen ? openSpread : closedSpread, isOpen ? closedSpread : openSpread);
                }
            }
            PredictedFigures figures = new PredictedFigures(closed, open);
            return Optional.of(new Measured(
                    spread ? figures.withSpread(closedSpread, openSpread) : figures,
                    opening,
                    openingBeforeAReading,
                    melts));
        }

        private void copy(int i, double[] from, double[] to) {
            to[i] = from[i];
        }

        private void copy(int i, PredictedFigures.Spread from, PredictedFigures.Spread to) {
            to.moves()[i] = from.moves()[i];
            to.ohms()[i] = from.ohms()[i];
        }

        private boolean solve(Variant variant, List<Integer> which) {
            Plan faulty = faulty(variant);
            List<? extends StepFigures> steps = scan(variant, faulty, which);
            if (steps.isEmpty()) {
                steps = steps(faulty, which);
            }
            double[] values = variant.contacts() == Contacts.OPEN ? open : closed;
            PredictedFigures.Spread here = variant.contacts() == Contacts.OPEN ? openSpread : closedSpread;
            Map<Condition, DisconnectedPlan> disconnected = new EnumMap<>(Condition.class);
            Map<Step, ReadingSpread> spreads = new EnumMap<>(Step.class);
            for (int i : which) {
                Measurement m = measurements.get(i);
                here.moves()[i] = Map.of();
                if (m.part() == null && m.quantity() == Quantity.OHMS) {
                    DisconnectedPlan.Ohms ohms = disconnected
                            .computeIfAbsent(m.condition(), c -> disconnected(variant, faulty, c))
                            .ohmsWithin(m.probe());
                    values[i] = ohms == null ? OPEN_OHM : Math.min(OPEN_OHM, ohms.ohm());
                    here.ohms()[i] = ohms == null ? 0 : ohms.spreadOhm();
                    continue;
                }
                StepFigures solved = in(m.step(), steps);
                if (!solved.solved()) {
                    return false;
                }
                if (m.part() != null) {
                    values[i] = seen(m, solved).figure();
                } else {
                    values[i] = solved.volts(m.probe()).orElse(0);
                    if (solved instanceof SolvedStep whole && spread) {
                        here.moves()[i] = spreads.computeIfAbsent(m.step(), step -> whole.spread())
                                .of(m.probe());
                    }
                }
            }
            look(faulty, steps);
            return true;
        }

        /** What is seen of a part; that a fault blows its fuse is seen whenever it blows one. */
        private Seen seen(Measurement m, StepFigures solved) {
            String part = String.valueOf(m.part());
            if (faults.isEmpty() && solved.plan().findPart(part).orElse(null) instanceof Consumer consumer) {
                soundV.putIfAbsent(m, solved.effectiveV(consumer));
            }
            double power = 1;
            for (SingleFault fault : faults) {
                power *= fault instanceof OffValue off && off.part().equals(part) ? off.powerFactor() : 1;
            }
            // A lamp of half the watts is as weak as one on less voltage.
            Seen seen = Seen.of(solved, part, soundV.getOrDefault(m, 0.0) / Math.sqrt(power));
            return seen == Seen.NOTHING && !fusesBlown.isEmpty() ? Seen.FUSE_BLOWN : seen;
        }

        private void look(Plan faulty, List<? extends StepFigures> steps) {
            for (String fuse : Fuses.firstToOpen(faulty, steps)) {
                opening.add(fuse);
                if (Fuses.opensBeforeAReading(faulty, fuse, steps)) {
                    openingBeforeAReading.add(fuse);
                }
            }
            boolean shorted = faults.stream().anyMatch(f -> f instanceof ShortToEarth || f instanceof ShortBetween);
            melts |= shorted && openingBeforeAReading.isEmpty() && Fuses.wireMeltsBeforeAReading(faulty, steps);
        }

        /** A battery that is taken off makes no difference, whatever it is like. */
        private DisconnectedPlan disconnected(Variant variant, Plan faulty, Condition condition) {
            boolean sound = fusesBlown.isEmpty() && faults.stream().allMatch(BatteryFault.class::isInstance);
            if (sound) {
                return soundDisconnected
                        .computeIfAbsent(variant, v -> new EnumMap<>(Condition.class))
                        .computeIfAbsent(condition, c -> disconnected(faulty, c));
            }
            return disconnected(faulty, condition);
        }

        private DisconnectedPlan disconnected(Plan faulty, Condition condition) {
            count();
            return DisconnectedPlan.of(faulty, condition);
        }

        /** Whether a solution with the battery on says what it shows. */
        private static boolean isSolved(Measurement m) {
            return m.part() != null || m.quantity() == Quantity.VOLTS;
        }

        /** The last step in which something is measured that a solution says. */
        private Optional<Step> last(List<Integer> which) {
            return which.stream()
                    .map(measurements::get)
                    .filter(Session::isSolved)
                    .map(Measurement::step)
                    .max(Comparator.naturalOrder());
        }

        /** The same steps as {@link #steps} by a change to the sound plan's solution; none if that cannot tell. */
        private List<ChangeScan.Scanned> scan(Variant variant, Plan faulty, List<Integer> which) {
            if (!scanning || spread || faults.isEmpty()) {
                return List.of();
            }
            Set<Step> wanted = EnumSet.of(Step.RUN);
            for (int i : which) {
                if (isSolved(measurements.get(i))) {
                    wanted.add(measurements.get(i).step());
                }
            }
            ChangeScan scan = scans.computeIfAbsent(
                    variant,
                    v -> solver.settings(Objects.requireNonNull(variants.get(v)))
                            .scanChanges(room()));
            List<ChangeScan.Scanned> steps = scan.solve(faulty, wanted).orElse(List.of());
            boolean told = which.stream().map(measurements::get).allMatch(m -> tells(steps, m));
            if (steps.isEmpty() || !told) {
                return List.of();
            }
            count();
            scanned++;
            return steps;
        }

        private boolean tells(List<ChangeScan.Scanned> steps, Measurement m) {
            String part = m.part();
            return !isSolved(m)
                    || steps.stream()
                            .filter(s -> s.step() == m.step())
                            .anyMatch(s -> part == null ? s.tells(m.probe()) : s.tells(part));
        }

        /**
         * The steps in which something is measured, and those before; with the key on in any case, since that has been
         * before anything was measured, and what opens a fuse then has opened it. Where nothing can be solved with the key
         * on, only as far as was measured: what was read at rest is worth having all the same.
         */
        private List<SolvedStep> steps(Plan faulty, List<Integer> which) {
            Optional<Step> last = last(which);
            count();
            if (last.filter(step -> step.compareTo(Step.RUN) >= 0).isPresent()) {
                return solver.solve(faulty, last.orElseThrow());
            }
            try {
                return solver.solve(faulty, Step.RUN);
            } catch (NoConvergence none) {
                count();
                return last.map(step -> solver.solve(faulty, step)).orElse(List.of());
            }
        }

        private Plan faulty(Variant variant) {
            Plan changed = variants.computeIfAbsent(variant, Bench.this::set);
            // What is wrong with the battery first: without charge it feeds the running engine as well.
            for (SingleFault fault : faults) {
                changed = fault instanceof BatteryFault ? fault.applyTo(changed) : changed;
            }
            for (SingleFault fault : faults) {
                changed = fault instanceof BatteryFault ? changed : fault.applyTo(changed);
            }
            for (String fuse : fusesBlown) {
                changed = new BlownFuse(fuse).applyTo(changed);
            }
            return changed;
        }
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
    private List<Contacts> states(Measurement m) {
        return Contacts.matter(plan) ? m.contacts().states() : List.of(Contacts.CLOSED);
    }

    private static StepFigures in(Step step, List<? extends StepFigures> steps) {
        return steps.stream().filter(s -> s.step() == step).findFirst().orElseThrow();
    }

    private Plan set(Variant variant) {
        Plan changed = plan;
        for (Map.Entry<String, String> entry : variant.switches().entrySet()) {
            Switch chosen = (Switch) changed.findPart(entry.getKey()).orElseThrow();
            changed = changed.withPart(chosen.withPosition(entry.getValue()));
        }
        return Contacts.matter(plan) ? variant.contacts().held(changed) : changed;
    }

    private void count() {
        solutions++;
        progress.at(Math.min(solutions, expected), expected);
    }
}
