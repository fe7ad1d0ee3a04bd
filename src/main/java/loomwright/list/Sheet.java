package loomwright.list;

import java.util.List;

/**
 * A sheet of cells as it stands in a file.
 *
 * @param name of the worksheet; empty in a text
 * @param rows those that have cells
 */
public record Sheet(String name, List<Row> rows) {
    public Sheet {
        rows = List.copyOf(rows);
    }

    /**
     * One row.
     *
     * @param number as the program that made the file counts it, from 1
     * @param cells as text, from the first column; empty text for an empty cell
     */
    public record Row(int number, List<String> cells) {
        public Row {
            cells = List.copyOf(cells);
        }

        boolean isEmpty() {
            return cells.stream().allMatch(String::isBlank);
        }
    }
}
