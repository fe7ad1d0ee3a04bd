package loomwright.drawing.diagram;

import loomwright.drawing.TextWidth;

/**
 * A text in one line.
 *
 * @param owner id of the part or wire it belongs to; empty for none
 * @param x its left end
 * @param baseline where its letters stand
 */
public record Text(String owner, Role role, double x, double baseline, String text) {
    private static final double ASCENT = 0.78;
    private static final double DESCENT = 0.22;

    /** What a text is for: decides its size and weight. */
    public enum Role {
        TITLE(17, true),
        SUBTITLE(12, false),
        /** A part's name. */
        NAME(11, true),
        /** What a part or wire is. */
        DATA(9.5, false),
        /** What a meter shows. */
        READING(10, false),
        TERMINAL(9.5, true),
        VOLTS(9.5, false),
        WIRE(10.5, true),
        AMPS(10.5, true),
        /** The number of a sheet on the overview of all: read where the rest is too small, on one page of paper. */
        SHEET_NUMBER(56, true),
        LEGEND(11, false),
        LEGEND_HEAD(11, true);

        private final double sizePx;
        private final boolean bold;

        Role(double sizePx, boolean bold) {
            this.sizePx = sizePx;
            this.bold = bold;
        }

        double sizePx() {
            return sizePx;
        }

        boolean bold() {
            return bold;
        }

        double widthPx(String text) {
            return bold ? TextWidth.ofBold(text, sizePx) : TextWidth.of(text, sizePx);
        }
    }

    /** The room it takes. */
    public Rect rect() {
        double size = role.sizePx();
        return new Rect(x, baseline - ASCENT * size, role.widthPx(text), (ASCENT + DESCENT) * size);
    }

    Text moved(double dx, double dy) {
        return new Text(owner, role, x + dx, baseline + dy, text);
    }
}
