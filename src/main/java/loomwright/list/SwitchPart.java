package loomwright.list;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.SwitchTerminal;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;
import loomwright.message.MessageCode;

/** The terminals and positions of a switch, from its wires, its row and the catalogue. */
final class SwitchPart {
    /** The far terminal of a switch that is earthed through its case. */
    static final String CASE = "31";

    private static final Map<String, String> RESTS = Map.of(
            "push-button", "released",
            "earth-switch", "open",
            "dip-switch", "",
            "park-contact", "",
            "series-parallel-switch", "");
    private static final Map<String, String> WORKING = Map.of("push-button", "pressed", "earth-switch", "closed");

    private static final List<String> STARTING = List.of("starter-button", "starter-switch", "series-parallel-switch");

    private final PartDraft draft;
    private final Notes notes;
    private final List<TableRow> positionRows;
    private final List<SwitchTerminal> usual;
    private final Set<String> used = new LinkedHashSet<>();

    SwitchPart(PartDraft draft, Notes notes, List<TableRow> positionRows) {
        this.draft = draft;
        this.notes = notes;
        this.positionRows = positionRows;
        this.usual = draft.type == null ? List.of() : PartCatalogue.switchTerminals(Terminals.switchRows(draft.type));
    }

    /** The terminal of a use; one without words is the feed if the wire ends here, else the first output. */
    String terminal(Use use) {
        String name;
        if (use.phrase.isEmpty()) {
            name = use.from ? output() : feed();
        } else {
            Terminals.Meaning meaning = draft.type == null
                    ? new Terminals.Meaning("", List.of(), false)
                    : Terminals.find(draft.type, use.phrase);
            name = meaning.known() && !meaning.name().isEmpty() ? meaning.name() : cleaned(use.phrase);
        }
        used.add(name);
        return name;
    }

    private String feed() {
        return usual.isEmpty() ? "in" : usual.get(0).terminal();
    }

    private String output() {
        return usual.size() < 2 ? "out" : usual.get(1).terminal();
    }

    static String cleaned(String phrase) {
        String clean = phrase.replaceAll("[^A-Za-z0-9+-]+", "");
        return clean.isEmpty() ? "1" : clean.substring(0, Math.min(12, clean.length()));
    }

    /** Whether one wire only leads to it, so that its far terminal must be on earth. */
    boolean needsEarth() {
        boolean plain = draft.type == null || Terminals.switchRows(draft.type).equals("switch");
        return used.size() == 1 && positionRows.isEmpty() && plain;
    }

    /** A lighting switch or a key of which one terminal is listed has others all the same. */
    void completeTerminals() {
        if (used.size() == 1 && positionRows.isEmpty()) {
            used.add(used.contains(feed()) ? output() : feed());
        }
    }

    void earthed() {
        used.add(CASE);
    }

    void put(Map<String, Object> object, String positionsText) {
        List<Map<String, Object>> positions = positionRows.isEmpty() ? positions(positionsText) : fromRows();
        Set<String> terminals = new LinkedHashSet<>(used);
        positions.forEach(p -> joins(p).forEach(terminals::addAll));
        object.put("terminals", List.copyOf(terminals));
        object.put("positions", positions);
        if (!positionRows.isEmpty()) {
            Map<String, Object> by = byConditionOf(positionRows);
            if (!by.isEmpty()) {
                object.put("positionByCondition", by);
            }
        } else if (draft.typeName().equals("key")) {
            object.put("positionByCondition", byCondition(positions));
        } else if (STARTING.contains(draft.typeName()) && positions.size() == 2) {
            object.put("positionByCondition", pressedToStart(positions));
        } else if (draft.type != null && "push-button".equals(draft.type.switchType())) {
            object.put("momentary", true);
        }
    }

    @SuppressWarnings("unchecked")
    private static List<List<String>> joins(Map<String, Object> position) {
        return (List<List<String>>) position.getOrDefault("joins", List.of());
    }

