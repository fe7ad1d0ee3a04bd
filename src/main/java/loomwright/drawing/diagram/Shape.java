package loomwright.drawing.diagram;

/**
 * One stroke or area of a symbol.
 *
 * @param path in the notation of SVG, from the symbol's upper left corner
 */
record Shape(String path, Paint paint) {

    /** How a stroke or area looks. */
    enum Paint {
        LINE,
        THICK,
        /** A line of the mechanics: what moves together. */
        LINKAGE,
        /** A line around things that are one part. */
        CASE,
        SOLID,
        /** White inside. */
        BODY,
        /** The part works. */
        LIT
    }
}
