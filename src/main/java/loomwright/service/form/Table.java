package loomwright.service.form;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The table of an answer.
 *
 * @param columns names with units, as in the contract
 * @param rows one value per column: number, text, truth value, or null for an empty cell
 */
public record Table(List<String> columns, List<List<@Nullable Object>> rows) {
    public Table {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (List<@Nullable Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException("a row of " + row.size() + " under " + columns.size() + " columns");
            }
        }
    }

    /** As comma-separated values (RFC 4180), header first. */
    public String csv() {
        StringBuilder out = new StringBuilder();
        writeRow(out, columns);
        rows.forEach(row -> writeRow(out, row));
        return out.toString();
    }

    /** Appends one row of comma-separated values. */
    public static void writeRow(StringBuilder out, List<? extends @Nullable Object> cells) {
        String separator = "";
        for (Object cell : cells) {
            out.append(separator).append(cell(cell));
            separator = ",";
        }
        out.append("\r\n");
    }

    private static String cell(@Nullable Object value) {
        if (value == null) {
            return "";
        }
        if (value instanceof Number number) {
            return CellNumbers.text(number.doubleValue());
        }
        String text = value instanceof Enum<?> word ? EnumWords.of(word) : value.toString();
        // A spreadsheet would run a text that begins like a formula.
        String safe = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
        return safe.matches("[^\",\r\n]*") ? safe : '"' + safe.replace("\"", "\"\"") + '"';
    }
}
