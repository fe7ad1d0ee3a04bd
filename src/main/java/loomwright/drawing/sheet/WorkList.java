package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.Change;
import loomwright.comparison.PlanComparison.Item;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PlanComparison.PropertyChange;
import loomwright.comparison.PropertyWording;
import loomwright.drawing.diagram.Flow;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * A change of the wiring as work, in a safe order: the battery off first; then what comes out; then what goes in, earths
 * first and what is nearest to the battery last, so that no end that is live later hangs loose; the battery on last. The
 * order is common practice, no source.
 */
final class WorkList {
    private final PlanComparison comparison;
    private final Plan before;
    private final Plan after;
    private final WorkWords was;
    private final WorkWords is;
    private final Flow flow;
    private final List<WorkStep> steps = new ArrayList<>();

    private WorkList(PlanComparison comparison, Plan before, Plan after) {
        this.comparison = comparison;
        this.before = before;
        this.after = after;
        this.was = new WorkWords(before);
        this.is = new WorkWords(after);
        this.flow = Flow.of(after);
    }

    /** The steps; without any that change something there is only one, which says so. */
    static List<WorkStep> of(PlanComparison comparison, Plan before, Plan after) {
        return new WorkList(comparison, before, after).list();
    }

    /** The changes that are work, with the number of their step. */
    static Map<ItemChange, Integer> numbers(List<WorkStep> steps) {
        Map<ItemChange, Integer> numbers = new LinkedHashMap<>();
        for (WorkStep step : steps) {
            ItemChange change = step.change();
            if (change != null) {
                numbers.put(change, step.number());
            }
        }
        return numbers;
    }

    private List<WorkStep> list() {
        add(
                WorkText.DISCONNECT_BATTERY.with(
                        arg("polarity", before.system().earthPolarity().name().toLowerCase(Locale.ROOT))),
                null);
        changes(Item.CONNECTOR, true).forEach(change -> add(connector(change), change));
        changes(Item.WIRE, true).forEach(change -> add(wire(change), change));
        changes(Item.PART, true).forEach(change -> add(part(change), change));
        changes(Item.PART, false).filter(WorkList::isWorkOnPart).forEach(change -> add(part(change), change));
        changes(Item.WIRE, false)
                .filter(change -> !change.changes().equals(List.of(Change.RENAMED)))
                .sorted(Comparator.comparingInt(this::nearness).reversed())
                .forEach(change -> add(wire(change), change));
        changes(Item.CONNECTOR, false).forEach(change -> add(connector(change), change));
        comparison
                .looseEnds()
                .newLooseEnds()
                .forEach(loose -> add(
                        WorkText.LOOSE_END.with(arg("what", loose.message()), arg("remedy", loose.remedy())), null));
        if (steps.size() == 1) {
            return List.of(new WorkStep(1, WorkText.NOTHING_TO_DO.with(), null));
        }
        Stream.of(WorkText.CHECK_JOINTS, WorkText.MEASURE_OHMS, WorkText.RECONNECT_BATTERY, WorkText.MEASURE_VOLTS)
                .forEach(text -> add(text.with(), null));
        return List.copyOf(steps);
    }

    private void add(Message message, @Nullable ItemChange change) {
        steps.add(new WorkStep(steps.size() + 1, message, change));
    }

    private Stream<ItemChange> changes(Item item, boolean removed) {
        return comparison.changes().stream()
                .filter(change -> change.item() == item && (change.after() == null) == removed);
    }

    /** A part of which only the wires or the use are others stays as it is. */
    private static boolean isWorkOnPart(ItemChange change) {
        return change.before() == null || !change.ofTheThing().isEmpty();
    }

    /** Earths are farthest. */
    private int nearness(ItemChange change) {
        Wire wire = after.findWire(Objects.requireNonNull(change.after())).orElseThrow();
        boolean earthed = Stream.of(wire.from(), wire.to())
                .anyMatch(end -> after.findPart(end.part()).orElseThrow() instanceof EarthPoint);
        return earthed
                ? Flow.BOTTOM
                : Math.min(flow.depth(wire.from().part()), flow.depth(wire.to().part()));
    }

