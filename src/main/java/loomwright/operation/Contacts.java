package loomwright.operation;

import java.util.List;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.Position;
import loomwright.circuit.Switch.PositionByCondition;

/** How the ignition's contacts stand while a reading is taken. */
public enum Contacts {
    CLOSED,
    OPEN,
    /** Nobody knows, or they open and close while the engine turns: the reading lies between that of either. */
    EITHER;

    /** A supply that no vehicle has: the module that needs it never conducts. */
    private static final double NEVER_V = 100;

    /** Whether contacts make any difference in a plan. */
    public static boolean matter(Plan plan) {
        return !plan.listParts(ContactBreaker.class).isEmpty()
                || !plan.listParts(IgnitionModule.class).isEmpty();
    }

    /** The states to solve for it, in a plan with contacts. */
    public List<Contacts> states() {
        return this == EITHER ? List.of(CLOSED, OPEN) : List.of(this);
    }

    /**
     * The plan with contacts held. A module cannot be held closed, only kept from conducting: closed it conducts when it
     * does by itself.
     */
    public Plan held(Plan plan) {
        return plan.with(plan.parts().stream().map(this::held).toList(), plan.wires());
    }

    private Part held(Part part) {
        if (part instanceof ContactBreaker b) {
            String name = this == OPEN ? "open" : "closed";
            List<List<String>> joins = this == OPEN ? List.of() : List.of(b.terminals());
            return new Switch(
                    b.id(),
                    b.label(),
                    b.terminals(),
                    List.of(new Position(name, joins)),
                    new PositionByCondition(name, name, name, name, name),
                    null,
                    b.contactResistanceOhm(),
                    b.ratingA(),
                    false,
                    null);
        } else if (this == OPEN && part instanceof IgnitionModule m) {
            return new IgnitionModule(
                    m.id(), m.label(), m.saturationV(), m.limitA(), m.supplyA(), NEVER_V, m.conductsWhenStopped());
        }
        return part;
    }
}
