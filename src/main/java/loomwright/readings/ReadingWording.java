package loomwright.readings;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.operation.Point;

/** What the sheet says to a person. */
final class ReadingWording {
    static final String SUPPLY_BRIDGED = "With everything switched off nothing but what is stated may lie across the"
            + " supply. Near 0: a short; find it before the battery goes back on.";
    static final String CONTINUITY = "Near 0: it joins. Over range: blown or burnt. Take a fuse out to be sure.";
    static final String CONTACTS = "Turn the engine by hand until the contacts close, and on until they open.";
    static final String ACROSS =
            "Volts it is meant to take. None: no current, or bypassed. All the supply: the way behind"
                    + " it is shorted.";
    static final String CONTACTS_OPEN =
            "The supply, for no current flows. None: primary winding or its feed is open, or"
                    + " its lead touches metal.";
    static final String COIL_AT_WORK =
            "Clip the leads on before the engine turns, and keep off the coil's other terminal:"
                    + " hundreds of volts. The meter shows an average of contacts closed and open.";
    static final String BATTERY =
            "The battery itself, posts and not clamps. Below: charge or replace it before going on;"
                    + " every reading hangs on it.";
    static final String BATTERY_AT_WORK =
            "The battery with the engine turning. Lower while cranking: a weak battery or a"
                    + " starter that drags. Lower while running: it is not charged.";
    static final String CHARGING =
            "What is lost between generator and battery. Much: a bad joint in the charging wire.";
    static final String DEAD = "Dead with the key off. Volts: a way that is not meant.";

    private ReadingWording() {}

    static String load(Consumer load) {
        return "What " + load.displayName()
                + " gets. Right, and it does not work: it is at fault itself. Low: see what is"
                + " lost on the way to it and back.";
    }

    static String feedDrop(Consumer load, boolean toResistor) {
        return "Lost on the way to " + (toResistor ? "the resistor before " : "") + load.displayName()
                + ". More: a bad joint or contact, or a thin wire; halve the way with the points below.";
    }

    static String returnDrop(Consumer load) {
        return "Lost on the way back from " + load.displayName() + ". More: a bad earth"
                + (load instanceof Coil ? " or burnt contacts." : ".");
    }

    static String halving(Consumer load) {
        return "Right: sound up to here, go on nearer to " + load.displayName()
                + ". Wrong: go back towards the battery.";
    }

    static String ownResistance(String called) {
        return called + ", with what lies beside it. Over range: broken. Much lower: shorted turns or a wrong part.";
    }

    /** What to do before any reading. */
    static List<String> first(Plan plan) {
        List<String> first = new ArrayList<>(
                List.of(
                        "Look before you measure: clamps and earths clean and tight, fuses seated, connectors home, no chafed or"
                                + " scorched insulation.",
                        "Ohms first: take both clamps off the battery, the earthed one first. Touch the leads together and take"
                                + " what the meter shows, 0.1 to 0.3 ohm, off every reading.",
                        "Volts after that: connect the battery again, the earthed clamp last. Where a point halves the way,"
                                + " a right reading spares you all points before it.",
                        "A lamp or motor is measured with its plug on and switched on: unloaded, a bad joint shows full volts."));
        if (!plan.listParts(Coil.class).isEmpty()) {
            first.add(
                    "For the readings while cranking see that the engine cannot start: take the coil's high-tension lead off"
                            + " the distributor and earth that end firmly; it must not hang open.");
        }
        return first;
    }

    /** A place for a lead in words. */
    static String label(Plan plan, Point point) {
        TerminalRef ref = point.terminal();
        return ref == null
                ? "bare metal of the body"
                : plan.findPart(ref.part()).orElseThrow().displayName() + ", " + ref.terminal();
    }
}