    private Message part(ItemChange change) {
        String id = change.after();
        if (id == null) {
            return WorkText.TAKE_OUT_PART.with(arg("part", before.thing(Objects.requireNonNull(change.before()))));
        } else if (change.before() == null) {
            return WorkText.FIT_PART.with(arg("part", after.thing(id)));
        }
        Part old = before.findPart(Objects.requireNonNull(change.before())).orElseThrow();
        Part now = after.findPart(id).orElseThrow();
        return old.displayName().equals(now.displayName())
                ? WorkText.ALTER_PART.with(arg("part", now.thing()), arg("changes", properties(change.ofTheThing())))
                : WorkText.EXCHANGE_PART.with(
                        arg("old", old.thing()),
                        arg("part", now.thing()),
                        arg("changes", properties(change.ofTheThing())));
    }

    private static String properties(List<PropertyChange> changes) {
        return changes.stream().map(PropertyWording::change).collect(Collectors.joining("; "));
    }

    private Message connector(ItemChange change) {
        String id = change.after();
        if (id == null) {
            return WorkText.PART_CONNECTOR.with(arg("connector", String.valueOf(change.before())));
        }
        return (change.before() == null ? WorkText.JOIN_CONNECTOR : WorkText.ALTER_CONNECTOR)
                .with(arg("connector", id), arg("changes", properties(change.properties())));
    }

    private Message wire(ItemChange change) {
        Wire old = change.before() == null
                ? null
                : before.findWire(change.before()).orElseThrow();
        Wire now =
                change.after() == null ? null : after.findWire(change.after()).orElseThrow();
        if (now == null) {
            Wire gone = Objects.requireNonNull(old);
            return WorkText.TAKE_OUT_WIRE.with(
                    arg("wire", was.wire(gone)), arg("from", was.end(gone.from())), arg("to", was.end(gone.to())));
        } else if (old == null) {
            return WorkText.RUN_WIRE.with(
                    arg("wire", is.newWire(now)), arg("from", is.end(now.from())), arg("to", is.end(now.to())));
        }
        boolean another = change.properties().stream()
                .anyMatch(p -> Set.of("size", "colour", "resistanceOhm").contains(p.property()));
        if (another && change.changes().contains(Change.MOVED)) {
            return WorkText.REPLACE_MOVED_WIRE.with(
                    arg("old", was.wire(old)),
                    arg("oldFrom", was.end(old.from())),
                    arg("oldTo", was.end(old.to())),
                    arg("wire", is.newWire(now)),
                    arg("from", is.end(now.from())),
                    arg("to", is.end(now.to())));
        } else if (another) {
            return WorkText.REPLACE_WIRE.with(
                    arg("old", was.wire(old)),
                    arg("wire", is.newWire(now)),
                    arg("from", is.end(now.from())),
                    arg("to", is.end(now.to())));
        } else if (change.changes().contains(Change.MOVED)) {
            return moved(old, now);
        }
        return WorkText.ALTER_WIRE.with(
                arg("wire", is.wire(now)),
                arg("from", is.end(now.from())),
                arg("to", is.end(now.to())),
                arg("changes", properties(change.properties())));
    }

    /** One end where the other stays, else both. */
    private Message moved(Wire old, Wire now) {
        for (TerminalRef stays : List.of(old.from(), old.to())) {
            if (stays.equals(now.from()) || stays.equals(now.to())) {
                return WorkText.MOVE_WIRE_END.with(
                        arg("wire", was.wire(old)),
                        arg("from", was.end(stays.equals(old.from()) ? old.to() : old.from())),
                        arg("to", is.end(stays.equals(now.from()) ? now.to() : now.from())),
                        arg("stays", is.end(stays)));
            }
        }
        return WorkText.MOVE_WIRE.with(
                arg("wire", was.wire(old)),
                arg("from", was.end(old.from())),
                arg("to", was.end(old.to())),
                arg("newFrom", is.end(now.from())),
                arg("newTo", is.end(now.to())));
    }
}
