package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import loomwright.answer.Basis;
import loomwright.answer.RejectedInput;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartType;
import loomwright.conductor.ConductorSize;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.WireDraft;

/** Makes the wire of the plan document of a row of the table of wires. */
final class WireRow {
    /** How a plan document's length in feet is written. */
    private static final Pattern FEET = Pattern.compile("[0-9.]+ ft");

    private static final Pattern THIN_WALL = Pattern.compile("(?i)\\bthin[ -]?wall(ed)?( cable| wire)?\\b");

    /** What thin insulation stands: class B of ISO 6722 (from memory). */
    private static final double THIN_WALL_C = 105;

    private static final Basis THIN_WALL_BASIS =
            Basis.fromMemory("thin-wall vehicle cable: insulation for 105 °C", "trade tables; ISO 6722, class B");

    private static final double TENTHS_OF_A_MILLIMETRE = 10_000;

    /** The column of each property of a wire. */
    static final Map<String, String> COLUMNS = Map.ofEntries(
            Map.entry("id", "wire"),
            Map.entry("from", "from"),
            Map.entry("to", "to"),
            Map.entry("size", "size"),
            Map.entry("lengthM", "length"),
            Map.entry("lengthFt", "length"),
            Map.entry("resistanceOhm", "resistance"),
            Map.entry("colour", "colour"),
            Map.entry("insulationTemperatureC", "insulation"),
            Map.entry("bundleCount", "bundle"),
            Map.entry("fromJointResistanceOhm", "joint"),
            Map.entry("toJointResistanceOhm", "joint to"),
            Map.entry("place", "place"),
            Map.entry("loom", "loom"),
            Map.entry("directed", "feed"));

    private final Settings settings;
    private final Notes notes;
    private final ColumnUnits units;

    WireRow(Settings settings, Notes notes, ColumnUnits units) {
        this.settings = settings;
        this.notes = notes;
        this.units = units;
    }

    Map<String, Object> build(WireDraft wire) {
        TableRow row = wire.row;
        Map<String, Object> object = new LinkedHashMap<>();
        object.put("id", wire.id);
        object.put("from", wire.fromUse.end);
        object.put("to", wire.toUse.end);
        Optional<TableRow.Cell> resistance = row.find("resistance");
        if (resistance.isPresent()
                && row.find("size").isEmpty()
                && row.find("length").isEmpty()) {
            OptionalDouble ohm = resistance(resistance.get());
            if (ohm.isPresent()) {
                object.put("resistanceOhm", ohm.getAsDouble());
            } else {
                askNumber(wire, "resistance", resistance.get().text());
                putSizeAndLength(wire, object);
            }
        } else {
            putSizeAndLength(wire, object);
        }
        row.find("colour").ifPresent(cell -> putColour(wire, cell, object));
        if (isThinWall(row)) {
            object.put("insulationTemperatureC", THIN_WALL_C);
            notes.assume(
                    Code.THIN_WALL,
                    row.at("size"),
                    List.of(wire.id),
                    THIN_WALL_BASIS,
                    Map.of("wire", wire.id, "value", Fixed.text(THIN_WALL_C) + " °C"));
        } else {
            putNumber(wire, object, "insulation", "insulationTemperatureC");
        }
        putNumber(wire, object, "bundle", "bundleCount");
        putNumber(wire, object, "joint", "fromJointResistanceOhm");
        putNumber(wire, object, "joint to", "toJointResistanceOhm");
        row.find("place").ifPresent(cell -> {
            String plain = Columns.plain(cell.text());
            object.put("place", plain.contains("engine") ? "engine-bay" : "cabin");
        });
        row.find("loom").ifPresent(cell -> object.put("loom", cell.text().strip()));
        row.find("feed").ifPresent(cell -> {
            String plain = Columns.plain(cell.text());
            object.put(
                    "directed",
                    plain.equals("yes")
                            || plain.equals("true")
                            || plain.equals("x")
                            || plain.equals("one way")
                            || plain.equals("from"));
        });
        return object;
    }

    /** Thin insulation has to stand more heat; said beside the size, or in place of a temperature. */
    private static boolean isThinWall(TableRow row) {
        boolean beside = THIN_WALL.matcher(row.text("size")).find()
                && row.find("insulation").isEmpty();
        return beside || THIN_WALL.matcher(row.text("insulation")).find();
    }

    private static OptionalDouble resistance(TableRow.Cell cell) {
        OptionalDouble number = Quantities.number(cell.text());
        if (number.isPresent()) {
            return OptionalDouble.of(
                    cell.unit().equals("milliohm") ? number.getAsDouble() / 1000 : number.getAsDouble());
        }
        return Quantities.values(cell.text()).in("ohm");
    }

    private void putSizeAndLength(WireDraft wire, Map<String, Object> object) {
        object.put("size", size(wire));
        Optional<TableRow.Cell> length = wire.row.find("length");
        if (length.isPresent()
                && length.get().unit().equals("ft")
                && Quantities.number(length.get().text()).isPresent()) {
            object.put("lengthFt", Quantities.number(length.get().text()).getAsDouble());
        } else if (length.isPresent() && FEET.matcher(length.get().text()).matches() && settings.exact()) {
            object.put(
                    "lengthFt",
                    Quantities.number(length.get().text().replace(" ft", "")).orElseThrow());
        } else {
            object.put("lengthM", lengthM(wire));
        }
    }

