package loomwright.circuit.fault;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Wire;

/**
 * A relay or starter solenoid whose contacts no longer follow its winding, which itself is sound. In the plan contacts that
 * never move take its place and keep its id and terminals; its windings stand beside them as wires of their resistance.
 *
 * @param part id of a relay or solenoid
 * @param closed true for contacts that stay as when pulled in, false for such that stay at rest
 */
public record StuckRelay(String part, boolean closed) implements SingleFault {
    @Override
    public Kind kind() {
        return closed ? Kind.RELAY_STUCK_CLOSED : Kind.RELAY_STUCK_OPEN;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public Plan applyTo(Plan plan) {
        Part stuck = Edits.part(plan, part);
        if (stuck instanceof Relay relay) {
            String touches = closed ? Relay.MAKE : Relay.BREAK;
            Plan frozen = frozen(plan, relay, List.of(List.of(Relay.COMMON, touches)), relay.contactResistanceOhm());
            return winding(frozen, relay, Relay.COIL_FEED, Relay.COIL_RETURN, relay.coilResistanceOhm());
        }
        if (stuck instanceof Solenoid solenoid) {
            List<List<String>> joins = new ArrayList<>();
            if (closed) {
                joins.add(List.of(Solenoid.SUPPLY, Solenoid.MOTOR, Solenoid.BYPASS));
            }
            Plan frozen = frozen(plan, solenoid, joins, solenoid.contactResistanceOhm());
            frozen = winding(frozen, solenoid, Solenoid.CONTROL, Solenoid.RETURN, solenoid.holdInResistanceOhm());
            Double pullInOhm = solenoid.pullInResistanceOhm();
            return pullInOhm == null ? frozen : winding(frozen, solenoid, Solenoid.CONTROL, Solenoid.MOTOR, pullInOhm);
        }
        throw new IllegalArgumentException(part + " is no relay and no solenoid");
    }

    private Plan frozen(Plan plan, Part stuck, List<List<String>> joins, double contactOhm) {
        return plan.withPart(Edits.frozen(stuck, closed ? "stuck-closed" : "stuck-open", joins, contactOhm));
    }

    private static Plan winding(Plan plan, Part stuck, String from, String to, double ohm) {
        String id = plan.freeId(stuck.id(), "-winding");
        return Edits.adding(plan, null, Wire.ofResistance(id, stuck.terminal(from), stuck.terminal(to), ohm));
    }
}
