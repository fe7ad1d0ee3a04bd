package loomwright.comparison;

import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Wire;

/** Things of a plan in a few words. */
final class Descriptions {
    /** What says how a part is used, not what it is. */
    static final Set<String> USE =
            Set.of("id", "label", "meantLive", "meantLiveWhen", "position", "positionByCondition", "closedWhenStopped");

    private Descriptions() {}

    static String of(Object thing) {
        if (thing instanceof Part part) {
            return part.displayName() + " (" + part.kind().replace('-', ' ') + ")";
        } else if (thing instanceof Wire wire) {
            return wire(wire);
        }
        Connector connector = (Connector) thing;
        return connector.id() + ", " + String.join(" with ", connector.halves());
    }

    static String wire(Wire wire) {
        return wire.id() + ", " + run(wire);
    }

    /** What a wire is and where it runs, without its id. */
    static String run(Wire wire) {
        return Stream.of(
                        conductor(wire),
                        wire.colour() == null ? "" : String.valueOf(wire.colour()),
                        "from " + wire.from() + " to " + wire.to())
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private static String conductor(Wire wire) {
        Double metres = wire.metres();
        return wire.size() == null || metres == null
                ? wire.resistanceOhm() + " ohm"
                : wire.size() + ", " + PropertyValue.number(Math.round(metres * 1000) / 1000.0) + " m";
    }

    /** What a person has to know to get such a part. */
    static Map<String, PropertyValue> data(Part part) {
        Map<String, PropertyValue> values = PropertyValue.listOf((Record) part);
        values.keySet().removeAll(USE);
        return values;
    }
}
