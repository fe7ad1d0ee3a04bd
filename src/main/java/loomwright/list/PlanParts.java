package loomwright.list;

import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartShape;
import loomwright.catalogue.PartType;
import loomwright.circuit.Alternator;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;

/** Makes the parts of the plan document, gives each end of a wire its terminal, and adds the earths that people leave out. */
final class PlanParts {
    /** A sound braid with its two ends (common practice, no source). */
    private static final double STRAP_OHM = 0.0005;

    private final Settings settings;
    private final Notes notes;
    private final PlanObjects objects;
    private final SwitchParts switches;
    private final SeveralParts several;
    private List<PartDraft> drafts = List.of();
    /** Parts whose case is on the engine, where no row names an engine. */
    private final List<PartDraft> onBody = new ArrayList<>();

    PlanParts(Settings settings, ListTables tables, Notes notes, Set<String> ids) {
        this.settings = settings;
        this.notes = notes;
        this.objects = new PlanObjects(notes, ids, settings.saysNoStrap());
        this.switches = new SwitchParts(objects, tables, notes);
        this.several = new SeveralParts(objects, settings, notes);
    }

    /** What was built. */
    PlanObjects objects() {
        return objects;
    }

    /** The positions of each free switch, by its id. */
    Map<String, List<String>> switchPositions() {
        return switches.freePositions();
    }

    /** What each free switch is called, by its id. */
    Map<String, String> switchNames() {
        return switches.labels();
    }

    void build(List<PartDraft> all) {
        drafts = all;
        boolean ballast = drafts.stream().anyMatch(draft -> draft.is("ballast"));
        boolean controlBox = drafts.stream().anyMatch(draft -> draft.typeName().equals("control-box"));
        objects.findEarths(drafts);
        for (PartDraft draft : drafts) {
            if (draft.exactKind != null) {
                buildExact(draft, draft.exactKind);
            } else if (draft.type == null) {
                buildUnknown(draft);
            } else {
                buildByType(draft, draft.type, ballast, controlBox);
            }
        }
        for (PartDraft draft : drafts) {
            putWorksWhen(draft);
        }
        drafts.stream()
                .filter(this::isEngineOnItsOwn)
                .findFirst()
                .ifPresentOrElse(this::askEarthStrap, this::noteStrap);
    }

    /** Parts on an engine that no row names are taken to be earthed by a strap to the body. */
    private void noteStrap() {
        boolean named = drafts.stream().anyMatch(draft -> draft.typeName().equals("engine"));
        if (named || !objects.hasEngine()) {
            settings.noteUnusedStrap(named);
        }
        if (!onBody.isEmpty()) {
            notes.assume(
                    Code.ENGINE_ON_BODY,
                    onBody.get(0).at,
                    onBody.stream().map(draft -> draft.id).toList(),
                    Notes.PRACTICE,
                    Map.of("part", onBody.get(0).label));
        }
    }

    /** An engine on its mounts of rubber, to which no lead goes. */
    private boolean isEngineOnItsOwn(PartDraft draft) {
        return PlanObjects.isEngineBesideBody(draft, drafts)
                && draft.exactKind == null
                && !draft.uses.isEmpty()
                && draft.uses.stream().noneMatch(use -> leadsToEarth(use.other()));
    }

    private static boolean leadsToEarth(PartDraft other) {
        return other.isEarth()
                || other.is("battery")
                || other.is("joint")
                || other.is("switch")
                || other.kind().isEmpty();
    }

    private void askEarthStrap(PartDraft engine) {
        if (settings.hasEarthStrap()) {
            String id = objects.wire(engine.id + ".1", objects.earth(PartType.Earth.BODY), STRAP_OHM);
            notes.ask(
                    Question.Code.ENGINE_STRAP,
                    engine.at,
                    List.of(engine.id, id),
                    "",
                    List.of("a sound strap", "none"),
                    Map.of());
        }
    }

    /** The stud or bar between a starter and the solenoid on it. */
    void joinStarter(PartDraft starter, PartDraft solenoid) {
        objects.stud(solenoid.id + ".45", starter.id + ".33", starter.id);
    }

