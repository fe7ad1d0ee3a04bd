package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.tolerance.Spreads;
import loomwright.circuit.tolerance.Tolerances;
import loomwright.operation.Contacts;
import loomwright.operation.MeterRange;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/** A vehicle whose every figure is off within its tolerance, with faults in it, and a meter of 2000 counts. */
final class FaultyVehicle {
    private static final List<Condition> SEEN_IN =
            List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING, Condition.OFF);
    private static final int MOST_FUSES = 5;
    private static final double METER_SHARE = 0.01;

    private final Plan plan;
    private final Plan built;
    private final Plan sound;
    private final Bench bench;
    private final List<SingleFault> faults;
    private final Set<String> blown;
    private final double meterShare;
    private final Random random;
    private boolean contactsOpen;

    private FaultyVehicle(
            Plan plan, Plan built, Plan sound, List<SingleFault> faults, double meterShare, Random random) {
        this.plan = plan;
        this.built = built;
        this.sound = sound;
        this.bench = Bedside.bench(built);
        this.faults = List.copyOf(faults);
        this.meterShare = meterShare;
        this.random = random;
        this.blown = blown();
        this.contactsOpen = random.nextBoolean();
    }

    /** A vehicle built to a plan, each figure off within its tolerance, with faults. */
    static FaultyVehicle of(Plan plan, List<SingleFault> faults, Random random) {
        Spreads spreads = Spreads.of(plan, Tolerances.USUAL);
        Plan built = spreads.moved(random.doubles(spreads.list().size(), -1, 1).toArray());
        return new FaultyVehicle(plan, built, built, faults, METER_SHARE * (2 * random.nextDouble() - 1), random);
    }

    /** The same vehicle and meter with other faults: one that was mended, or something that is not among those looked for. */
    FaultyVehicle with(Plan other, List<SingleFault> left) {
        return new FaultyVehicle(plan, other, sound, left, meterShare, random);
    }

    /** The fuses that the faults have blown. */
    Set<String> blownFuses() {
        return blown;
    }

    Plan built() {
        return built;
    }

    /** The fuses that the faults blow, one after the other: whoever complains has had everything on. */
    private Set<String> blown() {
        Set<String> all = new LinkedHashSet<>();
        List<Measurement> looks = looks(plan);
        for (int i = 0; i < MOST_FUSES; i++) {
            Set<String> opening = bench.measure(faults, Set.copyOf(all), looks)
                    .map(Bench.Measured::opening)
                    .orElse(Set.of());
            if (!all.addAll(opening)) {
                break;
            }
        }
        return Set.copyOf(all);
    }

    /**
     * What the meter shows; null if the vehicle has no solution, or a wire has melted. The contacts stand as the engine stopped, until it
     * has turned.
     */
    @Nullable
    Double shown(Measurement m) {
        Bench.Measured measured = bench.measure(faults, blown, List.of(m)).orElse(null);
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
        double shown = figure * (1 + meterShare) + (2 * random.nextDouble() - 1) * digits;
        return m.quantity() == Quantity.OHMS ? Math.max(0, shown) : shown;
    }

    /** What an owner complains of: one of the parts that do not do what they did; empty if all do. */
    Optional<MeterReading> symptom() {
        List<Measurement> looks = looks(plan);
        Bench.Measured before =
                Bedside.bench(sound).measure(List.of(), Set.of(), looks).orElse(null);
        Bench.Measured faulty = bench.measure(faults, blown, looks).orElse(null);
        if (before == null || faulty == null || faulty.melts()) {
            return Optional.empty();
        }
        List<MeterReading> signs = new ArrayList<>();
        for (int i = 0; i < looks.size(); i++) {
            Seen planned = Seen.of(before.figures().at(i));
            Seen seen = Seen.of(faulty.figures().at(i));
            // Nobody complains of what does better than it should, or of a fuse of what is not in use.
            boolean better = seen == Seen.WORKING && planned != Seen.NOTHING;
            boolean unused = planned == Seen.NOTHING && seen == Seen.FUSE_BLOWN;
            if (planned != seen && !better && !unused) {
                signs.add(sign(looks.get(i), seen));
            }
        }
        return signs.isEmpty() ? Optional.empty() : Optional.of(signs.get(random.nextInt(signs.size())));
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

    private static MeterReading sign(Measurement m, Seen seen) {
        Sign sign = switch (seen) {
            case WORKING -> Sign.STAYS_ON;
            case WEAK -> Sign.WEAK;
            case GLOWING -> Sign.GLOWS;
            case NOTHING -> Sign.DEAD;
            case FUSE_BLOWN -> Sign.BLOWS_ITS_FUSE;
        };
        return new MeterReading(
                null, "earth", m.part(), m.condition(), m.switches(), Contacts.EITHER, false, null, null, null, sign);
    }
}
