package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Connector;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.Wire;

/**
 * Corrosion, a loose crimp or a worn contact: resistance where there should be none. In a wire it may be at either end,
 * which no meter at the terminals can tell apart; in a connector or switch it is in each contact.
 *
 * @param at id of a wire, splice, earth point, connector or switch
 * @param resistanceOhm what is added there, above 0 to 1000 ohm less what the joint has when sound
 */
public record BadJoint(String at, double resistanceOhm) implements SizedFault {
    static final double MAX_OHM = 1000;
    /** Less is lost among the resistances of sound joints and wires (common practice, no source). */
    static final double SMALLEST_OHM = 0.003;

    /** More is as good as open (common practice, no source). */
    static final double LARGEST_OHM = 300;

    @Override
    public Kind kind() {
        return Kind.BAD_JOINT;
    }

    @Override
    public List<String> ids() {
        return List.of(at);
    }

    @Override
    public double size() {
        return resistanceOhm;
    }

    @Override
    public double smallest() {
        return SMALLEST_OHM;
    }

    @Override
    public double largest() {
        return LARGEST_OHM;
    }

    @Override
    public BadJoint withSize(double ohm) {
        return new BadJoint(at, Math.min(MAX_OHM, ohm));
    }

    @Override
    public Plan applyTo(Plan plan) {
        if (plan.findWire(at).isPresent()) {
            return Edits.withWire(plan, worse(Edits.wire(plan, at)));
        }
        if (plan.connectors().stream().anyMatch(c -> c.id().equals(at))
                && plan.findPart(at).isEmpty()) {
            return Edits.withConnectors(
                    plan,
                    plan.connectors().stream()
                            .map(c -> c.id().equals(at)
                                    ? new Connector(at, c.halves(), c.contactResistanceOhm() + resistanceOhm)
                                    : c)
                            .toList());
        }
        return plan.withPart(worse(Edits.part(plan, at)));
    }

    private Part worse(Part part) {
        if (part instanceof Joint joint) {
            return new Joint(at, joint.label(), joint.terminals(), sum(joint.resistanceOhm()));
        } else if (part instanceof EarthPoint earth) {
            return new EarthPoint(at, earth.label(), sum(earth.resistanceOhm()));
        } else if (part instanceof Switch s) {
            return s.withWorseContacts(resistanceOhm);
        }
        throw new IllegalArgumentException(at + " is no joint");
    }

    private double sum(double soundOhm) {
        return Math.min(MAX_OHM, soundOhm + resistanceOhm);
    }

    private Wire worse(Wire w) {
        return w.withJoints(w.joints().fromJointResistanceOhm(), sum(w.joints().toJointResistanceOhm()));
    }
}
