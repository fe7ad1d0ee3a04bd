package loomwright.list;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loomwright.list.PartDraft.Use;

/**
 * Parts that a list names in two ways: a fuse with and without its rating, a switch with a mark that only its owner knows, an
 * engine and its block.
 */
final class SameParts {
    private static final Pattern RATED = Pattern.compile("(.+) \\d+(?:[.,]\\d)?a");
    private static final Pattern MARKED = Pattern.compile("(.+) ([a-z][a-z0-9]?|1[79]|[4-8][0-9][a-e]?)");
    private static final Set<String> SIDES = Set.of("l", "r", "lh", "rh");

    private final Map<String, PartDraft> drafts;

    private SameParts(Map<String, PartDraft> drafts) {
        this.drafts = drafts;
    }

    /** Makes one part of each such pair, and removes the other from the parts by their names. */
    static void join(Map<String, PartDraft> drafts) {
        SameParts same = new SameParts(drafts);
        for (PartDraft draft : List.copyOf(drafts.values())) {
            same.joinFuse(draft);
            same.joinSwitch(draft);
        }
        same.joinEngine();
    }

    /** Engine, engine block and gearbox: one piece of metal, if no wire of the list joins them. */
    private void joinEngine() {
        List<PartDraft> names = drafts.values().stream()
                .filter(draft -> draft.typeName().equals("engine") && draft.exactKind == null)
                .toList();
        PartDraft whole = names.stream()
                .min(Comparator.comparing((PartDraft draft) -> draft.row == null)
                        .thenComparing(draft -> !draft.key.equals("engine")))
                .orElse(null);
        for (PartDraft part : names) {
            boolean apart = part.row != null || part.uses.stream().anyMatch(use -> names.contains(use.other()));
            if (whole != null && part != whole && !apart) {
                whole.absorb(part);
                drafts.remove(part.key);
            }
        }
    }

    /** "15A fuse" on one row and "fuse" on the next, if no other fuse has its rating for a name. */
    private void joinFuse(PartDraft rated) {
        Matcher name = RATED.matcher(rated.key);
        if (!rated.is("fuse") || rated.row != null || !name.matches()) {
            return;
        }
        PartDraft plain = drafts.get(name.group(1));
        boolean only = drafts.keySet().stream()
                        .filter(key -> RATED.matcher(key).matches() && key.startsWith(name.group(1) + " "))
                        .count()
                == 1;
        if (plain != null && only) {
            plain.absorb(rated);
            drafts.remove(rated.key);
        }
    }

    /** "key switch H" beside "key switch B": the catalogue does not know H, but it is a mark on the same switch. */
    private void joinSwitch(PartDraft marked) {
        Matcher name = MARKED.matcher(marked.key);
        if (!marked.is("switch") || marked.row != null || !name.matches() || SIDES.contains(name.group(2))) {
            return;
        }
        PartDraft whole = drafts.get(name.group(1));
        if (whole == null || whole.type == null || !whole.type.equals(marked.type)) {
            return;
        }
        boolean hasMarks = !Terminals.switchRows(whole.type).equals("switch");
        if (hasMarks && marked.uses.stream().allMatch(use -> use.phrase.isEmpty())) {
            String mark = marked.label.substring(marked.label.lastIndexOf(' ') + 1);
            for (Use use : marked.uses) {
                use.phrase = mark;
            }
            whole.absorb(marked);
            drafts.remove(marked.key);
        }
    }
}
