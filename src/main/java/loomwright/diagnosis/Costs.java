package loomwright.diagnosis;

import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.operation.Contacts;
import loomwright.operation.Point;
import loomwright.operation.Quantity;
import loomwright.operation.Step;

/** What a reading takes (common practice, no source). */
final class Costs {
    private final Plan plan;

    Costs(Plan plan) {
        this.plan = plan;
    }

    /** 1 for a voltage at a place at hand with the key off or on; more for what takes longer or is harder to reach. */
    double of(Measurement m) {
        double cost = m.quantity() == Quantity.OHMS ? 2 : step(m.step());
        cost += 0.3 * m.switches().size();
        if (m.contacts() != Contacts.EITHER && Contacts.matter(plan)) {
            cost += 0.5;
        }
        return cost + place(m.probe().from()) + place(m.probe().to());
    }

    private static double step(Step step) {
        return switch (step) {
            case OFF, OFF_AGAIN -> 0.9;
            case ACCESSORY, RUN -> 1;
            case CRANK -> 3;
            case RUNNING, OFF_ENGINE_TURNING -> 4;
        };
    }

    private double place(Point point) {
        TerminalRef terminal = point.terminal();
        if (terminal == null) {
            return 0;
        }
        Part part = plan.findPart(terminal.part()).orElseThrow();
        if (part instanceof Joint) {
            return 1.5;
        } else if (part instanceof Switch || part instanceof ConnectorHalf) {
            return 0.5;
        }
        return 0;
    }
}
