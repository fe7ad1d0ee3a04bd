package loomwright.circuit.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Conditions;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Supply;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.Position;
import loomwright.circuit.Switch.PositionByCondition;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import org.jspecify.annotations.Nullable;

/** The changes of which faults are made. */
final class Edits {

    private Edits() {}

    static Part part(Plan plan, String id) {
        return plan.findPart(id).orElseThrow(() -> new IllegalArgumentException("no part " + id));
    }

    static Wire wire(Plan plan, String id) {
        return plan.findWire(id).orElseThrow(() -> new IllegalArgumentException("no wire " + id));
    }

    static Plan withWires(Plan plan, UnaryOperator<Wire> change) {
        return plan.with(plan.parts(), plan.wires().stream().map(change).toList());
    }

    static Plan withWire(Plan plan, Wire changed) {
        return withWires(plan, w -> w.id().equals(changed.id()) ? changed : w);
    }

    static Plan adding(Plan plan, @Nullable Part part, @Nullable Wire wire) {
        List<Part> parts = new ArrayList<>(plan.parts());
        List<Wire> wires = new ArrayList<>(plan.wires());
        if (part != null) {
            parts.add(part);
        }
        if (wire != null) {
            wires.add(wire);
        }
        return plan.with(parts, wires);
    }

    static Plan withConnectors(Plan plan, List<Connector> connectors) {
        return new Plan(
                plan.schema(),
                plan.name(),
                plan.system(),
                plan.conditions(),
                plan.parts(),
                plan.wires(),
                connectors,
                plan.notes());
    }

    /**
     * The supply changed in every condition in which the battery alone feeds, and what a battery states of its own. Of one of several
     * batteries only its own figures change; then they are its own.
     */
    static Plan withoutCharge(Plan plan, Batteries batteries, Function<ResolvedSupply, Supply> change) {
        if (batteries.isSomeOf(plan)) {
            Plan changed = plan;
            for (Battery battery : plan.listParts(Battery.class)) {
                if (batteries.ids().contains(battery.id())) {
                    changed = changed.withPart(battery.withAll(change.apply(battery.in(Condition.OFF, plan))));
                }
            }
            return changed;
        }
        Function<Condition, Supply> changed = condition -> change.apply(plan.supply(condition));
        Plan supplied = withConditions(
                plan,
                new Conditions(
                        changed.apply(Condition.OFF),
                        changed.apply(Condition.ACCESSORY),
                        changed.apply(Condition.RUN),
                        changed.apply(Condition.CRANK),
                        plan.conditions().running()));
        for (Battery battery : plan.listParts(Battery.class)) {
            supplied = supplied.withPart(battery.withOwn(change.apply(battery.in(Condition.OFF, plan))));
        }
        return supplied;
    }

    /** A plan with the supply that another has, stated where that is what is usual. */
    static Plan withSupplyOf(Plan sound, Plan changed) {
        Function<Condition, Supply> stated =
                condition -> sound.supply(condition).stated();
        return withConditions(
                changed,
                new Conditions(
                        stated.apply(Condition.OFF),
                        stated.apply(Condition.ACCESSORY),
                        stated.apply(Condition.RUN),
                        stated.apply(Condition.CRANK),
                        stated.apply(Condition.RUNNING)));
    }

    static Plan withConditions(Plan plan, Conditions conditions) {
        return new Plan(
                plan.schema(),
                plan.name(),
                plan.system(),
                conditions,
                plan.parts(),
                plan.wires(),
                plan.connectors(),
                plan.notes());
    }

    static List<String> ids(Plan plan, Class<? extends Part> kind) {
        return plan.listParts(kind).stream().map(Part::id).toList();
    }

    /** A wire with its one end put elsewhere. */
    static Wire moved(Wire wire, WireEnd end, TerminalRef to) {
        return end == WireEnd.FROM ? wire.withEnds(to, wire.to()) : wire.withEnds(wire.from(), to);
    }

    /** In the place of a part: contacts that stay as they are whatever the key does. Empty for none that touch. */
    static Switch frozen(Part part, String position, List<List<String>> joins, double contactOhm) {
        return new Switch(
                part.id(),
                part.label(),
                part.terminals(),
                List.of(new Position(position, joins)),
                new PositionByCondition(position, position, position, position, position),
                null,
                contactOhm,
                null,
                false,
                null);
    }
}
