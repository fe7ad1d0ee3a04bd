package loomwright.list;

import java.util.Map;
import java.util.Optional;

/**
 * One row of a table of a list.
 *
 * @param at where it stands
 * @param cells by the catalogue's name of the column; empty cells are left out
 */
record TableRow(CellRef at, Map<String, Cell> cells) {
    TableRow {
        cells = Map.copyOf(cells);
    }

    /**
     * One cell.
     *
     * @param text as written, without blanks around it
     * @param unit that its heading names, in lower case; empty for none
     * @param heading as written
     */
    record Cell(String text, String unit, String heading) {}

    Optional<Cell> find(String column) {
        return Optional.ofNullable(cells.get(column));
    }

    String text(String column) {
        Cell cell = cells.get(column);
        return cell == null ? "" : cell.text();
    }

    CellRef at(String column) {
        Cell cell = cells.get(column);
        return at.in(cell == null ? column : cell.heading());
    }
}
