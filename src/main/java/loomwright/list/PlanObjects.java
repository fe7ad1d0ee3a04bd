package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.catalogue.PartType;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;
import org.jspecify.annotations.Nullable;

/** The parts of the plan document while they are made, with the wires that nobody listed and the places on the chassis. */
final class PlanObjects {
    private static final int MAX_ID = 40;

    private final Notes notes;
    private final Set<String> ids;
    private final List<Map<String, Object>> objects = new ArrayList<>();
    private final Map<String, CellRef> places = new LinkedHashMap<>();
    private final List<Map<String, Object>> extraWires = new ArrayList<>();
    private final Map<PartType.Earth, String> earths = new LinkedHashMap<>();

    /** Whether the owner says that no strap joins engine and body. */
    private final boolean strapMissing;

    PlanObjects(Notes notes, Set<String> ids, boolean strapMissing) {
        this.notes = notes;
        this.ids = ids;
        this.strapMissing = strapMissing;
    }

    List<Map<String, Object>> list() {
        return List.copyOf(objects);
    }

    List<Map<String, Object>> extraWires() {
        return List.copyOf(extraWires);
    }

    /** Where each part, and each property with a cell of its own, comes from, by JSON pointer. */
    Map<String, CellRef> places() {
        return Map.copyOf(places);
    }

    Map<String, Object> add(String kind, String id, String label, CellRef at) {
        Map<String, Object> object = new LinkedHashMap<>();
        object.put("kind", kind);
        object.put("id", id);
        if (!label.isEmpty()) {
            object.put("label", label);
        }
        places.put("/parts/" + objects.size(), at);
        objects.add(object);
        return object;
    }

    /** Puts a property that has a cell of its own. */
    void put(Map<String, Object> object, String property, Object value, CellRef at) {
        object.put(property, value);
        places.put("/parts/" + objects.indexOf(object) + "/" + property, at);
    }

    @Nullable
    Map<String, Object> find(String id) {
        return objects.stream().filter(o -> id.equals(o.get("id"))).findFirst().orElse(null);
    }

    void joint(PartDraft draft) {
        Map<String, Object> object = add("joint", draft.id, draft.label, draft.at);
        object.put("terminals", List.of("1"));
        draft.uses.forEach(use -> use.end = draft.id + ".1");
    }

    void earthPoint(PartDraft draft, List<PartDraft> drafts) {
        if (isEngineBesideBody(draft, drafts)) {
            joint(draft);
        } else {
            add("earth", draft.id, draft.label, draft.at);
            draft.uses.forEach(use -> use.end = draft.id + ".31");
        }
    }

    /** An engine with a strap of its own to the chassis or the battery is not the chassis. */
    static boolean isEngineBesideBody(PartDraft draft, List<PartDraft> drafts) {
        boolean chassis =
                drafts.stream().anyMatch(d -> d.isEarth() && !d.typeName().equals("engine") && !d.uses.isEmpty());
        return draft.typeName().equals("engine") && chassis;
    }

    void findEarths(List<PartDraft> drafts) {
        for (PartDraft draft : drafts) {
            if (draft.isEarth() && !draft.uses.isEmpty()) {
                PartType.Earth earth = draft.typeName().equals("engine") ? PartType.Earth.ENGINE : PartType.Earth.BODY;
                boolean joint = isEngineBesideBody(draft, drafts);
                earths.putIfAbsent(earth, draft.id + (joint ? ".1" : ".31"));
            }
        }
    }

    /** Whether the engine is somewhere of its own, and not taken to be one with the body. */
    boolean hasEngine() {
        return earths.containsKey(PartType.Earth.ENGINE);
    }

    /** The place on the chassis where a part is earthed through its case; made if the list has none. */
    String earth(PartType.Earth wanted) {
        String own = earths.get(wanted);
        if (own != null) {
            return own;
        }
        if (wanted == PartType.Earth.ENGINE && strapMissing) {
            String engine = free("engine");
            add("joint", engine, "Engine", new CellRef("", 0, "")).put("terminals", List.of("1"));
            earths.put(PartType.Earth.ENGINE, engine + ".1");
            return engine + ".1";
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

    /** Where the case of a part is bolted down. */
    private static final String CASE = ".31";

    private String free(String wanted) {
        String id = wanted;
        for (int i = 2; !ids.add(id); i++) {
            id = wanted + "-" + i;
        }
        return id;
    }

    /** A free id that begins like another. */
    String derived(String id, String ending) {
        return free(id.substring(0, Math.min(id.length(), MAX_ID - 6 - ending.length())) + ending);
    }

    /** A wire that nobody listed, of small resistance: a case that is bolted down, a bar in a fuse box. */
    String wire(String from, String to, double resistanceOhm) {
        boolean bolted = earths.containsValue(to) || to.endsWith(CASE);
        String id = derived(from.substring(0, from.indexOf('.')), bolted ? "-earth" : "-bar");
        Map<String, Object> wire = new LinkedHashMap<>();
        wire.put("id", id);
        wire.put("from", from);
        wire.put("to", to);
        wire.put("resistanceOhm", resistanceOhm);
        extraWires.add(wire);
        return id;
    }

    /** The stud and bar between a starter and the solenoid on it: short and stout (common practice, no source). */
    void stud(String from, String to, String starter) {
        Map<String, Object> wire = new LinkedHashMap<>();
        wire.put("id", derived(starter, "-stud"));
        wire.put("from", from);
        wire.put("to", to);
        wire.put("size", "25 mm2");
        wire.put("lengthM", 0.1);
        extraWires.add(wire);
    }

    /** An end that the model has no terminal for: it is insulated. */
    void loose(PartDraft draft, Use use) {
        String name = use.phrase.isEmpty() ? "1" : SwitchPart.cleaned(use.phrase.toUpperCase(Locale.ROOT));
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
}
