package loomwright.drawing.diagram;

/** Why a wire or part stands out. */
public enum Emphasis {
    NONE,
    /** It is on the way of a backfeed. */
    BACKFEED,
    /** It is in both plans, but not as in the other. */
    CHANGED,
    /** It is in the plan after only. */
    ADDED,
    /** It is in the plan before only. */
    REMOVED;

    boolean isChange() {
        return this == CHANGED || this == ADDED || this == REMOVED;
    }
}
