package loomwright.list;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartType;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;

/** A starter whose solenoid sits on it: its owner lists the terminals of the solenoid as those of the starter. */
final class StarterParts {
    /** Words for terminals that only the solenoid of a starter has. */
    static final Set<String> OF_SOLENOID = Set.of("50", "50b", "15a", "16", "trigger", "small terminal", "start");

    /** Words for the case of the starter. */
    private static final Set<String> OF_CASE =
            Set.of("-", "31", "32", "e", "earth", "ground", "case", "minus", "return");

    private StarterParts() {}

    /** Gives each such starter a solenoid, to which its wires go; the solenoids by their starters. */
    static Map<PartDraft, PartDraft> split(Map<String, PartDraft> drafts, Notes notes) {
        Map<PartDraft, PartDraft> solenoids = new LinkedHashMap<>();
        for (PartDraft starter : List.copyOf(drafts.values())) {
            boolean both = starter.typeName().equals("starter")
                    && starter.exactKind == null
                    && starter.uses.stream().anyMatch(use -> OF_SOLENOID.contains(use.phrase));
            if (both) {
                starter.connectedInside = true;
                solenoids.put(starter, solenoidOf(starter, drafts));
                notes.assume(
                        Code.SOLENOID_ON_STARTER, starter.at, List.of(), Notes.PRACTICE, Map.of("part", starter.label));
            }
        }
        return solenoids;
    }

    private static PartDraft solenoidOf(PartDraft starter, Map<String, PartDraft> drafts) {
        PartType type = PartCatalogue.findType("engine-solenoid").orElseThrow();
        PartDraft solenoid = new PartDraft(starter.key + " solenoid", starter.label + " solenoid", type, starter.at);
        for (Use use : List.copyOf(starter.uses)) {
            boolean ofCase = OF_CASE.contains(use.phrase)
                    || (use.phrase.isEmpty() && use.other().isEarth());
            if (!ofCase) {
                starter.uses.remove(use);
                solenoid.uses.add(use);
                if (use.from) {
                    use.wire.from = solenoid;
                } else {
                    use.wire.to = solenoid;
                }
                if (use.phrase.isEmpty() || use.phrase.equals("+") || use.phrase.equals("in")) {
                    use.phrase = "30";
                }
            }
        }
        drafts.put(solenoid.key, solenoid);
        return solenoid;
    }
}
