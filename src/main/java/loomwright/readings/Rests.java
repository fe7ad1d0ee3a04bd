package loomwright.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.message.Message;
import loomwright.operation.Contacts;
import loomwright.operation.Intent;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.readings.ReadingsSheet.Purpose;
import org.jspecify.annotations.Nullable;

/** The readings with nothing at work: ohms with the battery disconnected, the supply, and what must be dead. */
final class Rests {
    private static final ReadingState OFF = new ReadingState(Step.OFF, Map.of(), Contacts.EITHER);

    private final SolvedVariants variants;
    private final Plan plan;
    private final List<Condition> conditions;

    Rests(SolvedVariants variants, List<Condition> conditions) {
        this.variants = variants;
        this.plan = variants.plan();
        this.conditions = conditions;
    }

    private static ReadingCandidate ohms(
            Purpose purpose, ReadingState when, @Nullable String circuit, Point from, Point to, Message tells) {
        return new ReadingCandidate(purpose, when, circuit, Quantity.OHMS, new Probe(from, to), tells);
    }

    /** Ohms of the whole plan. */
    List<ReadingCandidate> wholeOhms() {
        List<ReadingCandidate> found = new ArrayList<>();
        Poles.of(variants.in(OFF))
                .ifPresent(poles -> found.add(ohms(
                        Purpose.SUPPLY_BRIDGED,
                        OFF,
                        null,
                        new Point(poles.live()),
                        Point.EARTH,
                        ReadingText.SUPPLY_BRIDGED.with())));
        return found;
    }

    /** Ohms of one part; empty for one of which an ohmmeter tells nothing. */
    List<ReadingCandidate> ohms(Part part) {
        List<ReadingCandidate> found = new ArrayList<>();
        boolean unknown = part instanceof Load l && (l.draw().resistanceOhm() == null || l.minimumV(plan.system()) > 0);
        if (part instanceof Motor || unknown) {
            return found;
        } else if (part instanceof Consumer load) {
            found.add(own(load, load.feedTerminal(), load.returnTerminal(), load.id()));
        } else if (part instanceof Ballast || part instanceof FixedResistor) {
            List<String> ends = part.terminals();
            for (int i = 1; i < ends.size(); i++) {
                found.add(own(part, ends.get(i - 1), ends.get(i), null));
            }
        } else if (part instanceof Fuse) {
            found.add(across(part, OFF, ReadingText.CONTINUITY.with()));
        } else if (part instanceof ContactBreaker) {
            found.add(across(part, new ReadingState(Step.OFF, Map.of(), Contacts.CLOSED), ReadingText.CONTACTS.with()));
            found.add(across(part, new ReadingState(Step.OFF, Map.of(), Contacts.OPEN), ReadingText.CONTACTS.with()));
        }
        return found;
    }

    private static ReadingCandidate own(Part part, String from, String to, @Nullable String circuit) {
        return ohms(
                Purpose.OWN_RESISTANCE,
                OFF,
                circuit,
                new Point(part.terminal(from)),
                new Point(part.terminal(to)),
                ReadingWording.ownResistance(part));
    }

    private static ReadingCandidate across(Part part, ReadingState when, Message tells) {
        List<String> ends = part.terminals();
        return ohms(
                Purpose.CONTINUITY,
                when,
                null,
                new Point(part.terminal(ends.get(0))),
                new Point(part.terminal(ends.get(1))),
                tells);
    }

    /** The battery at rest (or in the first condition asked for) and whenever the engine turns, and the charging wire. */
    List<ReadingCandidate> supply() {
        List<ReadingCandidate> found = new ArrayList<>();
        for (Condition condition : Condition.values()) {
            boolean wanted = found.isEmpty() || condition == Condition.CRANK || condition == Condition.RUNNING;
            if (wanted && conditions.contains(condition)) {
                ReadingState when = new ReadingState(step(condition), Map.of(), Contacts.EITHER);
                for (Battery battery : plan.listParts(Battery.class)) {
                    found.add(supply(when, battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS), false));
                }
                SolvedStep solved = variants.in(when);
                if (when.step().charging()) {
                    Poles.of(solved)
                            .ifPresent(poles -> Poles.charging(plan)
                                    .forEach(output -> found.add(supply(when, output, poles.live(), true))));
                }
            }
        }
        return found;
    }

    private static ReadingCandidate supply(ReadingState when, TerminalRef from, TerminalRef to, boolean charging) {
        return new ReadingCandidate(
                charging ? Purpose.FEED_DROP : Purpose.SUPPLY,
                when,
                null,
                Quantity.VOLTS,
                new Probe(new Point(from), new Point(to)),
                charging
                        ? ReadingText.CHARGING.with()
                        : when.step().engineTurning()
                                ? ReadingText.BATTERY_AT_WORK.with()
                                : ReadingText.BATTERY.with());
    }

    static Step step(Condition condition) {
        return switch (condition) {
            case OFF -> Step.OFF;
            case ACCESSORY -> Step.ACCESSORY;
            case RUN -> Step.RUN;
            case CRANK -> Step.CRANK;
            case RUNNING -> Step.RUNNING;
        };
    }

    /** What must be dead with the key off and the free switches as drawn. */
    List<ReadingCandidate> dead(Consumer load) {
        boolean meantDead = conditions.contains(Condition.OFF)
                && !Intent.conditions(load, plan).contains(Condition.OFF);
        return meantDead
                ? List.of(new ReadingCandidate(
                        Purpose.DEAD,
                        OFF,
                        load.id(),
                        Quantity.VOLTS,
                        new Probe(new Point(load.terminal(load.feedTerminal())), Point.EARTH),
                        ReadingText.DEAD.with()))
                : List.of();
    }
}
