package loomwright.list;

import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartShape;
import loomwright.catalogue.PartType;
import loomwright.list.Assumption.Code;
import loomwright.list.Draft.Use;
import org.jspecify.annotations.Nullable;

/** Makes the parts of the plan document, gives each end of a wire its terminal, and adds the earths that people leave out. */
final class PlanParts {
    private final Settings settings;
    private final ListTables tables;
    private final Notes notes;
    private final Set<String> ids;
    private final List<Map<String, Object>> objects = new ArrayList<>();
    private final Map<Integer, CellRef> places = new LinkedHashMap<>();
    private final List<Map<String, Object>> extraWires = new ArrayList<>();
    private final Map<String, List<String>> switchPositions = new LinkedHashMap<>();
    private final Map<String, String> switchNames = new LinkedHashMap<>();
    private List<Draft> drafts = List.of();
    private final Map<PartType.Earth, String> earths = new LinkedHashMap<>();

    PlanParts(Settings settings, ListTables tables, Notes notes, Set<String> ids) {
        this.settings = settings;
        this.tables = tables;
        this.notes = notes;
        this.ids = ids;
    }

    List<Map<String, Object>> objects() {
        return List.copyOf(objects);
    }

    List<Map<String, Object>> extraWires() {
        return List.copyOf(extraWires);
    }

    Map<Integer, CellRef> places() {
        return Map.copyOf(places);
    }

    void build(List<Draft> all) {
        drafts = all;
        boolean ballast = drafts.stream().anyMatch(draft -> draft.is("ballast"));
        boolean controlBox = drafts.stream().anyMatch(draft -> draft.typeName().equals("control-box"));
        findEarths();
        for (Draft draft : drafts) {
            if (draft.exactKind != null) {
                buildExact(draft, draft.exactKind);
            } else if (draft.type == null) {
                buildUnknown(draft);
            } else {
                buildByType(draft, draft.type, ballast, controlBox);
            }
        }
        for (Draft draft : drafts) {
            putWorksWhen(draft);
        }
    }

    private List<TableRow> positionRows(Draft draft) {
        return tables.rows(TableKind.POSITIONS).stream()
                .filter(row -> row.text("switch").equals(draft.id)
                        || String.join(" ", Names.tokens(row.text("switch"))).equals(draft.key))
                .toList();
    }

    private Map<String, Object> add(String kind, String id, String label, CellRef at) {
        Map<String, Object> object = new LinkedHashMap<>();
        object.put("kind", kind);
        object.put("id", id);
        if (!label.isEmpty()) {
            object.put("label", label);
        }
        places.put(objects.size(), at);
        objects.add(object);
        return object;
    }

    // A part as the plan document has it.

    private void buildExact(Draft draft, String kind) {
        Map<String, Object> object = add(kind, draft.id, draft.label, draft.at);
        putProperties(draft, kind, object);
        List<TableRow> positions = positionRows(draft);
        if (!positions.isEmpty()) {
            List<Map<String, Object>> list = new ArrayList<>();
            for (TableRow each : positions) {
                Map<String, Object> position = new LinkedHashMap<>();
                position.put("name", each.text("position"));
                position.put("joins", SwitchPart.groups(each.text("joins")));
                list.add(position);
            }
            object.put("positions", list);
            Map<String, Object> by = SwitchPart.byConditionOf(positions);
            if (!by.isEmpty()) {
                object.put("positionByCondition", by);
            }
        }
        rememberSwitch(draft, object);
        for (Use use : draft.uses) {
            use.end = draft.id + "." + use.phrase;
        }
    }

    /** Cells under the names of properties of the plan document. */
    private void putProperties(Draft draft, String kind, Map<String, Object> object) {
        TableRow row = draft.row;
        if (row != null) {
            for (Map.Entry<String, Type> property : PartShape.properties(kind).entrySet()) {
                row.find("." + property.getKey())
                        .ifPresent(cell -> PropertyText.parse(cell.text(), property.getValue())
                                .ifPresentOrElse(
                                        value -> object.put(property.getKey(), value),
                                        () -> notes.ask(
                                                Question.Code.WHAT_VALUE,
                                                row.at("." + property.getKey()),
                                                List.of(draft.id),
                                                cell.text(),
                                                List.of(),
                                                Map.of("part", draft.label, "property", property.getKey()))));
            }
        }
    }

    @SuppressWarnings("unchecked")
    private void rememberSwitch(Draft draft, Map<String, Object> object) {
        Object positions = object.get("positions");
        if (positions instanceof List<?> list) {
            switchPositions.put(
                    draft.id,
                    ((List<Map<String, Object>>) list)
                            .stream().map(p -> String.valueOf(p.get("name"))).toList());
            switchNames.put(draft.id, draft.label);
        }
    }

