package loomwright.list;

import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * Tells row by row whose a row of a list is. An empty cell in the column {@code car} is that of the row above, as in merged
 * cells. Tables without such a column, and rows above the first car of a table, belong to all cars.
 */
final class CarColumn {
    static final String NAME = "car";

    private OptionalInt column = OptionalInt.empty();
    private @Nullable String latest;

    /** Whether the table that the latest row stands in tells cars apart. */
    boolean isThere() {
        return column.isPresent();
    }

    /** Whose a row is: the name as written; absent for the headings of a table, and for what belongs to all cars. */
    @Nullable
    String owner(Sheet.Row row) {
        if (ListTables.isHeader(row)) {
            column = ListTables.column(row, NAME);
            latest = null;
            return null;
        }
        if (column.isPresent() && !row.isEmpty()) {
            int index = column.getAsInt();
            String name = index < row.cells().size() ? row.cells().get(index).strip() : "";
            latest = name.isEmpty() ? latest : name;
        }
        return latest;
    }

    /** By what a car is known: its name in words of lower case. */
    static String key(String name) {
        return String.join(" ", Names.tokens(name));
    }
}
