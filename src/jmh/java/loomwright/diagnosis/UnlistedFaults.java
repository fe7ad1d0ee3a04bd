package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import loomwright.circuit.Diode;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/** What may be wrong with a vehicle and is not among the faults that are looked for. */
final class UnlistedFaults {
    private static final int TRIES = 50;

    private UnlistedFaults() {}

    /**
     * A vehicle with something wrong.
     *
     * @param built with it
     * @param ids of the wires and parts that it is at
     */
    record Changed(Plan built, Set<String> ids) {}

    /** Two wires of different places have changed one end each, as where two looms were joined wrongly. */
    static Optional<Changed> crossedWires(Plan built, Random random) {
        List<Wire> wires = new ArrayList<>(built.wires());
        for (int i = 0; i < TRIES && wires.size() > 1; i++) {
            Collections.shuffle(wires, random);
            Wire one = wires.get(0);
            Wire other = wires.get(1);
            Set<String> parts = new LinkedHashSet<>();
            List.of(one.from(), one.to(), other.from(), other.to()).forEach(end -> parts.add(end.part()));
            if (parts.size() == 4) {
                Set<String> ids = new HashSet<>(parts);
                ids.add(one.id());
                ids.add(other.id());
                List<Wire> crossed = built.wires().stream()
                        .map(w -> w.equals(one)
                                ? w.withEnds(w.from(), other.to())
                                : w.equals(other) ? w.withEnds(w.from(), one.to()) : w)
                        .toList();
                return Optional.of(new Changed(built.with(built.parts(), crossed), ids));
            }
        }
        return Optional.empty();
    }

    /** A part is of another kind than the plan says: a LED for a bulb, a diode for a resistor, a switch that opens instead of closing. */
    static Optional<Changed> otherKind(Plan built, Random random) {
        List<Part> parts = new ArrayList<>(built.parts());
        Collections.shuffle(parts, random);
        for (Part part : parts) {
            Set<String> ids = new HashSet<>(Set.of(part.id()));
            built.wires().stream()
                    .filter(w ->
                            w.from().part().equals(part.id()) || w.to().part().equals(part.id()))
                    .forEach(w -> ids.add(w.id()));
            if (part instanceof FilamentLamp lamp) {
                return Optional.of(new Changed(built.withPart(led(lamp)), ids));
            } else if (part instanceof FixedResistor) {
                return Optional.of(new Changed(asDiode(built, part), ids));
            } else if (part instanceof Switch chosen && chosen.positions().size() == 2) {
                return Optional.of(new Changed(built.withPart(reversed(chosen)), ids));
            }
        }
        return Optional.empty();
    }

    private static LedLamp led(FilamentLamp lamp) {
        double takes = 0.1 * lamp.ratedW() / lamp.ratedV();
        return new LedLamp(
                lamp.id(),
                lamp.label(),
                new LedLamp.LedCurve(lamp.ratedV(), takes, null, false),
                "b",
                null,
                null,
                lamp.meantLive(),
                lamp.meantLiveWhen());
    }

    /** Between the same wires, conducting the wrong way in half of all vehicles. */
    private static Plan asDiode(Plan built, Part part) {
        List<String> ends = part.terminals();
        List<Part> parts = new ArrayList<>();
        for (Part p : built.parts()) {
            parts.add(p.id().equals(part.id()) ? Diode.silicon(p.id(), p.label()) : p);
        }
        List<Wire> wires = built.wires().stream()
                .map(w -> w.withEnds(asDiode(w.from(), part, ends), asDiode(w.to(), part, ends)))
                .toList();
        return built.with(parts, wires);
    }

    private static TerminalRef asDiode(TerminalRef end, Part part, List<String> ends) {
        if (!end.part().equals(part.id())) {
            return end;
        }
        return new TerminalRef(end.part(), end.terminal().equals(ends.get(0)) ? Diode.ANODE : Diode.CATHODE);
    }

    private static Switch reversed(Switch chosen) {
        Switch.Position first = chosen.positions().get(0);
        Switch.Position second = chosen.positions().get(1);
        return new Switch(
                chosen.id(),
                chosen.label(),
                chosen.terminals(),
                List.of(
                        new Switch.Position(first.name(), second.joins()),
                        new Switch.Position(second.name(), first.joins())),
                chosen.positionByCondition(),
                chosen.position(),
                chosen.contactResistanceOhm(),
                null,
                false,
                null);
    }
}
