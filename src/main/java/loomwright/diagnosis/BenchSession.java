package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.fault.BatteryFault;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.OffValue;
import loomwright.circuit.fault.ShortBetween;
import loomwright.circuit.fault.ShortToEarth;
import loomwright.circuit.fault.SingleFault;
import loomwright.mistakes.Fuses;
import loomwright.network.NoConvergence;
import loomwright.operation.ChangeScan;
import loomwright.operation.Contacts;
import loomwright.operation.DisconnectedPlan;
import loomwright.operation.Quantity;
import loomwright.operation.ReadingSpread;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.StepFigures;

/** One go at all measurements of a plan with faults in it. */
final class BenchSession {
    private final Bench bench;
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
    private double melting;

    @SuppressWarnings({"unchecked", "rawtypes"}) // an array of maps
    BenchSession(
            Bench bench,
            List<SingleFault> faults,
            Set<String> fusesBlown,
            List<Measurement> measurements,
            boolean spread) {
        this.bench = bench;
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

    Optional<Bench.Measured> measured() {
        Map<Bench.Variant, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < measurements.size(); i++) {
            Measurement m = measurements.get(i);
            for (Contacts state : bench.states(m)) {
                groups.computeIfAbsent(new Bench.Variant(m.switches(), state), key -> new ArrayList<>())
                        .add(i);
            }
        }
        try {
            for (Map.Entry<Bench.Variant, List<Integer>> group : groups.entrySet()) {
                if (!solve(group.getKey(), group.getValue())) {
                    return Optional.empty();
                }
            }
        } catch (NoConvergence none) {
            return Optional.empty();
        }
        for (int i = 0; i < measurements.size(); i++) {
            List<Contacts> states = bench.states(measurements.get(i));
            if (states.size() == 1) {
                boolean isOpen = states.get(0) == Contacts.OPEN;
                copy(i, isOpen ? open : closed, isOpen ? closed : open);
                copy(i, isOpen ? openSpread : closedSpread, isOpen ? closedSpread : openSpread);
            }
        }
        PredictedFigures figures = new PredictedFigures(closed, open);
        return Optional.of(new Bench.Measured(
                spread ? figures.withSpread(closedSpread, openSpread) : figures,
                opening,
                openingBeforeAReading,
                melting));
    }

    private void copy(int i, double[] from, double[] to) {
        to[i] = from[i];
    }

    private void copy(int i, PredictedFigures.Spread from, PredictedFigures.Spread to) {
        to.moves()[i] = from.moves()[i];
        to.ohms()[i] = from.ohms()[i];
    }

    private boolean solve(Bench.Variant variant, List<Integer> which) {
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
                values[i] = ohms == null ? Bench.OPEN_OHM : Math.min(Bench.OPEN_OHM, ohms.ohm());
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
                OptionalDouble volts = solved.volts(m.probe());
                values[i] = volts.orElse(0);
                // What nothing joins stays at 0 V however much the supply has.
                if (volts.isPresent() && solved instanceof SolvedStep whole && spread) {
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
            bench.soundV().putIfAbsent(m, solved.effectiveV(consumer));
        }
        double power = 1;
        for (SingleFault fault : faults) {
            power *= fault instanceof OffValue off && off.part().equals(part) ? off.powerFactor() : 1;
        }
        // A lamp of half the watts is as weak as one on less voltage.
        Seen seen = Seen.of(solved, part, bench.soundV().getOrDefault(m, 0.0) / Math.sqrt(power));
        return seen == Seen.NOTHING && blowsFuses() ? Seen.FUSE_BLOWN : seen;
    }

    /** A fuse that is blown by itself does not blow again; beside another fault it is what that one blew. */
    private boolean blowsFuses() {
        return !fusesBlown.isEmpty() || (faults.size() > 1 && faults.stream().anyMatch(BlownFuse.class::isInstance));
    }

    private void look(Plan faulty, List<? extends StepFigures> steps) {
        for (String fuse : Fuses.firstToOpen(faulty, steps)) {
            opening.add(fuse);
            if (Fuses.opensBeforeAReading(faulty, fuse, steps)) {
                openingBeforeAReading.add(fuse);
            }
        }
        boolean shorted = faults.stream().anyMatch(f -> f instanceof ShortToEarth || f instanceof ShortBetween);
        if (shorted && openingBeforeAReading.isEmpty()) {
            melting = Math.max(melting, Fuses.meltingBeforeAReading(faulty, steps));
        }
    }

    /** A battery that is taken off makes no difference, whatever it is like. */
    private DisconnectedPlan disconnected(Bench.Variant variant, Plan faulty, Condition condition) {
        boolean sound = fusesBlown.isEmpty() && faults.stream().allMatch(BatteryFault.class::isInstance);
        if (sound) {
            return bench.soundDisconnected(variant).computeIfAbsent(condition, c -> disconnected(faulty, c));
        }
        return disconnected(faulty, condition);
    }

    private DisconnectedPlan disconnected(Plan faulty, Condition condition) {
        bench.count();
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
                .filter(BenchSession::isSolved)
                .map(Measurement::step)
                .max(Comparator.naturalOrder());
    }

    /** The same steps as {@link #steps} by a change to the sound plan's solution; none if that cannot tell. */
    private List<ChangeScan.Scanned> scan(Bench.Variant variant, Plan faulty, List<Integer> which) {
        if (!bench.scanning() || spread || faults.isEmpty()) {
            return List.of();
        }
        Set<Step> wanted = EnumSet.of(Step.RUN);
        for (int i : which) {
            if (isSolved(measurements.get(i))) {
                wanted.add(measurements.get(i).step());
            }
        }
        ChangeScan scan = bench.scan(variant);
        List<ChangeScan.Scanned> steps = scan.solve(faulty, wanted).orElse(List.of());
        boolean told = which.stream().map(measurements::get).allMatch(m -> tells(steps, m));
        if (steps.isEmpty() || !told) {
            return List.of();
        }
        bench.count();
        bench.countScanned();
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
        bench.count();
        if (last.filter(step -> step.compareTo(Step.RUN) >= 0).isPresent()) {
            return bench.solver().solve(faulty, last.orElseThrow());
        }
        try {
            return bench.solver().solve(faulty, Step.RUN);
        } catch (NoConvergence none) {
            bench.count();
            return last.map(step -> bench.solver().solve(faulty, step)).orElse(List.of());
        }
    }

    private Plan faulty(Bench.Variant variant) {
        Plan changed = bench.variant(variant);
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

    private static StepFigures in(Step step, List<? extends StepFigures> steps) {
        return steps.stream().filter(s -> s.step() == step).findFirst().orElseThrow();
    }
}