    // A part as the plan document has it.

    private void buildExact(PartDraft draft, String kind) {
        Map<String, Object> object = objects.add(kind, draft.id, draft.label, draft.at);
        putProperties(draft, kind, object);
        List<TableRow> positions = switches.positionRows(draft);
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
        switches.remember(draft, object);
        for (Use use : draft.uses) {
            use.end = draft.id + "." + use.phrase;
        }
    }

    /** Cells under the names of properties of the plan document. */
    private void putProperties(PartDraft draft, String kind, Map<String, Object> object) {
        TableRow row = draft.row;
        if (row != null) {
            for (Map.Entry<String, Type> property : PartShape.properties(kind).entrySet()) {
                row.find("." + property.getKey())
                        .ifPresent(cell -> PropertyText.parse(cell.text(), property.getValue())
                                .ifPresentOrElse(
                                        value -> objects.put(
                                                object, property.getKey(), value, row.at("." + property.getKey())),
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

    private void buildSwitch(PartDraft draft) {
        Map<String, Object> object = switches.build(draft);
        putProperties(draft, "switch", object);
        if (object.get("position") instanceof String written) {
            switches.freePositions().getOrDefault(draft.id, List.of()).stream()
                    .filter(written::equalsIgnoreCase)
                    .findFirst()
                    .ifPresent(name -> object.put("position", name));
        }
    }

    // A part whose name says nothing.

    private void buildUnknown(PartDraft draft) {
        Map<String, Object> object = objects.add("joint", draft.id, draft.label, draft.at);
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

    private void buildByType(PartDraft draft, PartType type, boolean ballast, boolean controlBox) {
        if (draft.uses.isEmpty() && draft.kind().equals("earth")) {
            return;
        }
        switch (draft.kind()) {
            case "earth" -> objects.earthPoint(draft, drafts);
            case "joint" -> objects.joint(draft);
            case "switch" -> buildSwitch(draft);
            case "fuse box" -> several.fuseBox(draft);
            case "diode pair" -> several.diodePair(draft);
            case "twin lamp" -> several.twinLamp(draft, Objects.requireNonNull(type.earth()));
            default -> buildPlain(draft, type, ballast);
        }
        if (draft.kind().equals("dynamo") && !controlBox) {
            several.cutOutOf(draft);
        }
    }

    private void buildPlain(PartDraft draft, PartType type, boolean ballast) {
        Map<String, Object> object = objects.add(draft.kind(), draft.id, draft.label, draft.at);
        putProperties(draft, draft.kind(), object);
        type.sets().forEach(object::putIfAbsent);
        new PartValues(draft, object, settings.nominalV(), ballast, notes).put();
        PartEnds ends = new PartEnds(draft, settings.positiveEarth(), notes);
        for (Use use : draft.uses) {
            String terminal = ends.terminal(use);
            if (terminal.isEmpty()) {
                objects.loose(draft, use);
            } else {
                use.end = draft.id + "." + terminal;
            }
        }
        switch (draft.kind()) {
            case "alternator" -> {
                putExcitation(draft, object, "D+");
                putSense(draft, object);
            }
            case "dynamo" -> putExcitation(draft, object, "F");
            case "fuse" -> askMarking(draft, object);
            case "led" -> {
                if (settings.positiveEarth()) {
                    object.putIfAbsent("plus", "b");
                }
            }
            default -> {}
        }
        if (draft.uses.isEmpty() && draft.row != null && !draft.connectedInside) {
            askWhichPart(draft);
        }
        boolean charges = draft.kind().equals("alternator") || draft.kind().equals("dynamo");
        if (charges && !(ends.hasOutput() && feedsMoreThanItsLamp(draft))) {
            notes.ask(
                    Question.Code.NO_OUTPUT,
                    draft.at,
                    List.of(draft.id),
                    draft.label,
                    List.of("nowhere", "battery +", "starter solenoid, at the cable from the battery"),
                    Map.of("part", draft.label, "terminal", ends.output()));
        }
        String open = ends.openReturn();
        if (open.isEmpty()) {
            return;
        }
        PartType.Earth where = type.earth();
        if (where != null) {
            boolean battery = type.kind().equals("battery");
            if (where == PartType.Earth.ENGINE && !objects.hasEngine() && !settings.saysNoStrap()) {
                onBody.add(draft);
            }
            String id = objects.wire(
                    draft.id + "." + open,
                    objects.earth(where),
                    battery ? 0.0005 : PartCatalogue.caseResistanceOhm(where));
            notes.assume(
                    battery ? Code.BATTERY_EARTH : Code.CASE_EARTH,
                    draft.at,
                    List.of(draft.id, id),
                    Notes.PRACTICE,
                    Map.of("part", draft.label, "value", objects.earth(where).replaceAll("\\..*", "")));
        }
    }

    /** A row of the table of parts that fits no part of the wires: another name for one of them, most likely. */
    private void askWhichPart(PartDraft draft) {
        List<String> choices = new ArrayList<>(List.of("none"));
        drafts.stream()
                .filter(other -> other.is(draft.kind()) && other.row == null)
                .forEach(other -> choices.add(other.label));
        notes.ask(
                Question.Code.PART_WITHOUT_WIRE,
                draft.at,
                List.of(draft.id),
                draft.label,
                choices,
                Map.of("part", draft.label));
    }

    /** What a glass fuse is marked with is asked: it matters by two to one. */
    private void askMarking(PartDraft draft, Map<String, Object> object) {
        if (object.putIfAbsent("construction", "blade") == null) {
            notes.assume(
                    Code.FUSE_CONSTRUCTION,
                    draft.at,
                    List.of(draft.id),
                    Notes.PRACTICE,
                    Map.of("part", draft.label, "value", "blade"));
        }
        if ("glass".equals(object.get("construction")) && !object.containsKey("ratedBy")) {
            notes.ask(
                    Question.Code.FUSE_MARKING,
                    draft.at,
                    List.of(draft.id),
                    "",
                    List.of("carry", "blow"),
                    Map.of("part", draft.label));
        }
    }

    private static boolean feedsMoreThanItsLamp(PartDraft draft) {
        return draft.uses.stream()
                .anyMatch(use -> !use.other().is("lamp") && !use.other().isEarth());
    }

    /** With a wire at its sense terminal its regulator measures there; the worse of what it may do without that wire is assumed. */
    private void putSense(PartDraft draft, Map<String, Object> object) {
        boolean wired = draft.uses.stream().anyMatch(use -> use.end.equals(draft.id + "." + Alternator.SENSE));
        if (wired && object.putIfAbsent("senseLost", "full-output") == null) {
            notes.assume(Code.SENSE_LOST, draft.at, List.of(draft.id), Notes.PRACTICE, Map.of("part", draft.label));
        }
    }

    /** Without a current in its field a machine gives nothing; one with no wire there has a connection of its own. */
    private void putExcitation(PartDraft draft, Map<String, Object> object, String field) {
        boolean wired = draft.uses.stream().anyMatch(use -> use.end.equals(draft.id + "." + field));
        if (object.containsKey("selfExciting") || wired) {
            return;
        }
        object.put("selfExciting", true);
        notes.assume(
                draft.is("dynamo") ? Code.DYNAMO_EXCITES_ITSELF : Code.SELF_EXCITING,
                draft.at,
                List.of(draft.id),
                Notes.PRACTICE,
                Map.of("part", draft.label));
    }

    // When it should be live.

    private void putWorksWhen(PartDraft draft) {
        Map<String, Object> object = objects.find(draft.id);
        if (object == null
                || !PartShape.properties(String.valueOf(object.get("kind"))).containsKey("meantLive")) {
            return;
        }
        TableRow row = draft.row;
        String text = row == null ? "" : row.text("works when");
        if (!text.isEmpty()) {
            Optional<WorksWhen> read = WorksWhen.read(text, switches.freePositions(), switches.labels());
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
}
