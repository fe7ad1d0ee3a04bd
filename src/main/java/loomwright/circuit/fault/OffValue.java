package loomwright.circuit.fault;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Ballast;
import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.Generator;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.tolerance.PartFigures;

/**
 * A figure of a part that is far off: a ballast of another value, a coil with shorted turns, a lamp of other watts, burnt
 * contacts, a regulator that holds too much.
 *
 * @param part its id
 * @param what the figure means
 * @param figure its place in {@link PartFigures}
 * @param more whether it is too large
 * @param size too large: how many times more comes on top; too small: by how many times more it should be
 */
public record OffValue(String part, What what, int figure, boolean more, double size) implements SizedFault {
    /** What the figure is. */
    public enum What {
        /** Resistance of a part that is meant to have one. */
        RESISTANCE,
        /** Resistance of a winding. */
        WINDING,
        /** What a lamp takes at its rated voltage. */
        WATTS,
        /** What another load takes. */
        LOAD,
        /** Resistance of contacts, also of those that hold a fuse. */
        CONTACTS,
        /** What a regulator holds. */
        REGULATED_VOLTS
    }

    /** All that a part may have. */
    static List<OffValue> of(Part part, VehicleSystem system) {
        List<OffValue> found = new ArrayList<>();
        if (part instanceof Coil || part instanceof Motor) {
            both(found, part, What.WINDING, 0);
        } else if (part instanceof Relay) {
            both(found, part, What.WINDING, 0);
            found.add(typical(part, What.CONTACTS, 1, true));
        } else if (part instanceof Solenoid solenoid) {
            both(found, part, What.WINDING, 0);
            found.add(typical(part, What.CONTACTS, solenoid.pullInResistanceOhm() == null ? 1 : 2, true));
        } else if (part instanceof Ballast ballast) {
            for (int i = 0; i < ballast.elementsOhm().size(); i++) {
                both(found, part, What.RESISTANCE, i);
            }
        } else if (part instanceof FixedResistor) {
            both(found, part, What.RESISTANCE, 0);
        } else if (part instanceof FilamentLamp) {
            both(found, part, What.WATTS, 0);
        } else if (part instanceof Load && !PartFigures.of(part, system).isEmpty()) {
            both(found, part, What.LOAD, 0);
        } else if (part instanceof ContactBreaker || part instanceof Fuse) {
            found.add(typical(part, What.CONTACTS, 0, true));
        } else if (part instanceof Generator) {
            both(found, part, What.REGULATED_VOLTS, 0);
        }
        return found;
    }

    private static void both(List<OffValue> found, Part part, What what, int figure) {
        found.add(typical(part, what, figure, true));
        found.add(typical(part, what, figure, false));
    }

    private static OffValue typical(Part part, What what, int figure, boolean more) {
        return new OffValue(part.id(), what, figure, more, what == What.REGULATED_VOLTS ? 0.1 : 1);
    }

    /** By how many times the figure is what it should be. */
    public double factor() {
        return more ? 1 + size : 1 / (1 + size);
    }

    /**
     * By how many times a consumer does what it should at the same voltage: what a winding takes more because of shorted turns
     * does no work.
     */
    public double powerFactor() {
        return switch (what) {
            case WATTS, LOAD -> factor();
            case WINDING -> Math.min(1, 1 / factor());
            default -> 1;
        };
    }

    @Override
    public Kind kind() {
        return switch (what) {
            case CONTACTS -> Kind.CONTACTS_WORN;
            case REGULATED_VOLTS -> Kind.REGULATOR_OFF;
            default -> Kind.VALUE_OFF;
        };
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    /** Just beyond what is usual for the kind: less is no fault (common practice, no source). */
    @Override
    public double smallest() {
        return switch (what) {
            case CONTACTS -> 2;
            case REGULATED_VOLTS -> 0.03;
            default -> 0.2;
        };
    }

    /** More is as good as broken, or as bridged (common practice, no source). */
    @Override
    public double largest() {
        return switch (what) {
            case CONTACTS -> 1e5;
            case REGULATED_VOLTS -> 0.4;
            case WATTS -> 5;
            default -> more ? 10 : 100;
        };
    }

    @Override
    public OffValue withSize(double other) {
        return new OffValue(part, what, figure, more, Math.max(other, smallest()));
    }

    @Override
    public Plan applyTo(Plan plan) {
        Part sound = Edits.part(plan, part);
        List<PartFigures.Figure> figures = PartFigures.of(sound, plan.system());
        return figures.size() <= figure
                ? plan
                : plan.withPart(figures.get(figure).times().apply(sound, factor()));
    }
}
