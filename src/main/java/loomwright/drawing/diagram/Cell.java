package loomwright.drawing.diagram;

import java.util.List;
import loomwright.circuit.TerminalRef;

/**
 * A symbol with its terminals and texts, not yet placed.
 *
 * @param depth how many parts lie between it and the supply
 * @param free whether its terminals may stand in any order
 * @param emphasis why it stands out
 */
record Cell(
        CellName named,
        int depth,
        double widthPx,
        double heightPx,
        DrawnBody drawn,
        List<Lead> leads,
        List<Text> texts,
        List<Badge> badges,
        boolean free,
        Emphasis emphasis) {

    /** Of two drawings of the same part that which needs more room beside it. */
    Cell wider(Cell other) {
        return other.widthPx > widthPx ? other : this;
    }

    /**
     * Where a wire comes in.
     *
     * @param x column within the cell
     */
    record Lead(End end, Side side, double x) {}

    /** One end of a wire. */
    record End(String wire, TerminalRef terminal) {}

    /**
     * What it stands for.
     *
     * @param id of the part; for an earth that of the wire that ends there
     * @param ids the parts it stands for
     */
    record CellName(String id, List<String> ids, String words) {}

    /**
     * Its symbol, and where in the cell that stands.
     *
     * @param bodyX left edge of the symbol
     * @param bodyY upper edge of the symbol
     */
    record DrawnBody(Body body, double bodyX, double bodyY) {}
}
