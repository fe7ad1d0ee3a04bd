package loomwright.drawing.diagram;

/** Why a wire or part stands out. */
public enum Emphasis {
    NONE,
    /** It is on the way of a backfeed. */
    BACKFEED,
    /** It is not as in the other plan. */
    CHANGED
}
