package loomwright.readings;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.message.Message;
import loomwright.operation.MeterText;
import loomwright.operation.Point;

/** The messages of the sheet about a part. */
final class ReadingWording {
    private ReadingWording() {}

    static Message load(Consumer load) {
        return ReadingText.LOAD.with(arg("load", load.thing()));
    }

    static Message feedDrop(Consumer load, boolean toResistor) {
        return ReadingText.FEED_DROP.with(arg("load", load.thing()), arg("end", toResistor ? "resistor" : "load"));
    }

    static Message returnDrop(Consumer load) {
        return ReadingText.RETURN_DROP.with(
                arg("load", load.thing()), arg("contacts", load instanceof Coil ? "yes" : "no"));
    }

    static Message halfSplit(Consumer load) {
        return ReadingText.HALVING.with(arg("load", load.thing()));
    }

    static Message ownResistance(Part part) {
        boolean winding = part instanceof Electromagnet || part instanceof Coil;
        return ReadingText.OWN_RESISTANCE.with(arg("part", part.thing()), arg("winding", winding ? "yes" : "no"));
    }

    /** What to do before any reading. */
    static List<Message> first(Plan plan) {
        List<Message> first = new ArrayList<>(List.of(
                ReadingText.LOOK_FIRST.with(),
                ReadingText.OHMS_FIRST.with(),
                ReadingText.THEN_VOLTS.with(),
                ReadingText.KEEP_LOAD_ON.with()));
        if (!plan.listParts(Coil.class).isEmpty()) {
            first.add(ReadingText.DISABLE_IGNITION.with());
        }
        return first;
    }

    /** A place for a lead in words. */
    static String label(Plan plan, Point point) {
        TerminalRef ref = point.terminal();
        return ref == null
                ? MeterText.BARE_METAL.text()
                : plan.findPart(ref.part()).orElseThrow().displayName() + ", " + ref.terminal();
    }
}
