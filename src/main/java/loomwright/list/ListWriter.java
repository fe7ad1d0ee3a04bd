package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.catalogue.PartShape;

/**
 * Writes a plan document as a list that says everything, so that reading it again gives the same plan and assumes nothing.
 */
public final class ListWriter {
    private static final List<String> OTHERWISE =
            List.of("meantLive", "meantLiveWhen", "positions", "positionByCondition");

    private final Map<String, Object> plan;

    private ListWriter(Map<String, Object> plan) {
        this.plan = plan;
    }

    /**
     * The tables of a plan, one sheet each.
     *
     * @param plan in the form of its JSON
     */
    public static List<Sheet> write(Map<String, Object> plan) {
        ListWriter writer = new ListWriter(plan);
        List<Sheet> sheets = new ArrayList<>();
        sheets.add(writer.settings());
        sheets.add(writer.wires());
        sheets.add(writer.parts());
        sheets.add(writer.positions());
        sheets.add(writer.conditions());
        sheets.add(writer.connectors());
        sheets.add(writer.notes());
        return sheets.stream().filter(sheet -> sheet.rows().size() > 1).toList();
    }

    /** Sheets under each other as comma-separated text, an empty line between them. */
    public static String csv(List<Sheet> sheets) {
        return sheets.stream()
                .map(sheet -> sheet.rows().stream()
                        .map(row ->
                                row.cells().stream().map(ListWriter::csvCell).collect(Collectors.joining(",")))
                        .collect(Collectors.joining("\r\n", "", "\r\n")))
                .collect(Collectors.joining("\r\n"));
    }

    /** Sheets under each other as Markdown tables. */
    public static String markdown(List<Sheet> sheets) {
        StringBuilder text = new StringBuilder();
        for (Sheet sheet : sheets) {
            boolean first = true;
            for (Sheet.Row row : sheet.rows()) {
                text.append(row.cells().stream()
                        .map(cell -> cell.replace("|", "\\|").replaceAll("\\s+", " "))
                        .collect(Collectors.joining(" | ", "| ", " |\n")));
                if (first) {
                    text.append("|").append(" --- |".repeat(row.cells().size())).append('\n');
                    first = false;
                }
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static String csvCell(String cell) {
        boolean formula = !cell.isEmpty() && "'=+-@\t\r".indexOf(cell.charAt(0)) >= 0;
        String guarded = formula && Quantities.number(cell).isEmpty() ? "'" + cell : cell;
        boolean quoted =
                guarded.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r' || c == ';' || c == '\t');
        return quoted ? '"' + guarded.replace("\"", "\"\"") + '"' : guarded;
    }

    private static Sheet sheet(String name, List<List<String>> cells) {
        List<Sheet.Row> rows = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            rows.add(new Sheet.Row(i + 1, cells.get(i)));
        }
        return new Sheet(name, rows);
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> object(Object value) {
        return (Map<String, Object>) value;
    }

    @SuppressWarnings("unchecked")
    private static List<Object> list(Object value) {
        return (List<Object>) value;
    }

    private List<Object> all(String property) {
        return list(plan.getOrDefault(property, List.of()));
    }

    private static String text(Map<String, Object> object, String property) {
        Object value = object.get(property);
        return value == null ? "" : PropertyText.write(value).orElse("");
    }

    private Sheet settings() {
        Map<String, Object> system = object(plan.getOrDefault("system", Map.of()));
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("setting", "value"));
        rows.add(List.of("name", String.valueOf(plan.getOrDefault("name", ""))));
        rows.add(List.of("voltage", text(system, "nominalVoltageV") + " V"));
        rows.add(List.of("earth", text(system, "earthPolarity")));
        addIfPresent(rows, "ambient temperature", text(system, "ambientTemperatureC"));
        addIfPresent(rows, "engine bay temperature", text(system, "engineBayTemperatureC"));
        rows.add(List.of("assumptions", "off"));
        return sheet("settings", rows);
    }

    private static void addIfPresent(List<List<String>> rows, String setting, String value) {
        if (!value.isEmpty()) {
            rows.add(List.of(setting, value));
        }
    }

    private Sheet conditions() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("condition", "volts", "inside resistance ohm", "tolerance"));
        object(plan.getOrDefault("conditions", Map.of())).forEach((condition, value) -> {
            Map<String, Object> supply = object(value);
            rows.add(List.of(
                    condition,
                    text(supply, "emfV"),
                    text(supply, "internalResistanceOhm"),
                    text(supply, "tolerancePercent")));
        });
        return sheet("conditions", rows);
    }

