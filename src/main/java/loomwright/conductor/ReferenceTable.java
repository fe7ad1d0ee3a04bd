package loomwright.conductor;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;

/**
 * A published table as the service carries it.
 *
 * @param name the name under which it is found; unique, in lower case
 * @param title what the figures are
 * @param source the standard or book
 * @param edition its edition
 * @param section where in it
 * @param status how far the figures were compared with the source: "verified", "computed", "from memory", "common
 *     practice", or "mixed" where each row says so itself
 * @param notes what a reader must know before using a figure
 * @param columns the columns, each unit in its name
 * @param rows the cells as printed, one list per row in the order of the columns; "" where nothing is recorded
 */
public record ReferenceTable(
        String name,
        String title,
        String source,
        String edition,
        String section,
        String status,
        List<String> notes,
        List<Column> columns,
        List<List<String>> rows) {

    /** One column; numeric if every cell that is not blank is a number. */
    public record Column(String name, boolean numeric) {}

    public ReferenceTable {
        notes = List.copyOf(notes);
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** The row whose first cell is {@code key}. */
    public Optional<List<String>> findRow(String key) {
        return rows.stream().filter(row -> row.get(0).equals(key)).findFirst();
    }

    /** The cell of {@code row} in the column named {@code column}. */
    public String getCell(List<String> row, String column) {
        return row.get(indexOf(column));
    }

    /** As {@link #getCell}, as a number; the cell must not be blank. */
    public double getNumber(List<String> row, String column) {
        return Double.parseDouble(getCell(row, column));
    }

    /** True if there is such a column. */
    public boolean hasColumn(String column) {
        return columns.stream().anyMatch(c -> c.name().equals(column));
    }

    /** Where a figure of this table comes from; a mixed table counts as remembered. */
    public Basis basis(String rule) {
        return new Basis(rule, citation(), statusOf(status));
    }

    /** Where a figure of this row comes from: the row's own status goes before that of the table. */
    public Basis basis(String rule, List<String> row) {
        String own = hasColumn("status") ? getCell(row, "status") : status;
        return new Basis(rule, citation(), statusOf(own));
    }

    /** Source, edition and section in one line. */
    public String citation() {
        return source + ", " + edition + ", " + section;
    }

    private int indexOf(String column) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).name().equals(column)) {
                return i;
            }
        }
        throw new IllegalArgumentException("table " + name + " has no column " + column);
    }

    /** A row that is partly remembered counts as remembered. */
    private static Basis.Status statusOf(String words) {
        if (words.contains("from memory") || words.equals("mixed")) {
            return Basis.Status.FROM_MEMORY;
        }
        if (words.startsWith("verified")) {
            return Basis.Status.VERIFIED;
        }
        return words.equals("computed") ? Basis.Status.COMPUTED : Basis.Status.COMMON_PRACTICE;
    }
}