    // A part whose name says nothing.

    private void buildUnknown(Draft draft) {
        Map<String, Object> object = add("joint", draft.id, draft.label, draft.at);
        object.put("terminals", List.of("1"));
        draft.uses.forEach(use -> use.end = draft.id + ".1");
        notes.ask(
                Question.Code.WHAT_PART,
                draft.at,
                List.of(draft.id),
                draft.label,
                List.of("joint", "lamp", "motor", "load", "switch", "relay", "fuse"),
                Map.of("part", draft.label));
    }

    // A part of the catalogue.

    private void buildByType(Draft draft, PartType type, boolean ballast, boolean controlBox) {
        if (draft.uses.isEmpty() && type.kind().equals("earth")) {
            return;
        }
        if (type.standsIn() != null) {
            boolean inPlan = !(type.name().equals("dynamo") && controlBox);
            notes.assume(
                    Code.STAND_IN_KIND,
                    draft.at,
                    inPlan ? List.of(draft.id) : List.of(),
                    null,
                    Map.of("part", draft.label, "really", type.standsIn(), "value", type.kind()));
        }
        switch (type.kind()) {
            case "earth" -> buildEarth(draft);
            case "joint" -> buildJoint(draft);
            case "switch" -> buildSwitch(draft);
            case "fuse box" -> buildFuseBox(draft);
            case "diode pair" -> buildDiodePair(draft);
            default -> {
                if (type.name().equals("dynamo") && controlBox) {
                    draft.uses.forEach(use -> loose(draft, use));
                } else {
                    buildPlain(draft, type, ballast);
                }
            }
        }
    }

    private void buildJoint(Draft draft) {
        Map<String, Object> object = add("joint", draft.id, draft.label, draft.at);
        object.put("terminals", List.of("1"));
        draft.uses.forEach(use -> use.end = draft.id + ".1");
    }

    private void buildEarth(Draft draft) {
        if (isEngineBesideBody(draft)) {
            buildJoint(draft);
        } else {
            add("earth", draft.id, draft.label, draft.at);
            draft.uses.forEach(use -> use.end = draft.id + ".31");
        }
    }

    /** An engine with a strap of its own to the chassis or the battery is not the chassis. */
    private boolean isEngineBesideBody(Draft draft) {
        boolean chassis =
                drafts.stream().anyMatch(d -> d.isEarth() && !d.typeName().equals("engine") && !d.uses.isEmpty());
        return draft.typeName().equals("engine") && chassis;
    }

    private void findEarths() {
        for (Draft draft : drafts) {
            if (draft.isEarth() && !draft.uses.isEmpty()) {
                PartType.Earth earth = draft.typeName().equals("engine") ? PartType.Earth.ENGINE : PartType.Earth.BODY;
                boolean joint = isEngineBesideBody(draft);
                earths.putIfAbsent(earth, draft.id + (joint ? ".1" : ".31"));
            }
        }
    }

    /** The place on the chassis where a part is earthed through its case; made if the list has none. */
    private String earth(PartType.Earth wanted) {
        String own = earths.get(wanted);
        if (own != null) {
            return own;
        }
        Optional<String> other = earths.values().stream().findFirst();
        if (other.isPresent()) {
            return other.get();
        }
        String id = free("body");
        add("earth", id, "Body", new CellRef("", 0, ""));
        earths.put(PartType.Earth.BODY, id + ".31");
        return id + ".31";
    }

    private String free(String wanted) {
        String id = wanted;
        for (int i = 2; !ids.add(id); i++) {
            id = wanted + "-" + i;
        }
        return id;
    }

    /** A wire that nobody listed, of small resistance: a case that is bolted down, a bar in a fuse box. */
    private String wire(String from, String to, double resistanceOhm) {
        String id = free("case-" + (extraWires.size() + 1));
        Map<String, Object> wire = new LinkedHashMap<>();
        wire.put("id", id);
        wire.put("from", from);
        wire.put("to", to);
        wire.put("resistanceOhm", resistanceOhm);
        extraWires.add(wire);
        return id;
    }

    /** An end that the model has no terminal for: it is insulated. */
    private void loose(Draft draft, Use use) {
        String name = use.phrase.isEmpty() ? "1" : SwitchPart.cleaned(use.phrase.toUpperCase(java.util.Locale.ROOT));
        String id = draft.id + "-" + name.replaceAll("[^A-Za-z0-9]", "");
        String label = (draft.label + " " + name).strip();
        if (ids.add(id)) {
            Map<String, Object> object = add("joint", id, label, use.at());
            object.put("terminals", List.of(name));
        }
        use.end = id + "." + name;
        notes.assume(
                Code.UNMODELLED_TERMINAL,
                use.at(),
                List.of(id, use.wire.id),
                null,
                Map.of("part", draft.label, "terminal", name));
    }

