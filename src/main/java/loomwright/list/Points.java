package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loomwright.list.PartDraft.Use;
import org.jspecify.annotations.Nullable;

/** Finds the points of a plan at which a meter was held, by the words of the table of wires. */
final class Points {
    private static final String EARTH = "earth";

    private final Names names;
    private final Map<String, PartDraft> drafts;
    private final Map<String, PartDraft> byExactId;
    private final Map<String, List<String>> switchPositions;
    private final Map<String, String> switchNames;

    /**
     * The points of one list.
     *
     * @param drafts its parts by the words for them, their wires ended already; empty for a plan that is no list
     * @param byExactId those that are named by their ids
     * @param switchPositions the positions of each free switch, by its id
     * @param switchNames what each of these is called
     */
    Points(
            Names names,
            Map<String, PartDraft> drafts,
            Map<String, PartDraft> byExactId,
            Map<String, List<String>> switchPositions,
            Map<String, String> switchNames) {
        this.names = names;
        this.drafts = drafts;
        this.byExactId = byExactId;
        this.switchPositions = switchPositions;
        this.switchNames = switchNames;
    }

    /** {@code part.terminal}, or {@code earth}; empty if the list has no such point. */
    Optional<String> find(String text) {
        String stripped = text.strip();
        int dot = stripped.lastIndexOf('.');
        if (dot > 0 && (drafts.isEmpty() || byExactId.containsKey(stripped.substring(0, dot)))) {
            return Optional.of(stripped);
        }
        Names.Name name = names.read(stripped);
        PartDraft draft = drafts.getOrDefault(name.key(), engine(name));
        boolean earth = name.type() != null && name.type().kind().equals(EARTH);
        if (draft == null) {
            return earth ? Optional.of(EARTH) : byId(stripped);
        }
        if (name.terminal().isEmpty()) {
            return feed(draft).or(() -> earth ? Optional.of(EARTH) : Optional.empty());
        }
        return draft.uses.stream()
                .filter(use -> use.phrase.equals(name.terminal()) && !use.end.isEmpty())
                .map(use -> use.end)
                .findFirst()
                .or(() -> terminal(draft, name.terminal()));
    }

    /** The engine by another of its names: its block, its gearbox. */
    private @Nullable PartDraft engine(Names.Name name) {
        return drafts.values().stream()
                .filter(draft -> draft.typeName().equals("engine") && Objects.equals(draft.type, name.type()))
                .findFirst()
                .orElse(null);
    }

    /** A point as the plan in the answer names it. */
    private Optional<String> byId(String text) {
        return drafts.values().stream()
                .flatMap(draft -> draft.uses.stream())
                .map(use -> use.end)
                .filter(text::equals)
                .findFirst();
    }

    /** The end of its first wire that does not lead to earth. */
    private static Optional<String> feed(PartDraft draft) {
        List<Use> uses = new ArrayList<>(draft.uses);
        return uses.stream()
                .filter(use -> !use.other().isEarth() && !use.end.isEmpty())
                .findFirst()
                .or(() -> uses.stream().filter(use -> !use.end.isEmpty()).findFirst())
                .map(use -> use.end);
    }

    private static Optional<String> terminal(PartDraft draft, String phrase) {
        if (draft.type == null) {
            return Optional.empty();
        }
        Terminals.Meaning meaning = Terminals.find(draft.type, phrase);
        return meaning.known() && !meaning.name().isEmpty()
                ? Optional.of(draft.id + "." + meaning.name())
                : Optional.empty();
    }

    /** What may have been meant, as the end of a sentence; empty if nothing is alike. */
    @Nullable
    String nearest(String text) {
        return Spelling.nearest(names.read(text).key(), drafts.keySet()).orElse(null);
    }

    /** The free switches with their positions, as one may write them. */
    List<String> switchChoices() {
        List<String> choices = new ArrayList<>();
        switchPositions.forEach(
                (id, positions) -> choices.add(switchNames.getOrDefault(id, id) + " " + String.join("/", positions)));
        return choices;
    }

    /** Free switches, each in one position; empty if some of the text is none, or leaves open which. */
    Optional<Map<String, String>> switches(String text) {
        return WorksWhen.read(text, switchPositions, switchNames).flatMap(Points::onePositionEach);
    }

    @SuppressWarnings("unchecked")
    private static Optional<Map<String, String>> onePositionEach(WorksWhen when) {
        Map<String, String> switches = new LinkedHashMap<>();
        for (Map<String, Object> alternative : when.alternatives()) {
            Map<String, List<String>> named = (Map<String, List<String>>) alternative.get("switches");
            if (named != null) {
                if (named.values().stream().anyMatch(positions -> positions.size() != 1)) {
                    return Optional.empty();
                }
                named.forEach((id, positions) -> switches.put(id, positions.get(0)));
            }
        }
        return switches.isEmpty() ? Optional.empty() : Optional.of(switches);
    }
}
