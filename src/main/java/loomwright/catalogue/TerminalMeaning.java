package loomwright.catalogue;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A terminal of a kind of part, or a mark that has more than one meaning there.
 *
 * @param words what an owner calls it, its mark first
 * @param terminal its name in the plan document; absent if the mark has two meanings, so that the owner must say which
 * @param meaning what it is
 * @param choices the meanings to choose from; empty if there is one
 * @param source where the mark is from
 * @param status how far it was compared with the source
 */
public record TerminalMeaning(
        List<String> words,
        @Nullable String terminal,
        String meaning,
        List<String> choices,
        String source,
        String status) {
    public TerminalMeaning {
        words = List.copyOf(words);
        choices = List.copyOf(choices);
    }
}
