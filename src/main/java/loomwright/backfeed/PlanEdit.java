package loomwright.backfeed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.message.Arg;

/** What remedies have in common when they change a plan. */
record PlanEdit(Plan plan) {
    /** A fitted wire or joint: short and stout, so that the remedy and not the fitter's wire is judged. */
    private static final double FITTED_OHM = 0.005;

    Arg at(String name, TerminalRef terminal) {
        return arg(name, plan.describe(terminal));
    }

    static Wire fitted(String id, TerminalRef from, TerminalRef to) {
        return Wire.ofResistance(id, from, to, FITTED_OHM);
    }

    /** The wires but for one; may be added to. */
    List<Wire> without(Wire wire) {
        List<Wire> wires = new ArrayList<>(plan.wires());
        wires.remove(wire);
        return wires;
    }

    List<Part> with(Part... added) {
        List<Part> parts = new ArrayList<>(plan.parts());
        parts.addAll(List.of(added));
        return parts;
    }
}