    private Sheet wires() {
        Map<String, String> columns = new LinkedHashMap<>();
        columns.put("no", "id");
        columns.put("from", "from");
        columns.put("to", "to");
        columns.put("size", "size");
        columns.put("length m", "lengthM");
        columns.put("resistance ohm", "resistanceOhm");
        columns.put("colour", "colour");
        columns.put("place", "place");
        columns.put("bundle", "bundleCount");
        columns.put("insulation C", "insulationTemperatureC");
        columns.put("joint ohm", "fromJointResistanceOhm");
        columns.put("joint to ohm", "toJointResistanceOhm");
        columns.put("feed", "directed");
        columns.put("loom", "loom");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.copyOf(columns.keySet()));
        for (Object each : all("wires")) {
            Map<String, Object> wire = object(each);
            List<String> row = new ArrayList<>();
            columns.values().forEach(property -> row.add(cell(wire, property)));
            rows.add(row);
        }
        return sheet("wires", rows);
    }

    private static String cell(Map<String, Object> wire, String property) {
        if (property.equals("lengthM") && wire.get("lengthFt") != null) {
            return text(wire, "lengthFt") + " ft";
        }
        if (property.equals("place")) {
            return text(wire, "place").replace('-', ' ');
        }
        return text(wire, property);
    }

    private Sheet parts() {
        Set<String> properties = new LinkedHashSet<>();
        for (Object each : all("parts")) {
            Map<String, Object> part = object(each);
            PartShape.properties(text(part, "kind")).keySet().stream()
                    .filter(name -> part.containsKey(name) && !OTHERWISE.contains(name))
                    .forEach(properties::add);
        }
        List<String> head = new ArrayList<>(List.of("part", "label", "kind", "works when"));
        properties.forEach(property -> head.add(PartShape.heading(property)));
        List<List<String>> rows = new ArrayList<>();
        rows.add(head);
        for (Object each : all("parts")) {
            Map<String, Object> part = object(each);
            List<String> row = new ArrayList<>(
                    List.of(text(part, "id"), text(part, "label"), text(part, "kind"), WorksWhen.write(part)));
            properties.forEach(property -> row.add(text(part, property)));
            rows.add(row);
        }
        return sheet("parts", rows);
    }

    private Sheet positions() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("switch", "position", "joins", "when"));
        for (Object each : all("parts")) {
            Map<String, Object> part = object(each);
            Map<String, Object> by = object(part.getOrDefault("positionByCondition", Map.of()));
            for (Object position : list(part.getOrDefault("positions", List.of()))) {
                String name = text(object(position), "name");
                String joins = list(object(position).getOrDefault("joins", List.of())).stream()
                        .map(group -> list(group).stream().map(String::valueOf).collect(Collectors.joining(" ")))
                        .collect(Collectors.joining("; "));
                String when = by.entrySet().stream()
                        .filter(condition -> name.equals(condition.getValue()))
                        .map(Map.Entry::getKey)
                        .collect(Collectors.joining("; "));
                rows.add(List.of(text(part, "id"), name, joins, when));
            }
        }
        return sheet("positions", rows);
    }

    private Sheet connectors() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("connector", "first half", "second half", "contact resistance ohm"));
        for (Object each : all("connectors")) {
            Map<String, Object> connector = object(each);
            List<Object> halves = list(connector.getOrDefault("halves", List.of("", "")));
            rows.add(List.of(
                    text(connector, "id"),
                    String.valueOf(halves.get(0)),
                    String.valueOf(halves.get(1)),
                    text(connector, "contactResistanceOhm")));
        }
        return sheet("connectors", rows);
    }

    private Sheet notes() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("plan note"));
        all("notes").forEach(note -> rows.add(List.of(String.valueOf(note))));
        return sheet("notes", rows);
    }
}
