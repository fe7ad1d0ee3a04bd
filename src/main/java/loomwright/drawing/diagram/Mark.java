package loomwright.drawing.diagram;

import java.util.List;
import java.util.Locale;

/**
 * Something to point out in a drawing: a number at the things it is about, and a sentence in the legend.
 *
 * @param number shown in the drawing
 * @param ids parts and wires
 * @param text the sentence
 */
public record Mark(Kind kind, int number, List<String> ids, String text) {
    public Mark {
        ids = List.copyOf(ids);
    }

    /** What sort of mark. */
    public enum Kind {
        DANGER,
        WARNING,
        NOTE,
        BACKFEED,
        /** Only in this plan of two. */
        ONLY_HERE,
        /** Not as in the other plan. */
        CHANGED;

        boolean isChange() {
            return this == ONLY_HERE || this == CHANGED;
        }

        String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }
}
