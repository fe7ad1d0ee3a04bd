package loomwright.list;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartShape;
import loomwright.catalogue.PartType;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.WireDraft;
import org.jspecify.annotations.Nullable;

/** Makes the plan document of a list. */
public final class PlanList {
    private static final String SCHEMA = "loomwright/plan/1";
    private static final int MAX_ID = 40;
    /** A name that the plan document can take as an id, and that nobody would take for words. */
    private static final Pattern ID =
            Pattern.compile("[A-Za-z][A-Za-z0-9]{0,20}(?:[-_][A-Za-z0-9]{1,20})+|[A-Z]{1,4}[0-9]{1,4}");

    private final ListTables tables;
    private final Notes notes = new Notes();
    private final Settings settings;
    private final Names names = new Names();
    private final Map<String, PartDraft> drafts = new LinkedHashMap<>();
    private final Map<String, PartDraft> byExactId = new HashMap<>();
    /** What a part is called beside its name, to the name. */
    private final Map<String, String> keysOfLabels = new HashMap<>();

    private final List<WireDraft> wires = new ArrayList<>();
    private final Set<String> ids = new HashSet<>();
    private final Set<String> spellings = new HashSet<>();

    private PlanList(ListTables tables) {
        this.tables = tables;
        this.settings = Settings.of(tables, notes);
    }

    /**
     * Reads a list.
     *
     * @return the plan document, as yet unchecked, with all that was assumed and all that must be asked
     * @throws RejectedInput MISSING where there is no table of wires in it, NOT_ONE_OF in a list that forbids assumptions,
     *     OVER_LIMIT in a list of several cars
     */
    public static ListReading read(ListSource source) {
        Cars.requireOne(source);
        ListTables tables = ListTables.of(source);
        if (!tables.has(TableKind.WIRES)
                || (tables.rows(TableKind.WIRES).isEmpty()
                        && tables.rows(TableKind.PARTS).isEmpty())) {
            throw new RejectedInput(noHeadings(source));
        }
        return new PlanList(tables).read();
    }

    private static InputError noHeadings(ListSource source) {
        String found = source.sheets().stream()
                .flatMap(sheet -> sheet.rows().stream())
                .map(row -> String.join(", ", row.cells()).replaceAll("\\s*[;\t|]\\s*", ", "))
                .filter(cells -> cells.contains(", "))
                .findFirst()
                .orElse("");
        return new InputError(
                        InputError.Code.MISSING,
                        "",
                        null,
                        AcceptedList.HEADINGS.with(arg("found", found), arg("rows", found.isEmpty() ? 0 : 1)))
                .at(ListPlace.HEADINGS.text());
    }

    /**
     * Reads the readings of a list without wires, whose points are named as the plan document names them.
     *
     * @throws RejectedInput MISSING where there is no table of readings in it
     */
    public static MeterTable readings(ListSource source) {
        ListTables tables = ListTables.of(source);
        if (!tables.has(TableKind.READINGS)) {
            throw new RejectedInput(noReadings());
        }
        return new MeterRow(new Points(new Names(), Map.of(), Map.of(), Map.of(), Map.of()))
                .read(tables.rows(TableKind.READINGS));
    }

    /** Why a list without readings does not answer a question that needs some. */
    public static InputError noReadings() {
        return new InputError(InputError.Code.MISSING, "/readings", null, AcceptedList.READINGS.with());
    }

    private ListReading read() {
        tables.unknownColumns()
                .forEach(at -> notes.assume(Code.COLUMN_NOT_READ, at, List.of(), null, Map.of("column", at.column())));
        tables.rowsWithoutEnds().forEach(at -> notes.assume(Code.ROW_LEFT_OUT, at, List.of(), null, Map.of()));
        tables.rows(TableKind.PARTS).forEach(this::readPart);
        readWires();
        SameParts.join(drafts);
        Map<PartDraft, PartDraft> solenoids = StarterParts.split(drafts, notes);
        nameParts();
        Map<String, CellRef> places = new LinkedHashMap<>();
        PlanParts parts = new PlanParts(settings, tables, notes, ids);
        parts.build(List.copyOf(drafts.values()));
        solenoids.forEach(parts::joinStarter);
        List<Map<String, Object>> wireObjects = new ArrayList<>();
        WireRow wireRow = new WireRow(settings, notes, ColumnUnits.of(wires, notes));
        for (WireDraft wire : wires) {
            places.put("/wires/" + wireObjects.size(), wire.row.at());
            Map<String, Object> object = wireRow.build(wire);
            for (String property : object.keySet()) {
                places.put(
                        "/wires/" + wireObjects.size() + "/" + property,
                        wire.row.at(WireRow.COLUMNS.getOrDefault(property, "")));
            }
            wireObjects.add(object);
        }
        wireObjects.addAll(parts.objects().extraWires());
        places.putAll(parts.objects().places());
        Map<String, Object> plan = new LinkedHashMap<>();
        plan.put("schema", SCHEMA);
        plan.put("name", settings.name());
        plan.put("system", settings.system());
        Map<String, Object> conditions = Settings.conditions(tables, notes);
        if (!conditions.isEmpty()) {
            plan.put("conditions", conditions);
        }
        plan.put("parts", parts.objects().list());
        plan.put("wires", wireObjects);
        putConnectors(plan);
        List<String> planNotes = tables.rows(TableKind.NOTES).stream()
                .map(row -> row.text("plan note"))
                .toList();
        if (!planNotes.isEmpty()) {
            plan.put("notes", planNotes);
        }
        Points points = new Points(names, drafts, byExactId, parts.switchPositions(), parts.switchNames());
        MeterTable readings = new MeterRow(points).read(tables.rows(TableKind.READINGS));
        return new ListReading(plan, notes.assumptions(), notes.questions(), places, readings);
    }

