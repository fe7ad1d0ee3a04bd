package loomwright.drawing.diagram;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.circuit.Connector;
import loomwright.circuit.Consumer;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;

/** A piece of a plan, to be drawn by itself. Nobody solves it: its figures are those of the whole. */
final class Section {
    private Section() {}

    /** The wires of these ids with the parts at their ends, and the other parts of these ids. */
    static Plan of(Plan whole, Set<String> ids) {
        List<Wire> wires =
                whole.wires().stream().filter(wire -> ids.contains(wire.id())).toList();
        Set<String> parts = new HashSet<>(ids);
        for (Wire wire : wires) {
            parts.add(wire.from().part());
            parts.add(wire.to().part());
        }
        // A half of a connector is drawn with its other half.
        List<Connector> connectors = whole.connectors().stream()
                .filter(one -> ids.contains(one.id()) || one.halves().stream().anyMatch(parts::contains))
                .toList();
        connectors.forEach(one -> parts.addAll(one.halves()));
        return new Plan(
                whole.schema(),
                whole.name(),
                whole.system(),
                whole.conditions(),
                whole.parts().stream()
                        .filter(part -> parts.contains(part.id()))
                        .map(part -> part instanceof Joint joint ? reached(joint, wires) : drawn(part))
                        .toList(),
                wires,
                connectors,
                whole.notes());
    }

    /** A joint with the terminals that wires of the piece lead to; the others are drawn elsewhere. */
    private static Joint reached(Joint joint, List<Wire> wires) {
        List<String> reached = joint.terminals().stream()
                .filter(terminal -> wires.stream()
                        .anyMatch(wire -> wire.from().equals(joint.terminal(terminal))
                                || wire.to().equals(joint.terminal(terminal))))
                .toList();
        return reached.isEmpty() ? joint : new Joint(joint.id(), joint.label(), reached, joint.resistanceOhm());
    }

    /** A part without what it says of others, such as switches, that may be elsewhere or have other positions there. */
    static Part drawn(Part part) {
        return part instanceof Consumer consumer ? consumer.withMeantLive(List.of(), List.of()) : part;
    }

    /** The same, and the wires between the parts that it has. */
    static Plan withWiresBetween(Plan whole, Set<String> ids) {
        Set<String> parts = new HashSet<>();
        of(whole, ids).parts().stream().map(Part::id).forEach(parts::add);
        Set<String> all = new HashSet<>(ids);
        whole.wires().stream()
                .filter(wire -> parts.contains(wire.from().part())
                        && parts.contains(wire.to().part()))
                .map(Wire::id)
                .forEach(all::add);
        return of(whole, all);
    }
}
