package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Copper on metal: a terminal, or the wire on it, touches the chassis.
 *
 * @param terminal where
 * @param resistanceOhm of the contact, 0.001 to 1000 ohm
 */
public record ShortToEarth(TerminalRef terminal, double resistanceOhm) implements SizedFault {
    /** Of a chafed wire on sheet metal (common practice, no source). */
    static final double CONTACT_OHM = 0.01;

    /** A short of less makes no difference that a meter shows (common practice, no source). */
    private static final double LEAST_OHM = 0.003;
    /** Dirt and moisture that let more through are a trickle (common practice, no source). */
    private static final double MOST_OHM = 300;

    public ShortToEarth(TerminalRef terminal) {
        this(terminal, CONTACT_OHM);
    }

    /** Bare metal on bare metal; a person needs no figure of it. */
    boolean isMetalOnMetal() {
        return resistanceOhm <= CONTACT_OHM;
    }

    @Override
    public Kind kind() {
        return Kind.SHORT_TO_EARTH;
    }

    @Override
    public List<String> ids() {
        return List.of(terminal.part());
    }

    /** Conductance, S. */
    @Override
    public double size() {
        return 1 / resistanceOhm;
    }

    @Override
    public double smallest() {
        return 1 / MOST_OHM;
    }

    @Override
    public double largest() {
        return 1 / LEAST_OHM;
    }

    @Override
    public ShortToEarth withSize(double conductanceS) {
        return new ShortToEarth(terminal, 1 / conductanceS);
    }

    @Override
    public Plan applyTo(Plan plan) {
        Edits.part(plan, terminal.part());
        EarthPoint metal = new EarthPoint(plan.freeId(terminal.part(), "-bare-metal"), null, 0.0);
        String id = plan.freeId(terminal.part(), "-short");
        return Edits.adding(
                plan, metal, Wire.ofResistance(id, terminal, metal.terminal(EarthPoint.TERMINAL), resistanceOhm));
    }
}
