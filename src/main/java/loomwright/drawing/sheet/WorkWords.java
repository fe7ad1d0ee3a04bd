package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.stream.Collectors;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Place;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PropertyWording;
import loomwright.drawing.diagram.Insulation;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** Wires and terminals of a plan as a mechanic names them: by colour, size, place and the part they end at. */
record WorkWords(Plan plan) {

    /** "red/black 1.5 mm² wire W7 (engine bay)". */
    Message wire(Wire wire) {
        String look = look(wire);
        return places() && wire.laid().place() == Place.ENGINE_BAY
                ? WorkText.WIRE_IN_PLACE.with(
                        arg("wire", wire.thing()),
                        arg("look", look),
                        arg("place", wire.laid().place()))
                : WorkText.WIRE.with(arg("wire", wire.thing()), arg("look", look));
    }

    /** The same of a wire that has to be cut first. */
    Message newWire(Wire wire) {
        Double metres = wire.metres();
        return metres == null ? wire(wire) : WorkText.NEW_WIRE.with(arg("wire", wire(wire)), arg("lengthM", metres));
    }

    /** Colour and size. */
    private static String look(Wire wire) {
        String look = look(wire.colour(), wire.conductor().size());
        return look.isEmpty() ? "none" : look;
    }

    static String look(@Nullable String colour, @Nullable String size) {
        return (Insulation.words(colour) + " " + (size == null ? "" : PropertyWording.size(size))).strip();
    }

    /** Whether it means something to say where a wire lies. */
    private boolean places() {
        return plan.wires().stream().map(w -> w.laid().place()).distinct().count() > 1;
    }

    Message end(TerminalRef end) {
        Part part = plan.findPart(end.part()).orElseThrow();
        return part instanceof EarthPoint || part instanceof Joint
                ? WorkText.EARTHED_AT.with(arg("part", part.thing()))
                : WorkText.TERMINAL.with(arg("part", part.thing()), arg("terminal", end.terminal()));
    }

    /** The colours of the wires on a terminal; empty where there is none or none is known. */
    String coloursAt(TerminalRef terminal) {
        List<String> colours = plan.wires().stream()
                .filter(wire -> wire.from().equals(terminal) || wire.to().equals(terminal))
                .map(wire -> wire.colour() == null ? wire.id() : Insulation.words(wire.colour()))
                .distinct()
                .toList();
        return colours.size() > 3
                ? colours.stream().limit(3).collect(Collectors.joining(", ")) + " …"
                : String.join(", ", colours);
    }
}
