package loomwright.drawing.diagram;

/** The side of a symbol that a terminal is on. */
enum Side {
    /** Towards the supply. */
    TOP,
    /** Towards the earths. */
    BOTTOM
}