    private List<Map<String, Object>> fromRows() {
        List<Map<String, Object>> positions = new ArrayList<>();
        for (TableRow row : positionRows) {
            positions.add(position(row.text("position"), groups(row.text("joins"))));
        }
        return positions;
    }

    /** {@code 30 15; 49 49a}: groups of joined terminals. */
    static List<List<String>> groups(String text) {
        List<List<String>> groups = new ArrayList<>();
        for (String group : text.split(";", -1)) {
            List<String> names = List.of(group.strip().split("[\\s,]+", -1));
            if (names.size() > 1) {
                groups.add(names);
            }
        }
        return groups;
    }

    private static Map<String, Object> position(String name, List<List<String>> joins) {
        Map<String, Object> position = new LinkedHashMap<>();
        position.put("name", name);
        position.put("joins", joins);
        return position;
    }

    private List<Map<String, Object>> positions(String text) {
        if (text.contains(":")) {
            return named(text);
        }
        List<String> names = text.isBlank() ? List.of() : List.of(text.strip().split("\\s*[/;,]\\s*", -1));
        if (names.size() == 2) {
            return List.of(position(names.get(0), List.of()), position(names.get(1), List.of(List.copyOf(used))));
        }
        return usualPositions();
    }

    private static List<Map<String, Object>> named(String text) {
        List<Map<String, Object>> positions = new ArrayList<>();
        for (String each : text.split(";", -1)) {
            int colon = each.indexOf(':');
            String name = (colon < 0 ? each : each.substring(0, colon)).strip();
            String joined =
                    colon < 0 ? "" : each.substring(colon + 1).replace("&", " ").replaceAll("(?<=\\w)-(?=\\w)", " ");
            positions.add(position(name, groups(joined)));
        }
        return positions;
    }

    /** The terminals that one position joins, in groups of their own where the switch has several poles. */
    private record Pole(String position, int number) {
        /** {@code on}, or {@code on#2} of a second pole. */
        static Pole of(String text, Map<String, String> working, String rows) {
            int mark = text.indexOf('#');
            String name = mark < 0 ? text : text.substring(0, mark);
            int number = mark < 0 ? 1 : Integer.parseInt(text.substring(mark + 1));
            return new Pole(name.equals("on") ? working.getOrDefault(rows, "on") : name, number);
        }
    }

    private List<Map<String, Object>> usualPositions() {
        String rows = draft.type == null || draft.type.switchType() == null ? "switch" : draft.type.switchType();
        Map<Pole, List<String>> joined = new LinkedHashMap<>();
        String rest = RESTS.getOrDefault(rows, "off");
        if (!rest.isEmpty()) {
            joined.put(new Pole(rest, 1), new ArrayList<>());
        }
        for (SwitchTerminal terminal : usual) {
            for (String position : terminal.positions()) {
                List<String> names =
                        joined.computeIfAbsent(Pole.of(position, WORKING, rows), pole -> new ArrayList<>());
                if (used.contains(terminal.terminal())) {
                    names.add(terminal.terminal());
                }
            }
        }
        boolean caseApart = used.contains(feed()) && used.contains(output());
        List<String> strange = used.stream()
                .filter(name -> !(caseApart && name.equals(CASE)))
                .filter(name -> usual.stream().noneMatch(t -> t.terminal().equals(name)))
                .toList();
        joined.forEach((pole, names) -> {
            if (!pole.position().equals(rest) && pole.number() == 1) {
                names.addAll(strange);
            }
        });
        Map<String, List<List<String>>> positions = new LinkedHashMap<>();
        joined.forEach((pole, names) -> {
            List<List<String>> groups = positions.computeIfAbsent(pole.position(), name -> new ArrayList<>());
            if (names.size() > 1) {
                groups.add(List.copyOf(names));
            }
        });
        positions
                .entrySet()
                .removeIf(each -> !each.getKey().equals(rest)
                        && each.getValue().isEmpty()
                        && !each.getKey().equals("on"));
        if (!used.contains("50") && !used.contains("15a")) {
            positions.remove("start");
        }
        boolean key = draft.typeName().equals("key");
        Map<String, List<List<String>>> told = key ? positions : withoutAlike(positions, rest);
        if (draft.typeName().equals("isolator")) {
            // As it is found: a vehicle in use has its battery on.
            List<List<String>> joinedAtRest = told.remove(rest);
            told.put(rest, joinedAtRest == null ? List.of() : joinedAtRest);
        }
        explain(told, strange);
        return told.entrySet().stream()
                .map(each -> position(each.getKey(), each.getValue()))
                .toList();
    }

