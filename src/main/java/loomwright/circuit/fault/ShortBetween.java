package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Two terminals that should have nothing to do with each other are joined: contacts welded or bridged, a part that is
 * short-circuited inside, a wire chafed against another.
 *
 * @param one terminal
 * @param other terminal, of the same part or of another
 * @param resistanceOhm of what joins them
 */
public record ShortBetween(TerminalRef one, TerminalRef other, double resistanceOhm) implements SizedFault {
    /** Of welded or touching metal (common practice, no source). */
    static final double CONTACT_OHM = 0.01;

    private static final double LEAST_OHM = 0.003;
    private static final double MOST_OHM = 300;

    static ShortBetween of(TerminalRef one, TerminalRef other) {
        return new ShortBetween(one, other, CONTACT_OHM);
    }

    /** Whether it is within one part. */
    public boolean withinPart() {
        return one.part().equals(other.part());
    }

    @Override
    public Kind kind() {
        return withinPart() ? Kind.SHORT_INSIDE : Kind.WIRES_TOUCH;
    }

    @Override
    public List<String> ids() {
        return withinPart() ? List.of(one.part()) : List.of(one.part(), other.part());
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
    public ShortBetween withSize(double conductanceS) {
        return new ShortBetween(one, other, 1 / conductanceS);
    }

    @Override
    public Plan applyTo(Plan plan) {
        Edits.part(plan, one.part());
        Edits.part(plan, other.part());
        return Edits.adding(
                plan, null, Wire.ofResistance(plan.freeId(one.part(), "-bridge"), one, other, resistanceOhm));
    }
}