    private void readPart(TableRow row) {
        String name = row.text("part");
        if (name.isEmpty()) {
            return;
        }
        String kind = row.text("kind");
        PartDraft draft;
        // As this service writes it: with every property in a column of its own, so there is no column of values.
        boolean written = tables.hasColumn(TableKind.PARTS, "label") && !tables.hasColumn(TableKind.PARTS, "value");
        if (written && PartShape.kinds().contains(kind)) {
            draft = new PartDraft(name, row.text("label"), null, row.at("part"));
            draft.exactKind = kind;
            draft.id = name;
            ids.add(name);
            byExactId.put(name, draft);
        } else {
            PartType type = kind.isEmpty() ? names.read(name).type() : typeIn(row, name, kind);
            names.declare(name, type);
            String label = row.text("label").isEmpty() ? Names.capitalised(name) : row.text("label");
            draft = new PartDraft(String.join(" ", Names.tokens(name)), label, type, row.at("part"));
            draft.values.add(Quantities.values(row.text("value")));
            if (!label.equalsIgnoreCase(name)) {
                names.declare(label, type);
                keysOfLabels.putIfAbsent(String.join(" ", Names.tokens(label)), draft.key);
            }
            if (ID.matcher(name).matches() && ids.add(name)) {
                draft.id = name;
                byExactId.put(name, draft);
            }
        }
        draft.row = row;
        drafts.putIfAbsent(draft.key, draft);
    }

    /** The kind names a family; where the name of the part is more precise and of the same kind, that counts. */
    private @Nullable PartType typeIn(TableRow row, String name, String kind) {
        Optional<PartType> written = Names.typeOf(kind);
        PartType byName = names.read(name).type();
        if (written.isEmpty()) {
            List<String> choices = new ArrayList<>();
            if (byName != null) {
                choices.add(byName.kind());
            }
            PartCatalogue.kinds().forEach(each -> choices.add(each.kind()));
            notes.ask(Question.Code.WHAT_PART, row.at("kind"), List.of(), kind, choices, Map.of("part", name));
            return byName;
        }
        boolean family = written.get().name().equals(written.get().kind());
        boolean precise =
                family && byName != null && byName.kind().equals(written.get().kind());
        return precise ? byName : written.get();
    }

    private void readWires() {
        int count = 0;
        @Nullable String above = null;
        for (TableRow row : tables.rows(TableKind.WIRES)) {
            count++;
            String from = row.text("from");
            String to = row.text("to");
            if (isDitto(from) && above != null) {
                notes.assume(Code.AS_ROW_ABOVE, row.at("from"), List.of(), null, Map.of("value", above));
                from = above;
            }
            if (from.isEmpty() || to.isEmpty()) {
                String column = from.isEmpty() ? "from" : "to";
                notes.ask(
                        Question.Code.MISSING_END,
                        row.at(column),
                        List.of(),
                        "",
                        List.of("the wire is left out"),
                        Map.of("column", column));
                continue;
            }
            above = from;
            readWire(row, count, from, to);
        }
    }

    private static boolean isDitto(String text) {
        return text.isEmpty()
                || text.equals("\"")
                || text.equals("''")
                || text.equals("″")
                || text.equalsIgnoreCase("do.")
                || text.equalsIgnoreCase("ditto");
    }