    /** Positions that join the same are one: nobody could tell which of them was meant. */
    private static Map<String, List<List<String>>> withoutAlike(
            Map<String, List<List<String>>> positions, String rest) {
        List<List<List<String>>> working = positions.entrySet().stream()
                .filter(each -> !each.getKey().equals(rest))
                .map(Map.Entry::getValue)
                .toList();
        if (rest.isEmpty() || working.size() < 2 || !working.stream().allMatch(working.get(0)::equals)) {
            return positions;
        }
        Map<String, List<List<String>>> one = new LinkedHashMap<>();
        one.put(rest, positions.getOrDefault(rest, List.of()));
        one.put("on", working.get(0));
        return one;
    }

    private void explain(Map<String, List<List<String>>> positions, List<String> strange) {
        List<String> described = new ArrayList<>();
        positions.forEach((name, groups) -> described.add(
                groups.isEmpty()
                        ? name
                        : name + ": "
                                + groups.stream()
                                        .map(group -> String.join(" ", group))
                                        .collect(Collectors.joining(", "))));
        String value = String.join("; ", described);
        List<String> beyondCase =
                strange.stream().filter(name -> !name.equals(CASE)).toList();
        if (used.size() > 2 && !beyondCase.isEmpty()) {
            notes.ask(
                    Question.Code.POSITIONS,
                    draft.at,
                    List.of(draft.id),
                    "",
                    List.of(value),
                    Map.of("part", draft.label));
        } else {
            notes.assume(
                    Code.POSITIONS,
                    draft.at,
                    List.of(draft.id),
                    Notes.PRACTICE,
                    Map.of("part", draft.label, "value", inWords(positions)));
        }
    }

    /** "off; on (joins in–31)". */
    private static String inWords(Map<String, List<List<String>>> positions) {
        return positions.entrySet().stream()
                .map(position -> PositionText.POSITION
                        .with(
                                arg("name", position.getKey()),
                                texts(
                                        "groups",
                                        position.getValue().stream()
                                                .map(group -> String.join("–", group))
                                                .toList()))
                        .text())
                .collect(Collectors.joining("; "));
    }

    private enum PositionText implements MessageCode {
        POSITION
    }

    /** Whoever cranks the engine presses it. */
    private static Map<String, Object> pressedToStart(List<Map<String, Object>> positions) {
        Map<String, Object> by = new LinkedHashMap<>();
        for (String condition : WorksWhen.ALL) {
            by.put(
                    condition,
                    String.valueOf(
                            positions.get(condition.equals("crank") ? 1 : 0).get("name")));
        }
        return by;
    }

    private static Map<String, Object> byCondition(List<Map<String, Object>> positions) {
        List<String> names = positions.stream()
                .map(p -> String.valueOf(p.get("name")).toLowerCase(Locale.ROOT))
                .toList();
        String on = names.contains("on") ? "on" : names.get(names.size() - 1);
        Map<String, Object> by = new LinkedHashMap<>();
        by.put("off", names.get(0));
        by.put("accessory", names.contains("accessory") ? "accessory" : names.get(0));
        by.put("run", on);
        by.put("crank", names.contains("start") ? "start" : on);
        by.put("running", on);
        return by;
    }

    /** As the table of positions says in which conditions each position is taken; empty for a free switch. */
    static Map<String, Object> byConditionOf(List<TableRow> rows) {
        Map<String, Object> by = new LinkedHashMap<>();
        for (TableRow row : rows) {
            for (String condition : row.text("when").split(";", -1)) {
                WorksWhen.condition(condition).ifPresent(known -> by.put(known, row.text("position")));
            }
        }
        return by;
    }
}
