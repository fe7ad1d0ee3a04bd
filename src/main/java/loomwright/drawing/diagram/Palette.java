package loomwright.drawing.diagram;

/** Colours that more than one kind of thing is drawn in. */
final class Palette {
    static final String INK = "#1c1c1c";
    static final String PAPER = "#ffffff";
    static final String CHANGED_INK = "#283593";
    static final String REMOVED_INK = "#7a3b00";
    static final String FED_INK = "#8c0048";

    private Palette() {}
}