    private void readWire(TableRow row, int count, String from, String to) {
        String id = wireId(row, count);
        List<String> toVia = Names.splitVia(to);
        String via = row.text("via").isEmpty() && toVia.size() == 2 ? toVia.get(1) : row.text("via");
        if (via.isEmpty()) {
            readEnds(row, id, names.split(from), names.split(to));
            return;
        }
        End start = end(row, "from", from);
        End end = end(row, "to", toVia.get(0));
        End between = end(row, "to", via);
        String second = freeId(id);
        notes.assume(Code.VIA_SPLIT, row.at("to"), List.of(id, second), null, Map.of("part", between.draft.label));
        wires.add(new WireDraft(row, id, start.draft, start.phrase, between.draft, ""));
        wires.add(new WireDraft(row, second, between.draft, "", end.draft, end.phrase));
    }

    /** One wire, or several of one length where an end names several parts. */
    private void readEnds(TableRow row, String id, List<String> from, List<String> to) {
        End start = end(row, "from", from.get(0));
        End end = end(row, "to", to.get(0));
        if (start.draft.equals(end.draft) && start.draft.is("battery")) {
            // "battery -" to "battery earth": the place that it is earthed at.
            end = end(row, "to", "earth");
        }
        wires.add(new WireDraft(row, id, start.draft, start.phrase, end.draft, end.phrase));
        for (String other : to.subList(1, to.size())) {
            addBeside(row, id, "to", end, start, end(row, "to", other));
        }
        for (String other : from.subList(1, from.size())) {
            addBeside(row, id, "from", start, end(row, "from", other), end);
        }
    }

    private void addBeside(TableRow row, String id, String column, End first, End start, End end) {
        String second = freeId(id);
        PartDraft other = column.equals("to") ? end.draft : start.draft;
        notes.assume(
                Code.TWO_PARTS,
                row.at(column),
                List.of(id, second),
                null,
                Map.of("first", first.draft.label, "second", other.label));
        wires.add(new WireDraft(row, second, start.draft, start.phrase, end.draft, end.phrase));
    }

    private String wireId(TableRow row, int count) {
        String written = row.text("no").replaceAll("[^A-Za-z0-9_-]+", "-").replaceAll("^[_-]+", "");
        String id = written.isEmpty() ? "W" + count : written.substring(0, Math.min(written.length(), MAX_ID));
        return freeId(id);
    }

    private String freeId(String wanted) {
        String id = wanted;
        for (int i = 2; !ids.add(id); i++) {
            String ending = "-" + i;
            id = wanted.substring(0, Math.min(wanted.length(), MAX_ID - ending.length())) + ending;
        }
        return id;
    }

    private record End(PartDraft draft, String phrase) {}

    private End end(TableRow row, String column, String text) {
        int dot = text.lastIndexOf('.');
        PartDraft exact = dot > 0 ? byExactId.get(text.substring(0, dot)) : null;
        if (exact != null) {
            return new End(exact, text.substring(dot + 1));
        }
        Names.Name name = names.read(text);
        name.corrected().forEach((written, word) -> {
            if (spellings.add(written)) {
                notes.assume(Code.SPELLING, row.at(column), List.of(), null, Map.of("written", written, "value", word));
            }
        });
        PartDraft draft = drafts.computeIfAbsent(
                keysOfLabels.getOrDefault(name.key(), name.key()),
                key -> new PartDraft(key, name.label(), name.type(), row.at(column)));
        if (!name.values().isEmpty()) {
            draft.values.add(name.values());
        }
        return new End(draft, name.terminal());
    }

    private void nameParts() {
        for (PartDraft draft : drafts.values()) {
            if (draft.id.isEmpty()) {
                String slug = draft.key
                        .toLowerCase(Locale.ROOT)
                        .replace("+", " plus ")
                        .replaceAll("(^|\\s)-(\\s|$)", " minus ")
                        .replaceAll("[^a-z0-9]+", "-")
                        .replaceAll("^-+|-+$", "");
                draft.id = freeId(slug.isEmpty() ? "part" : slug.substring(0, Math.min(slug.length(), MAX_ID - 4)));
            }
        }
    }

    private void putConnectors(Map<String, Object> plan) {
        List<Map<String, Object>> connectors = new ArrayList<>();
        for (TableRow row : tables.rows(TableKind.CONNECTORS)) {
            Map<String, Object> connector = new LinkedHashMap<>();
            connector.put("id", row.text("connector"));
            connector.put("halves", List.of(row.text("first half"), row.text("second half")));
            row.find("contact resistance").ifPresent(cell -> {
                OptionalDouble number = Quantities.number(cell.text());
                number.ifPresent(ohm -> connector.put("contactResistanceOhm", ohm));
            });
            connectors.add(connector);
        }
        if (!connectors.isEmpty()) {
            plan.put("connectors", connectors);
        }
    }
}
