package loomwright.conductor;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Reads and checks a table file: lines {@code # key: value}, a line of column names, then rows of comma-separated cells
 * (a cell with a comma stands in double quotes, RFC 4180 section 2).
 *
 * <p>The keys {@code rising} and {@code falling} name columns that must never fall or never rise from row to row (equal
 * figures are legal: printed tables repeat them); {@code blanks} names columns that may have empty cells. Every number of every
 * table is positive.
 */
final class TableFile {
    private static final List<String> REQUIRED_KEYS = List.of("title", "source", "edition", "section", "status");
    private static final Set<String> STATUSES =
            Set.of("verified", "computed", "from memory", "common practice", "mixed");

    private final String name;
    private final Map<String, List<String>> head = new LinkedHashMap<>();
    private final List<List<String>> cells = new ArrayList<>();

    private TableFile(String name) {
        this.name = name;
    }

    /**
     * Reads one file.
     *
     * @throws IllegalStateException if the file breaks a rule above
     */
    static ReferenceTable parse(String name, List<String> lines) {
        TableFile file = new TableFile(name);
        for (String line : lines) {
            if (line.startsWith("#")) {
                file.readHead(line);
            } else if (!line.isBlank()) {
                file.cells.add(split(line));
            }
        }
        return file.toTable();
    }

    private void readHead(String line) {
        int colon = line.indexOf(':');
        String key = line.substring(1, Math.max(1, colon)).strip();
        require(!key.isEmpty(), "head line without a key: " + line);
        head.computeIfAbsent(key, k -> new ArrayList<>())
                .add(line.substring(colon + 1).strip());
    }

    private ReferenceTable toTable() {
        for (String key : REQUIRED_KEYS) {
            require(head.getOrDefault(key, List.of()).size() == 1, "needs one head line " + key);
        }
        require(STATUSES.contains(head("status")), "unknown status " + head("status"));
        require(cells.size() > 1, "no rows");
        List<String> names = cells.get(0);
        List<List<String>> rows = cells.subList(1, cells.size());
        checkShape(names, rows);
        List<ReferenceTable.Column> columns = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            columns.add(new ReferenceTable.Column(names.get(i), isNumeric(rows, i)));
        }
        ReferenceTable table = new ReferenceTable(
                name,
                head("title"),
                head("source"),
                head("edition"),
                head("section"),
                head("status"),
                head.getOrDefault("note", List.of()),
                columns,
                rows);
        checkPositive(table);
        checkOrder(table, words("rising"), 1);
        checkOrder(table, words("falling"), -1);
        return table;
    }

    private void checkShape(List<String> names, List<List<String>> rows) {
        List<String> blanks = words("blanks");
        Set<String> keys = new HashSet<>();
        for (List<String> row : rows) {
            require(row.size() == names.size(), "row of another width: " + row);
            for (int i = 0; i < row.size(); i++) {
                require(!row.get(i).isBlank() || blanks.contains(names.get(i)), "blank cell in " + row);
            }
            require(keys.add(row.get(0) + "," + row.get(1)), "row twice: " + row);
        }
    }

    private void checkPositive(ReferenceTable table) {
        for (ReferenceTable.Column column : table.columns()) {
            for (List<String> row : table.rows()) {
                if (column.numeric() && !table.getCell(row, column.name()).isBlank()) {
                    require(table.getNumber(row, column.name()) > 0, "not positive in " + row);
                }
            }
        }
    }

    private void checkOrder(ReferenceTable table, List<String> columns, int sign) {
        for (String column : columns) {
            double before = sign * -Double.MAX_VALUE;
            for (List<String> row : table.rows()) {
                if (!table.getCell(row, column).isBlank()) {
                    double value = table.getNumber(row, column);
                    require(sign * value >= sign * before, column + " is out of order in " + row);
                    before = value;
                }
            }
        }
    }

    private static boolean isNumeric(List<List<String>> rows, int column) {
        return rows.stream().map(row -> row.get(column)).allMatch(cell -> cell.isBlank() || cell.matches("[0-9.]+"));
    }

    private static List<String> split(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    private String head(String key) {
        return head.getOrDefault(key, List.of("")).get(0);
    }

    private List<String> words(String key) {
        return head.containsKey(key) ? List.of(head(key).split(" ")) : List.of();
    }

    private void require(boolean holds, String what) {
        if (!holds) {
            throw new IllegalStateException("table " + name + ": " + what);
        }
    }
}
