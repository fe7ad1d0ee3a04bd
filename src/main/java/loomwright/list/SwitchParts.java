package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartType;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;

/** The switches of a list, and which positions the free ones have. */
final class SwitchParts {
    private final PlanObjects objects;
    private final ListTables tables;
    private final Notes notes;
    private final Map<String, List<String>> freePositions = new LinkedHashMap<>();
    private final Map<String, String> labels = new LinkedHashMap<>();

    SwitchParts(PlanObjects objects, ListTables tables, Notes notes) {
        this.objects = objects;
        this.tables = tables;
        this.notes = notes;
    }

    /** By id of a switch that the operator sets: its positions. */
    Map<String, List<String>> freePositions() {
        return freePositions;
    }

    /** By id of a switch: what the owner calls it. */
    Map<String, String> labels() {
        return labels;
    }

    List<TableRow> positionRows(PartDraft draft) {
        return tables.rows(TableKind.POSITIONS).stream()
                .filter(row -> row.text("switch").equals(draft.id)
                        || String.join(" ", Names.tokens(row.text("switch"))).equals(draft.key))
                .toList();
    }

    /** The switch as the plan has it. */
    Map<String, Object> build(PartDraft draft) {
        List<Use> lights = new ArrayList<>();
        if (draft.typeName().equals("key")) {
            draft.uses.stream().filter(SwitchParts::isLightTerminal).forEach(lights::add);
        }
        List<Use> own = new ArrayList<>(draft.uses);
        own.removeAll(lights);
        SwitchPart part = new SwitchPart(draft, notes, positionRows(draft));
        own.forEach(use -> use.end = draft.id + "." + part.terminal(use));
        Map<String, Object> object = objects.add("switch", draft.id, draft.label, draft.at);
        if (part.needsEarth()) {
            part.earthed();
            PartType.Earth where =
                    draft.type == null || draft.type.earth() == null ? PartType.Earth.BODY : draft.type.earth();
            String id = objects.wire(
                    draft.id + "." + SwitchPart.CASE, objects.earth(where), PartCatalogue.caseResistanceOhm(where));
            notes.assume(
                    Code.SWITCH_EARTH, draft.at, List.of(draft.id, id), Notes.PRACTICE, Map.of("part", draft.label));
        }
        part.completeTerminals();
        part.put(object, positionsText(draft));
        draft.values.forEach(values -> values.in("A").ifPresent(a -> object.put("ratingA", a)));
        remember(draft, object);
        if (object.containsKey("positionByCondition")) {
            freePositions.remove(draft.id);
        }
        if (!lights.isEmpty()) {
            splitLights(draft, lights);
        }
        return object;
    }

    private static boolean isLightTerminal(Use use) {
        return draftFindsOnlyAsLights(use.phrase);
    }

    private static boolean draftFindsOnlyAsLights(String phrase) {
        return PartCatalogue.switchTerminals("lighting-switch").stream()
                .anyMatch(terminal ->
                        !terminal.terminal().equals("30") && terminal.terminal().equals(phrase));
    }

    private static String positionsText(PartDraft draft) {
        TableRow row = draft.row;
        if (row == null) {
            return "";
        }
        String positions = row.text("positions");
        return positions.isEmpty() && row.text("value").contains("/") ? row.text("value") : positions;
    }

    /** A key that switches the lights as well is calculated as two switches on one feed. */
    private void splitLights(PartDraft key, List<Use> lights) {
        PartType type = PartCatalogue.findType("lighting-switch").orElseThrow();
        PartDraft draft = new PartDraft(key.key + " lights", key.label + ", lights", type, key.at);
        draft.id = objects.derived(key.id, "-lights");
        SwitchPart part = new SwitchPart(draft, notes, List.of());
        lights.forEach(use -> use.end = draft.id + "." + part.terminal(use));
        Use feed = new Use(lights.get(0).wire, false, "30");
        String fed = draft.id + "." + part.terminal(feed);
        Map<String, Object> object = objects.add("switch", draft.id, draft.label, key.at);
        part.put(object, "");
        remember(draft, object);
        String id = objects.wire(key.id + ".30", fed, 0.001);
        notes.assume(
                Code.KEY_LIGHTS_SPLIT,
                key.at,
                List.of(key.id, draft.id, id),
                Notes.PRACTICE,
                Map.of("part", key.label));
    }

    @SuppressWarnings("unchecked")
    void remember(PartDraft draft, Map<String, Object> object) {
        Object positions = object.get("positions");
        if (positions instanceof List<?> list) {
            freePositions.put(
                    draft.id,
                    ((List<Map<String, Object>>) list)
                            .stream().map(p -> String.valueOf(p.get("name"))).toList());
            labels.put(draft.id, draft.label);
        }
    }
}
