package loomwright.comparison;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Wire;
import loomwright.message.Message;

/** Things of a plan in a few words. */
final class Descriptions {
    /** What says how a part is used, not what it is. */
    static final Set<String> USE =
            Set.of("id", "label", "meantLive", "meantLiveWhen", "position", "positionByCondition", "closedWhenStopped");

    private Descriptions() {}

    static String of(Object thing) {
        if (thing instanceof Part part) {
            return ItemText.PART
                    .with(
                            arg("label", part.displayName()),
                            arg("kind", part.kind().replace('-', ' ')))
                    .text();
        } else if (thing instanceof Wire wire) {
            return wire(wire);
        }
        Connector connector = (Connector) thing;
        return ItemText.CONNECTOR
                .with(arg("label", connector.id()), texts("halves", connector.halves()))
                .text();
    }

    static String wire(Wire wire) {
        return ItemText.WIRE
                .with(arg("label", wire.id()), arg("run", run(wire)))
                .text();
    }

    /** What a wire is and where it runs, without its id. */
    static String run(Wire wire) {
        String colour = wire.colour();
        return ItemText.RUN
                .with(
                        arg("conductor", conductor(wire)),
                        arg("colours", colour == null ? 0 : 1),
                        arg("colour", colour == null ? "" : colour),
                        arg("from", wire.from().toString()),
                        arg("to", wire.to().toString()))
                .text();
    }

    private static Message conductor(Wire wire) {
        Double metres = wire.metres();
        String size = wire.conductor().size();
        return size == null || metres == null
                ? ItemText.RESISTANCE.with(arg(
                        "resistanceOhm", Objects.requireNonNull(wire.conductor().resistanceOhm())))
                : ItemText.LENGTH.with(arg("size", size), arg("lengthM", metres));
    }

    /** What a person has to know to get such a part. */
    static Map<String, PropertyValue> data(Part part) {
        Map<String, PropertyValue> values = PropertyValue.listOf((Record) part);
        values.keySet().removeAll(USE);
        return values;
    }
}