    private void buildSwitch(Draft draft) {
        List<Use> lights = new ArrayList<>();
        if (draft.typeName().equals("key")) {
            draft.uses.stream().filter(PlanParts::isLightTerminal).forEach(lights::add);
        }
        List<Use> own = new ArrayList<>(draft.uses);
        own.removeAll(lights);
        SwitchPart part = new SwitchPart(draft, notes, positionRows(draft));
        own.forEach(use -> use.end = draft.id + "." + part.terminal(use));
        Map<String, Object> object = add("switch", draft.id, draft.label, draft.at);
        if (part.needsEarth()) {
            part.earthed();
            PartType.Earth where =
                    draft.type == null || draft.type.earth() == null ? PartType.Earth.BODY : draft.type.earth();
            String id = wire(draft.id + "." + SwitchPart.CASE, earth(where), PartCatalogue.caseResistanceOhm(where));
            notes.assume(
                    Code.SWITCH_EARTH, draft.at, List.of(draft.id, id), Notes.PRACTICE, Map.of("part", draft.label));
        }
        part.put(object, positionsText(draft));
        draft.values.forEach(values -> values.in("A").ifPresent(a -> object.put("ratingA", a)));
        rememberSwitch(draft, object);
        if (object.containsKey("positionByCondition")) {
            switchPositions.remove(draft.id);
        }
        if (!lights.isEmpty()) {
            splitLights(draft, lights);
        }
    }

    private static boolean isLightTerminal(Use use) {
        return draftFindsOnlyAsLights(use.phrase);
    }

    private static boolean draftFindsOnlyAsLights(String phrase) {
        return PartCatalogue.switchTerminals("lighting-switch").stream()
                .anyMatch(terminal ->
                        !terminal.terminal().equals("30") && terminal.terminal().equals(phrase));
    }

    private static String positionsText(Draft draft) {
        TableRow row = draft.row;
        if (row == null) {
            return "";
        }
        String positions = row.text("positions");
        return positions.isEmpty() && row.text("value").contains("/") ? row.text("value") : positions;
    }

    /** A key that switches the lights as well is calculated as two switches on one feed. */
    private void splitLights(Draft key, List<Use> lights) {
        PartType type = PartCatalogue.findType("lighting-switch").orElseThrow();
        Draft draft = new Draft(key.key + " lights", key.label + ", lights", type, key.at);
        draft.id = free(key.id.substring(0, Math.min(key.id.length(), 30)) + "-lights");
        SwitchPart part = new SwitchPart(draft, notes, List.of());
        lights.forEach(use -> use.end = draft.id + "." + part.terminal(use));
        Use feed = new Use(lights.get(0).wire, false, "30");
        String fed = draft.id + "." + part.terminal(feed);
        Map<String, Object> object = add("switch", draft.id, draft.label, key.at);
        part.put(object, "");
        rememberSwitch(draft, object);
        String id = wire(key.id + ".30", fed, 0.001);
        notes.assume(
                Code.KEY_LIGHTS_SPLIT,
                key.at,
                List.of(key.id, draft.id, id),
                Notes.PRACTICE,
                Map.of("part", key.label));
    }

    private void buildFuseBox(Draft draft) {
        Set<String> outs = new LinkedHashSet<>();
        for (Use use : draft.uses) {
            if (!isInput(use)) {
                outs.add(number(use.phrase));
            }
        }
        List<String> fuses = new ArrayList<>();
        for (String out : outs.isEmpty() ? List.of("1") : List.copyOf(outs)) {
            Draft fuse = new Draft(
                    draft.key + " " + out,
                    draft.label + " " + out,
                    PartCatalogue.findType("fuse").orElseThrow(),
                    draft.at);
            fuse.id = free(draft.id.substring(0, Math.min(draft.id.length(), 34)) + "-" + out);
            for (Use use : draft.uses) {
                if (!isInput(use) && number(use.phrase).equals(out)) {
                    use.end = fuse.id + ".b";
                    fuse.uses.add(use);
                }
            }
            fuse.values.addAll(draft.values);
            Map<String, Object> object = add("fuse", fuse.id, fuse.label, draft.at);
            new PartValues(fuse, object, settings.nominalV(), false, notes).put();
            fuses.add(fuse.id);
        }
        for (int i = 1; i < fuses.size(); i++) {
            wire(fuses.get(0) + ".a", fuses.get(i) + ".a", 0.0005);
        }
        draft.uses.stream().filter(PlanParts::isInput).forEach(use -> use.end = fuses.get(0) + ".a");
    }

    private static boolean isInput(Use use) {
        String phrase = use.phrase;
        return phrase.startsWith("in")
                || phrase.equals("feed")
                || phrase.equals("common")
                || (phrase.isEmpty() && !use.from);
    }

