package loomwright.list;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.WireDraft;

/**
 * The units of lengths and sizes that have none, neither in their cells nor in the heading. A column is in one unit: what the
 * largest figure can be is what all are.
 *
 * @param length {@code m}, {@code cm} or {@code mm}
 * @param size {@code mm2} or {@code AWG}
 */
record ColumnUnits(String length, String size) {
    /** More is no length of a wire in metres, or in centimetres. */
    private static final double MOST_METRES = 15;

    private static final double MOST_CENTIMETRES = 1500;

    /** Gauge numbers that are no usual size in mm². */
    private static final Set<Double> GAUGES = Set.of(8.0, 12.0, 14.0, 18.0, 20.0, 22.0);

    /** Reads the columns, and says or asks once for each. */
    static ColumnUnits of(List<WireDraft> wires, Notes notes) {
        return new ColumnUnits(lengths(wires, notes), sizes(wires, notes));
    }

    private static String lengths(List<WireDraft> wires, Notes notes) {
        List<WireDraft> bare = bare(wires, "length");
        if (bare.isEmpty()) {
            return "m";
        }
        double largest = bare.stream()
                .mapToDouble(wire -> number(wire, "length").orElseThrow())
                .max()
                .orElseThrow();
        if (largest <= MOST_METRES) {
            notes.assume(
                    Code.LENGTH_UNIT, bare.get(0).row.at("length"), ids(bare), Notes.PRACTICE, Map.of("value", "m"));
            return "m";
        }
        String taken = largest <= MOST_CENTIMETRES ? "cm" : "mm";
        WireDraft first = first(bare, value -> value > MOST_METRES, "length");
        notes.ask(
                Question.Code.LENGTH_UNIT,
                first.row.at("length"),
                ids(bare),
                first.row.text("length"),
                choices(taken, "cm", "mm", "in", "ft", "m"),
                Map.of());
        return taken;
    }

    private static String sizes(List<WireDraft> wires, Notes notes) {
        List<WireDraft> bare = bare(wires, "size");
        boolean gauges =
                bare.stream().map(wire -> number(wire, "size").orElseThrow()).anyMatch(GAUGES::contains);
        if (gauges) {
            WireDraft first = first(bare, GAUGES::contains, "size");
            notes.ask(
                    Question.Code.SIZE_UNIT,
                    first.row.at("size"),
                    ids(bare),
                    first.row.text("size"),
                    choices("AWG", "mm2"),
                    Map.of());
            return "AWG";
        }
        if (!bare.isEmpty()) {
            notes.assume(Code.SIZE_UNIT, bare.get(0).row.at("size"), ids(bare), Notes.PRACTICE, Map.of("value", "mm²"));
        }
        return "mm2";
    }

    private static List<WireDraft> bare(List<WireDraft> wires, String column) {
        return wires.stream()
                .filter(wire -> wire.row
                        .find(column)
                        .filter(cell -> cell.unit().isEmpty())
                        .isPresent())
                .filter(wire -> number(wire, column).isPresent())
                .toList();
    }

    private static OptionalDouble number(WireDraft wire, String column) {
        return Quantities.number(wire.row.text(column));
    }

    private static WireDraft first(List<WireDraft> bare, Predicate<Double> wanted, String column) {
        return bare.stream()
                .filter(wire -> wanted.test(number(wire, column).orElseThrow()))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> ids(List<WireDraft> wires) {
        return wires.stream().map(wire -> wire.id).toList();
    }

    private static List<String> choices(String taken, String... others) {
        List<String> choices = new ArrayList<>(List.of(taken));
        for (String other : others) {
            if (!choices.contains(other)) {
                choices.add(other);
            }
        }
        return choices;
    }
}
