package loomwright.drawing.diagram;

import java.util.List;
import loomwright.message.MessageCode;

/**
 * Something to point out in a drawing: a number at the things it is about, and a line in the legend.
 *
 * @param number shown in the drawing
 * @param code of the finding, or how a thing changed
 * @param ids parts and wires
 * @param text the whole sentence
 * @param shortText the same in a few words, for the legend of a picture
 */
public record Mark(Kind kind, int number, String code, List<String> ids, String text, String shortText) {
    public Mark {
        ids = List.copyOf(ids);
    }

    /** What sort of mark. */
    public enum Kind implements MessageCode {
        DANGER,
        WARNING,
        NOTE,
        BACKFEED,
        /** In the plan after only. */
        ADDED,
        /** In the plan before only. */
        REMOVED,
        /** Not as in the other plan. */
        CHANGED;

        boolean isChange() {
            return this == ADDED || this == REMOVED || this == CHANGED;
        }
    }
}