    private static String number(String phrase) {
        String digits = phrase.replaceAll("\\D", "");
        return digits.isEmpty() ? "1" : digits;
    }

    private void buildDiodePair(Draft draft) {
        List<String> pair = new ArrayList<>();
        for (String number : List.of("1", "2")) {
            String id = free(draft.id.substring(0, Math.min(draft.id.length(), 36)) + "-" + number);
            Map<String, Object> object = add("diode", id, draft.label + " " + number, draft.at);
            draft.values.forEach(values -> {
                values.in("V").ifPresent(v -> object.put("forwardV", v));
                values.in("A").ifPresent(a -> object.put("ratingA", a));
            });
            pair.add(id);
        }
        wire(pair.get(0) + ".anode", pair.get(1) + ".anode", 0.0005);
        for (Use use : draft.uses) {
            boolean second = number(use.phrase).equals("2");
            use.end = isInput(use) ? pair.get(0) + ".anode" : pair.get(second ? 1 : 0) + ".cathode";
        }
    }

    private void buildPlain(Draft draft, PartType type, boolean ballast) {
        Map<String, Object> object = add(type.kind(), draft.id, draft.label, draft.at);
        putProperties(draft, type.kind(), object);
        new PartValues(draft, object, settings.nominalV(), ballast, notes).put();
        PartEnds ends = new PartEnds(draft, settings.positiveEarth(), notes);
        for (Use use : draft.uses) {
            String terminal = ends.terminal(use);
            if (terminal.isEmpty()) {
                loose(draft, use);
            } else {
                use.end = draft.id + "." + terminal;
            }
        }
        if (type.kind().equals("alternator")) {
            putExcitation(draft, object);
        }
        if (type.kind().equals("alternator") && !ends.hasOutput()) {
            notes.ask(
                    Question.Code.NO_OUTPUT,
                    draft.at,
                    List.of(draft.id),
                    draft.label,
                    List.of("nowhere", "battery"),
                    Map.of("part", draft.label));
        }
        String open = ends.openReturn();
        if (open.isEmpty()) {
            return;
        }
        PartType.Earth where = type.earth();
        if (where != null) {
            boolean battery = type.kind().equals("battery");
            String id = wire(
                    draft.id + "." + open, earth(where), battery ? 0.0005 : PartCatalogue.caseResistanceOhm(where));
            notes.assume(
                    battery ? Code.BATTERY_EARTH : Code.CASE_EARTH,
                    draft.at,
                    List.of(draft.id, id),
                    Notes.PRACTICE,
                    Map.of("part", draft.label, "value", earth(where).replaceAll("\\..*", "")));
        }
    }

    /** Without a current at D+ an alternator gives nothing; a dynamo builds up its voltage from what magnetism is left. */
    private void putExcitation(Draft draft, Map<String, Object> object) {
        boolean excited = draft.uses.stream().anyMatch(use -> use.end.equals(draft.id + ".D+"));
        boolean dynamo = !draft.typeName().equals("alternator");
        if (object.containsKey("selfExciting") || (excited && !dynamo)) {
            return;
        }
        object.put("selfExciting", true);
        notes.assume(
                dynamo ? Code.DYNAMO_EXCITES_ITSELF : Code.SELF_EXCITING,
                draft.at,
                List.of(draft.id),
                Notes.PRACTICE,
                Map.of("part", draft.label));
    }

    // When it is meant to be live.

    private void putWorksWhen(Draft draft) {
        Map<String, Object> object = find(draft.id);
        if (object == null
                || !PartShape.properties(String.valueOf(object.get("kind"))).containsKey("meantLive")) {
            return;
        }
        TableRow row = draft.row;
        String text = row == null ? "" : row.text("works when");
        if (!text.isEmpty()) {
            Optional<WorksWhen> read = WorksWhen.read(text, switchPositions, switchNames);
            if (read.isPresent()) {
                List<String> conditions = read.get().conditions();
                if (conditions != null) {
                    object.put("meantLive", conditions);
                }
                if (!read.get().alternatives().isEmpty()) {
                    object.put("meantLiveWhen", read.get().alternatives());
                }
                return;
            }
            notes.ask(
                    Question.Code.WORKS_WHEN,
                    row == null ? draft.at : row.at("works when"),
                    List.of(draft.id),
                    text,
                    List.of("as the switch that feeds it", "key on", "always", "crank"),
                    Map.of("part", draft.label));
        }
        if (draft.type != null && !draft.type.works().isEmpty()) {
            object.put("meantLive", draft.type.works());
        }
    }

    private @Nullable Map<String, Object> find(String id) {
        return objects.stream().filter(o -> id.equals(o.get("id"))).findFirst().orElse(null);
    }
}
