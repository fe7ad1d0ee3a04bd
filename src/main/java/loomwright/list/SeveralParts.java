package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartType;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;

/** One thing of an owner that is several parts of the plan: a fuse box, a pair of diodes, a bulb with two filaments, a dynamo with its cut-out. */
final class SeveralParts {
    /** A bar that joins them (common practice, no source). */
    private static final double BAR_OHM = 0.0005;

    /** What the leads of a bulb with two filaments are called: the brighter one, the other, the common return. */
    static final Set<String> FIRST =
            Set.of("56a", "main", "main beam", "high", "high beam", "stop", "brake", "54", "1");

    static final Set<String> SECOND =
            Set.of("56b", "dip", "dipped", "dipped beam", "low", "low beam", "tail", "side", "58", "2");
    static final Set<String> EARTHS = Set.of("31", "earth", "ground", "-", "case", "e");

    private final PlanObjects objects;
    private final Settings settings;
    private final Notes notes;

    SeveralParts(PlanObjects objects, Settings settings, Notes notes) {
        this.objects = objects;
        this.settings = settings;
        this.notes = notes;
    }

    void fuseBox(PartDraft draft) {
        Set<String> outs = new LinkedHashSet<>();
        for (Use use : draft.uses) {
            if (!isInput(use)) {
                outs.add(number(use.phrase));
            }
        }
        List<String> fuses = new ArrayList<>();
        for (String out : outs.isEmpty() ? List.of("1") : List.copyOf(outs)) {
            PartDraft fuse = new PartDraft(
                    draft.key + " " + out,
                    draft.label + " " + out,
                    PartCatalogue.findType("fuse").orElseThrow(),
                    draft.at);
            fuse.id = objects.derived(draft.id, "-" + out);
            for (Use use : draft.uses) {
                if (!isInput(use) && number(use.phrase).equals(out)) {
                    use.end = fuse.id + ".b";
                    fuse.uses.add(use);
                }
            }
            fuse.values.addAll(draft.values);
            Map<String, Object> object = objects.add("fuse", fuse.id, fuse.label, draft.at);
            new PartValues(fuse, object, settings.nominalV(), false, notes).put();
            fuses.add(fuse.id);
        }
        for (int i = 1; i < fuses.size(); i++) {
            objects.wire(fuses.get(0) + ".a", fuses.get(i) + ".a", BAR_OHM);
        }
        draft.uses.stream().filter(SeveralParts::isInput).forEach(use -> use.end = fuses.get(0) + ".a");
    }

    void diodePair(PartDraft draft) {
        List<String> pair = new ArrayList<>();
        for (String number : List.of("1", "2")) {
            String id = objects.derived(draft.id, "-" + number);
            Map<String, Object> object = objects.add("diode", id, draft.label + " " + number, draft.at);
            draft.values.forEach(values -> {
                values.in("V").ifPresent(v -> object.put("forwardV", v));
                values.in("A").ifPresent(a -> object.put("ratingA", a));
            });
            pair.add(id);
        }
        objects.wire(pair.get(0) + ".anode", pair.get(1) + ".anode", BAR_OHM);
        for (Use use : draft.uses) {
            boolean second = number(use.phrase).equals("2");
            use.end = isInput(use) ? pair.get(0) + ".anode" : pair.get(second ? 1 : 0) + ".cathode";
        }
    }

    /** A bulb with two filaments: two lamps, whose returns meet in its base before they come to the one earth. */
    void twinLamp(PartDraft draft, PartType.Earth earth) {
        boolean head = draft.typeName().equals("twin-headlamp");
        List<String> names = head ? List.of("main", "dip") : List.of("stop", "tail");
        List<String> types = head ? List.of("headlamp", "headlamp-dip") : List.of("stop-lamp", "tail-lamp");
        String base = objects.derived(draft.id, "-base");
        List<String> filaments = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            PartDraft filament = new PartDraft(
                    draft.key + " " + names.get(i),
                    draft.label + " " + names.get(i),
                    PartCatalogue.findType(types.get(i)).orElseThrow(),
                    draft.at);
            filament.id = objects.derived(draft.id, "-" + names.get(i));
            filament.values.addAll(draft.values);
            Map<String, Object> object = objects.add("lamp", filament.id, filament.label, draft.at);
            new PartValues(filament, object, settings.nominalV(), false, notes).put();
            objects.wire(filament.id + ".b", base + "." + (i + 1), BAR_OHM);
            filaments.add(filament.id);
        }
        objects.add("joint", base, draft.label + " base", draft.at).put("terminals", List.of("1", "2", "31"));
        boolean earthed = false;
        int unnamed = 0;
        for (Use use : draft.uses) {
            if (use.other().isEarth() || EARTHS.contains(use.phrase)) {
                use.end = base + ".31";
                earthed = true;
            } else {
                boolean second = use.phrase.isEmpty() ? unnamed++ > 0 : SECOND.contains(use.phrase);
                use.end = filaments.get(second ? 1 : 0) + ".a";
            }
        }
        if (!earthed) {
            String wire = objects.wire(base + ".31", objects.earth(earth), PartCatalogue.caseResistanceOhm(earth));
            notes.assume(
                    Code.CASE_EARTH,
                    draft.at,
                    List.of(base, wire),
                    Notes.PRACTICE,
                    Map.of("part", draft.label, "value", objects.earth(earth).replaceAll("\\..*", "")));
        }
    }

    /** A dynamo without a control box has its cut-out on itself: what leaves it for the battery goes through that. */
    void cutOutOf(PartDraft dynamo) {
        String armature = dynamo.id + ".D";
        List<Use> outputs = dynamo.uses.stream()
                .filter(use -> use.end.equals(armature) && !use.other().is("lamp"))
                .toList();
        if (outputs.isEmpty()) {
            return;
        }
        String id = objects.derived(dynamo.id, "-cut-out");
        objects.add("control-box", id, dynamo.label + ", cut-out", dynamo.at);
        String joined = objects.wire(armature, id + ".D", BAR_OHM);
        String earthed = objects.wire(
                id + ".E",
                objects.earth(PartType.Earth.ENGINE),
                PartCatalogue.caseResistanceOhm(PartType.Earth.ENGINE));
        outputs.forEach(use -> use.end = id + ".A");
        notes.assume(
                Code.CUT_OUT_ON_DYNAMO,
                dynamo.at,
                List.of(dynamo.id, id, joined, earthed),
                Notes.PRACTICE,
                Map.of("part", dynamo.label));
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
}
