package loomwright.diagnosis;

import java.util.HashSet;
import java.util.Set;
import loomwright.circuit.Battery;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Point;
import loomwright.operation.Quantity;

/**
 * Where nobody puts a meter while the engine turns: the ignition coil, what switches it, and the far ends of the wires on
 * them, but for the battery and the earth points. Each time the contacts open, hundreds of volts stand there (common practice,
 * no source; the sheet of readings keeps off as well).
 */
final class PrimarySide {
    private final Set<TerminalRef> terminals = new HashSet<>();

    PrimarySide(Plan plan) {
        for (Part part : plan.parts()) {
            if (isIgnition(part)) {
                part.terminals().forEach(name -> terminals.add(part.terminal(name)));
            }
        }
        Set<TerminalRef> farEnds = new HashSet<>();
        for (Wire wire : plan.wires()) {
            if (terminals.contains(wire.from()) || terminals.contains(wire.to())) {
                farEnds.add(wire.from());
                farEnds.add(wire.to());
            }
        }
        farEnds.removeIf(end -> isSafe(plan.findPart(end.part()).orElseThrow()));
        terminals.addAll(farEnds);
    }

    private static boolean isIgnition(Part part) {
        return part instanceof Coil
                || part instanceof ContactBreaker
                || part instanceof IgnitionModule
                || part instanceof Capacitor;
    }

    private static boolean isSafe(Part part) {
        return part instanceof Battery || part instanceof EarthPoint;
    }

    /** Whether a measurement would put a lead there with the engine turning. */
    boolean isTouchedBy(Measurement measurement) {
        return measurement.quantity() == Quantity.VOLTS
                && measurement.step().engineTurning()
                && (isOn(measurement.probe().from()) || isOn(measurement.probe().to()));
    }

    private boolean isOn(Point point) {
        TerminalRef terminal = point.terminal();
        return terminal != null && terminals.contains(terminal);
    }
}
