package loomwright.list;

import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.Message;

/**
 * Reads the rows of a table of readings: the point where the red lead was, the point against which it was measured (earth
 * unless said), what the meter showed, the position of the key, and the switches.
 */
final class MeterRow {
    private static final Set<String> OPEN =
            Set.of("open", "ol", "o.l.", "over range", "infinite", "infinity", "no continuity", "∞");

    private final Points points;

    MeterRow(Points points) {
        this.points = points;
    }

    /**
     * All rows of the table that have a reading; a sheet of readings has rows that nobody filled in.
     *
     * @throws RejectedInput with every cell that cannot be read
     */
    MeterTable read(List<TableRow> rows) {
        List<Map<String, Object>> readings = new ArrayList<>();
        List<CellRef> places = new ArrayList<>();
        List<InputError> faults = new ArrayList<>();
        for (TableRow row : rows) {
            if (!row.text("reading").isEmpty()) {
                readings.add(read(row, faults));
                places.add(row.at());
            }
        }
        if (!faults.isEmpty()) {
            throw new RejectedInput(faults);
        }
        return new MeterTable(readings, places);
    }

    private Map<String, Object> read(TableRow row, List<InputError> faults) {
        Map<String, Object> reading = new LinkedHashMap<>();
        putPoint(row, "point", "red", reading, faults);
        if (row.find("against").isPresent()) {
            putPoint(row, "against", "black", reading, faults);
        }
        putCondition(row, reading, faults);
        putReading(row, reading, faults);
        row.find("switches")
                .ifPresent(cell -> points.switches(cell.text())
                        .ifPresentOrElse(
                                switches -> reading.put("switches", switches),
                                () -> faults.add(fault(
                                        row,
                                        "switches",
                                        InputError.Code.UNKNOWN_REFERENCE,
                                        AcceptedMeter.SWITCH_POSITION.with(
                                                texts("choices", points.switchChoices()))))));
        return reading;
    }

    private void putPoint(
            TableRow row, String column, String property, Map<String, Object> reading, List<InputError> faults) {
        String text = row.text(column);
        if (text.isEmpty()) {
            faults.add(fault(row, column, InputError.Code.MISSING, AcceptedMeter.POINT.with()));
            return;
        }
        points.find(text)
                .ifPresentOrElse(
                        point -> reading.put(property, point),
                        () -> faults.add(
                                fault(row, column, InputError.Code.UNKNOWN_REFERENCE, AcceptedMeter.KNOWN_POINT.with())
                                        .suggesting(points.nearest(text))));
    }

    private static void putCondition(TableRow row, Map<String, Object> reading, List<InputError> faults) {
        String plain = Columns.plain(row.text("condition"));
        if (plain.isEmpty()) {
            return;
        }
        List<String> conditions = WorksWhen.conditions(plain);
        if (conditions.size() == 1) {
            reading.put("condition", conditions.get(0));
        } else if (conditions.contains("run") && !conditions.contains("off")) {
            reading.put("condition", "run");
        } else {
            faults.add(fault(row, "condition", InputError.Code.NOT_ONE_OF, AcceptedMeter.CONDITION.with()));
        }
    }

    private static void putReading(TableRow row, Map<String, Object> reading, List<InputError> faults) {
        String written = row.text("reading");
        if (OPEN.contains(written.toLowerCase(Locale.ROOT))) {
            reading.put("open", true);
            return;
        }
        TableRow.Cell cell = row.find("reading").orElseThrow();
        String besides = cell.unit().isEmpty() ? row.text("unit") : cell.unit();
        OptionalDouble bare = Quantities.number(written);
        String whole = bare.isPresent() ? written + " " + besides : written;
        String unit = whole.replaceFirst("^[-+]?[0-9.,]+\\s*", "").strip();
        OptionalDouble number = Quantities.number(
                whole.substring(0, whole.length() - unit.length()).strip());
        String lower = unit.toLowerCase(Locale.ROOT);
        boolean volts = lower.equals("v") || lower.startsWith("volt") || (unit.isEmpty() && hasCondition(row));
        boolean ohms = unit.equals("Ω") || lower.equals("ω") || lower.startsWith("ohm") || lower.equals("r");
        if (number.isPresent() && volts) {
            reading.put("voltageV", number.getAsDouble());
        } else if (number.isPresent() && lower.equals("mv")) {
            reading.put("voltageV", number.getAsDouble() / 1000);
        } else if (number.isPresent() && ohms) {
            reading.put("resistanceOhm", number.getAsDouble());
        } else if (number.isPresent() && (lower.equals("kohm") || lower.equals("kω"))) {
            reading.put("resistanceOhm", number.getAsDouble() * 1000);
        } else {
            faults.add(fault(row, "reading", InputError.Code.MALFORMED, AcceptedMeter.READING.with()));
        }
    }

    private static boolean hasCondition(TableRow row) {
        return row.find("condition").isPresent();
    }

    private static InputError fault(TableRow row, String column, InputError.Code code, Message accepted) {
        String text = row.text(column);
        return new InputError(code, "", text.isEmpty() ? null : text, accepted)
                .at(row.at(column).inWords(), row.at(column).cell());
    }
}
