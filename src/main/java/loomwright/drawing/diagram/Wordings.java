package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Coil;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Flasher;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Joint;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PropertyWording;
import loomwright.operation.FeedStrength;
import loomwright.operation.PartState;
import loomwright.operation.PlanReadings.PartReading;
import org.jspecify.annotations.Nullable;

/** What stands beside a symbol or wire. */
final class Wordings {
    private static final Map<Class<? extends Part>, Function<Part, String>> DATA = new HashMap<>();

    static {
        put(
                Fuse.class,
                fuse -> DiagramNumbers.given(fuse.ratingA())
                        + (fuse.ratedBy() == Fuse.RatedBy.BLOW ? " A blow" : " A"));
        put(FusibleLink.class, link -> size(link.size()));
        put(
                FilamentLamp.class,
                lamp -> DiagramNumbers.given(lamp.ratedV()) + " V " + DiagramNumbers.given(lamp.ratedW()) + " W");
        put(LedLamp.class, led -> "LED " + DiagramNumbers.given(led.curve().currentA()) + " A");
        put(Flasher.class, Wordings::flasher);
        put(Dynamo.class, dynamo -> DiagramNumbers.given(dynamo.limitA()) + " A");
        put(FixedResistor.class, resistor -> DiagramNumbers.ohms(resistor.resistanceOhm()));
        put(Motor.class, motor -> DiagramNumbers.ohms(motor.resistanceOhm()));
        put(Coil.class, coil -> DiagramNumbers.ohms(coil.primaryResistanceOhm()));
        put(Relay.class, relay -> DiagramNumbers.ohms(relay.coilResistanceOhm()));
        put(Solenoid.class, solenoid -> DiagramNumbers.ohms(solenoid.holdInResistanceOhm()));
        put(
                Switch.class,
                chosen -> chosen.faults().map(PropertyWording::contact).collect(Collectors.joining(", ")));
        put(Capacitor.class, capacitor -> DiagramNumbers.given(capacitor.capacitanceUf()) + " µF");
        put(Load.class, Wordings::load);
        put(
                Ballast.class,
                ballast -> ballast.elementsOhm().stream()
                                .map(DiagramNumbers::given)
                                .collect(Collectors.joining(" + ")) + " Ω");
        put(
                ConnectorHalf.class,
                half -> half.form().name().toLowerCase(Locale.ROOT) + " " + DiagramNumbers.given(half.widthMm())
                        + " mm");
        put(EarthPoint.class, earth -> resistance(earth.resistanceOhm()));
        put(Joint.class, joint -> resistance(joint.resistanceOhm()));
    }

    private Wordings() {}

    private static <P extends Part> void put(Class<P> kind, Function<P, String> data) {
        DATA.put(kind, part -> data.apply(kind.cast(part)));
    }

    private static String resistance(double ohm) {
        return ohm == 0 ? "" : DiagramNumbers.ohms(ohm);
    }

    private static String flasher(Flasher flasher) {
        Double watts = flasher.madeForW();
        return watts == null ? "electronic" : DiagramNumbers.given(watts) + " W";
    }

    private static String load(Load load) {
        Double ohm = load.draw().resistanceOhm();
        Double amps = load.draw().currentA();
        Double watts = load.draw().powerW();
        if (ohm != null) {
            return DiagramNumbers.ohms(ohm);
        } else if (amps != null) {
            return DiagramNumbers.given(amps) + " A";
        }
        return DiagramNumbers.given(watts == null ? 0 : watts) + " W";
    }

    /** Rating and the like; empty where a person needs none. */
    static String data(Part part, Plan plan) {
        if (part instanceof Battery battery) {
            Double own = battery.nominalVoltageV();
            return DiagramNumbers.given(own == null ? plan.system().nominalVoltageV() : own) + " V";
        }
        return DATA.getOrDefault(part.getClass(), p -> "").apply(part);
    }

    /** What a part does; empty if nothing can be said. */
    static String reading(@Nullable PartReading reading) {
        if (reading == null) {
            return "";
        }
        Double acrossV = reading.acrossV();
        FeedStrength activity = reading.activity();
        String does = reading.state() != null ? reading.stateText() : activity == null ? "" : activity.text();
        if (reading.kind().equals("ammeter") && !PartState.ZERO.code().equals(reading.state())) {
            return DiagramNumbers.amps(Math.abs(reading.branches().get(0).currentA())) + " " + does;
        }
        return acrossV == null ? does : DiagramNumbers.volts(Math.abs(acrossV)) + (does.isEmpty() ? "" : " " + does);
    }

    /** Where the circuit goes on. */
    static String reference(List<Integer> sheets) {
        return DiagramText.SHEET_REFERENCE
                .with(
                        arg("sheets", sheets.size()),
                        arg("numbers", sheets.stream().map(String::valueOf).collect(Collectors.joining(", "))))
                .text();
    }

    /** A terminal as a person names it: the part by its label, then the terminal. */
    static String terminal(Plan plan, TerminalRef terminal) {
        return plan.findPart(terminal.part())
                .map(part -> part.displayName() + " " + terminal.terminal())
                .orElse(terminal.toString());
    }

    /** Colour and size, or resistance, of a wire. */
    static String conductor(Wire wire) {
        return conductor(wire, wire.colour());
    }

    /** The same with a colour as it is to be written; blank or absent for none. */
    static String conductor(Wire wire, @Nullable String colour) {
        String size = wire.conductor().size();
        Double ohm = wire.conductor().resistanceOhm();
        String is = size != null ? size(size) : ohm == null ? "" : DiagramNumbers.ohms(ohm);
        return colour == null || colour.isEmpty() ? is : colour + " " + is;
    }

    static String size(String size) {
        return size.replaceAll("mm2\\b", "mm²");
    }

    /** The pairs of letters of a colour code. */
    static List<String> colours(@Nullable String code) {
        if (code == null) {
            return List.of();
        } else if (code.equals("GNYE")) {
            return List.of("GN", "YE");
        }
        return List.of(code.split("(?<=\\G..)"));
    }
}