    private String size(WireDraft wire) {
        Optional<TableRow.Cell> cell = wire.row.find("size");
        List<String> tried = new ArrayList<>();
        if (cell.isPresent()) {
            String text = THIN_WALL.matcher(cell.get().text()).replaceAll(" ").strip();
            OptionalDouble number = Quantities.number(text);
            if (number.isPresent() && cell.get().unit().equals("mm2")) {
                tried.add(text.replace(',', '.') + " mm2");
            } else if (number.isPresent() && cell.get().unit().equals("awg")) {
                tried.add(text + " AWG");
            } else {
                tried.add(number.isPresent() ? text.replace(',', '.') + " " + units.size() : text);
            }
            for (String each : tried) {
                Optional<String> known = known(each);
                if (known.isPresent()) {
                    return known.get();
                }
            }
        }
        String usual = usualSize(wire);
        if (cell.isPresent()) {
            notes.ask(
                    Question.Code.WIRE_SIZE,
                    wire.row.at("size"),
                    List.of(wire.id),
                    cell.get().text(),
                    List.of(usual, "28/0.30", "2.5 mm2", "14 AWG"),
                    Map.of("wire", wire.id, "written", cell.get().text()));
        } else {
            notes.assume(
                    Code.SIZE,
                    wire.row.at("size"),
                    List.of(wire.id),
                    Notes.PRACTICE,
                    Map.of("wire", wire.id, "value", usual));
        }
        return usual;
    }

    private static Optional<String> known(String size) {
        try {
            ConductorSize.parse(size);
            return Optional.of(size);
        } catch (RejectedInput notASize) {
            return Optional.empty();
        }
    }

    private static String usualSize(WireDraft wire) {
        double areaMm2 = PartCatalogue.usualAreaMm2(wire.from.typeName(), wire.to.typeName());
        return Fixed.text(areaMm2) + " mm2";
    }

    private double lengthM(WireDraft wire) {
        Optional<TableRow.Cell> cell = wire.row.find("length");
        double usual = usualLengthM(wire);
        if (cell.isEmpty()) {
            notes.assume(
                    Code.LENGTH,
                    wire.row.at("length"),
                    List.of(wire.id),
                    Notes.PRACTICE,
                    Map.of("wire", wire.id, "value", Fixed.text(usual) + " m"));
            return usual;
        }
        String unit = cell.get().unit().isEmpty() ? units.length() : cell.get().unit();
        OptionalDouble bare = Quantities.number(cell.get().text());
        if (bare.isPresent() && unit.equals("m") && bare.getAsDouble() > 0) {
            return bare.getAsDouble();
        }
        OptionalDouble read = Quantities.lengthM(cell.get().text(), unit);
        if (read.isPresent() && read.getAsDouble() > 0) {
            return Math.round(read.getAsDouble() * TENTHS_OF_A_MILLIMETRE) / TENTHS_OF_A_MILLIMETRE;
        }
        notes.ask(
                Question.Code.LENGTH,
                wire.row.at("length"),
                List.of(wire.id),
                cell.get().text(),
                List.of(Fixed.text(usual) + " m"),
                Map.of("wire", wire.id, "written", cell.get().text()));
        return usual;
    }

    private static double usualLengthM(WireDraft wire) {
        PartType.Place from = wire.from.type == null ? PartType.Place.DASH : wire.from.type.place();
        PartType.Place to = wire.to.type == null ? PartType.Place.DASH : wire.to.type.place();
        return PartCatalogue.usualLengthM(from, to);
    }

    private void putColour(WireDraft wire, TableRow.Cell cell, Map<String, Object> object) {
        Optional<String> colour = Colours.read(cell.text(), settings.british());
        if (colour.isEmpty()) {
            notes.ask(
                    Question.Code.COLOUR,
                    wire.row.at("colour"),
                    List.of(wire.id),
                    cell.text(),
                    List.of("no colour", "brown/white", "BNWH"),
                    Map.of("wire", wire.id, "written", cell.text()));
        } else if (!colour.get().isEmpty()) {
            object.put("colour", colour.get());
        }
    }

    private void putNumber(WireDraft wire, Map<String, Object> object, String column, String property) {
        wire.row.find(column).ifPresent(cell -> {
            OptionalDouble number = Quantities.number(cell.text().replaceAll("[^0-9.,]+$", ""));
            if (number.isPresent()) {
                double value = cell.unit().equals("milliohm") ? number.getAsDouble() / 1000 : number.getAsDouble();
                object.put(property, property.equals("bundleCount") ? (Object) (int) value : (Object) value);
            } else {
                askNumber(wire, column, cell.text());
            }
        });
    }

    private void askNumber(WireDraft wire, String column, String written) {
        notes.ask(
                Question.Code.WIRE_VALUE,
                wire.row.at(column),
                List.of(wire.id),
                written,
                List.of("nothing"),
                Map.of("wire", wire.id, "property", column.toLowerCase(Locale.ROOT)));
    }
}
