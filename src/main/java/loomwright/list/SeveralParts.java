package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartType;
import loomwright.list.Assumption.Code;
import loomwright.list.Draft.Use;

/** One thing of an owner that is several parts of the plan: a fuse box, a pair of diodes, a dynamo with its cut-out. */
final class SeveralParts {
    /** A bar that joins them (common practice, no source). */
    private static final double BAR_OHM = 0.0005;

    private final PlanObjects objects;
    private final Settings settings;
    private final Notes notes;

    SeveralParts(PlanObjects objects, Settings settings, Notes notes) {
        this.objects = objects;
        this.settings = settings;
        this.notes = notes;
    }

    void fuseBox(Draft draft) {
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

    void diodePair(Draft draft) {
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

    /** A dynamo without a control box has its cut-out on itself: what leaves it for the battery goes through that. */
    void cutOutOf(Draft dynamo) {
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
