package loomwright.list;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import loomwright.list.Columns.Candidate;
import loomwright.list.Columns.Heading;
import org.jspecify.annotations.Nullable;

/**
 * Finds the tables in the cells of a list: each begins with a row of headings and ends where the next one begins. Titles,
 * sentences, empty rows and rows of totals are no rows of a table.
 */
final class ListTables {
    /** Settings that people write above the first table, without a heading. */
    private static final Set<String> BARE_SETTINGS = Set.of("voltage", "earth", "ground", "polarity", "name", "system");

    private static final Pattern TOTAL = Pattern.compile("(grand |sub)?(totals?|sums?)( .*)?|in all");

    private static final Set<String> NUMBERS =
            Set.of("no", "nr", "number", "num", "#", "ref", "wire no", "wire number");

    private final Map<TableKind, List<TableRow>> rows = new EnumMap<>(TableKind.class);
    private final Map<TableKind, Set<String>> columns = new EnumMap<>(TableKind.class);
    private final List<String> sentences = new ArrayList<>();
    private final List<CellRef> unknownColumns = new ArrayList<>();
    private final List<CellRef> rowsWithoutEnds = new ArrayList<>();

    private ListTables() {}

    static ListTables of(ListSource source) {
        ListTables tables = new ListTables();
        tables.sentences.addAll(source.sentences());
        for (Sheet sheet : source.sheets()) {
            int said = tables.sentences.size();
            boolean isTable = tables.read(sheet);
            if (!isTable && source.sheets().size() > 1) {
                // A worksheet of answers or of notes says nothing about the vehicle.
                tables.sentences.subList(said, tables.sentences.size()).clear();
            }
        }
        return tables;
    }

    /** How much of a source is understood as tables, to choose between readings of one text. */
    static int recognised(ListSource source) {
        int score = 0;
        for (Sheet sheet : source.sheets()) {
            for (Sheet.Row row : sheet.rows()) {
                Optional<Header> header = Header.find(row);
                score += header.map(h -> 100 + h.headings.size()).orElse(0);
            }
        }
        return score;
    }

    /** Whether a row is the headings of a table. */
    static boolean isHeader(Sheet.Row row) {
        return Header.find(row).isPresent();
    }

    /** Where a row of headings has a column; empty if it has no such column. */
    static OptionalInt column(Sheet.Row row, String name) {
        return Header.find(row).stream()
                .flatMap(header -> header.headings.entrySet().stream())
                .filter(each -> each.getValue().column().equals(name))
                .mapToInt(Map.Entry::getKey)
                .findFirst();
    }

    List<TableRow> rows(TableKind kind) {
        return rows.getOrDefault(kind, List.of());
    }

    boolean has(TableKind kind) {
        return columns.containsKey(kind);
    }

    boolean hasColumn(TableKind kind, String column) {
        return columns.getOrDefault(kind, Set.of()).contains(column);
    }

    List<String> sentences() {
        return List.copyOf(sentences);
    }

    List<CellRef> unknownColumns() {
        return List.copyOf(unknownColumns);
    }

    /** Rows of the table of wires with something in them, but neither from nor to. */
    List<CellRef> rowsWithoutEnds() {
        return List.copyOf(rowsWithoutEnds);
    }

    /** Whether there is a table in it. */
    private boolean read(Sheet sheet) {
        Header header = null;
        for (Sheet.Row row : sheet.rows()) {
            if (row.isEmpty()) {
                continue;
            }
            Optional<Header> found = Header.find(row);
            if (found.isPresent()) {
                header = found.get();
                begin(sheet, row, header);
            } else if (header == null) {
                readOutside(sheet, row);
            } else {
                readRow(sheet, row, header);
            }
        }
        return header != null;
    }

    private void begin(Sheet sheet, Sheet.Row row, Header header) {
        Set<String> known = columns.computeIfAbsent(header.kind, kind -> new HashSet<>());
        header.headings.values().forEach(heading -> known.add(heading.column()));
        for (int i = 0; i < row.cells().size(); i++) {
            String text = row.cells().get(i).strip();
            if (!text.isEmpty() && !header.headings.containsKey(i)) {
                unknownColumns.add(new CellRef(sheet.name(), row.number(), text));
            }
        }
    }

    private void readOutside(Sheet sheet, Sheet.Row row) {
        List<String> full = row.cells().stream()
                .map(String::strip)
                .filter(cell -> !cell.isEmpty())
                .toList();
        String first = Columns.plain(full.get(0));
        if (full.size() == 2 && BARE_SETTINGS.contains(first)) {
            CellRef at = new CellRef(sheet.name(), row.number(), "");
            add(
                    TableKind.SETTINGS,
                    new TableRow(
                            at,
                            Map.of(
                                    "setting",
                                    new TableRow.Cell(full.get(0), "", "setting"),
                                    "value",
                                    new TableRow.Cell(full.get(1), "", "value"))));
        } else {
            sentences.add(String.join(" ", full));
        }
    }

    private void readRow(Sheet sheet, Sheet.Row row, Header header) {
        Map<String, TableRow.Cell> cells = new HashMap<>();
        for (int i = 0; i < row.cells().size(); i++) {
            Heading heading = header.headings.get(i);
            String text = row.cells().get(i).strip();
            if (heading != null && !text.isEmpty()) {
                cells.putIfAbsent(
                        heading.column(),
                        new TableRow.Cell(text, heading.unit(), header.texts.getOrDefault(i, heading.column())));
            }
        }
        CellRef at = new CellRef(sheet.name(), row.number(), "");
        if (header.kind == TableKind.WIRES && isTotal(cells)) {
            return;
        }
        if (header.kind == TableKind.WIRES && !cells.containsKey("from") && !cells.containsKey("to")) {
            boolean total = row.cells().stream()
                    .anyMatch(cell -> TOTAL.matcher(Columns.plain(cell)).matches());
            if (!total && !cells.isEmpty()) {
                rowsWithoutEnds.add(at);
            }
        } else if (!cells.isEmpty()) {
            add(header.kind, new TableRow(at, cells));
        }
    }

    /** A row whose one end is a word for a total, and which has no other end. */
    private static boolean isTotal(Map<String, TableRow.Cell> cells) {
        TableRow.Cell from = cells.get("from");
        TableRow.Cell to = cells.get("to");
        TableRow.Cell only = from == null ? to : to == null ? from : null;
        return only != null && TOTAL.matcher(Columns.plain(only.text())).matches();
    }

    private void add(TableKind kind, TableRow row) {
        rows.computeIfAbsent(kind, k -> new ArrayList<>()).add(row);
    }

    /** A row of headings. */
    private static final class Header {
        private final TableKind kind;
        private final Map<Integer, Heading> headings;
        private final Map<Integer, String> texts;

        private Header(TableKind kind, Map<Integer, Heading> headings, Map<Integer, String> texts) {
            this.kind = kind;
            this.headings = headings;
            this.texts = texts;
        }

        static Optional<Header> find(Sheet.Row row) {
            List<Candidate> cells = row.cells().stream().map(Candidate::of).toList();
            Header best = null;
            for (TableKind kind : TableKind.values()) {
                Header each = of(kind, cells);
                if (each != null && (best == null || each.headings.size() > best.headings.size())) {
                    best = each;
                }
            }
            return Optional.ofNullable(best);
        }

        private static @Nullable Header of(TableKind kind, List<Candidate> cells) {
            if (cells.size() < 2 && kind != TableKind.NOTES) {
                return null;
            }
            // "wire" heads the number of the wire, unless another column does.
            boolean numbered = kind == TableKind.WIRES
                    && cells.stream().map(Candidate::plain).anyMatch(NUMBERS::contains);
            List<Optional<Heading>> spelt = cells.stream()
                    .map(cell -> numbered && cell.plain().equals("wire")
                            ? Optional.of(new Heading("size", ""))
                            : cell.isBlank() ? Optional.<Heading>empty() : Columns.exact(kind, cell))
                    .toList();
            long exactly = spelt.stream().filter(Optional::isPresent).count();
            long full = cells.stream().filter(cell -> !cell.isBlank()).count();
            // Half of a row of headings is headings and half of these without a slip: most rows are figures, whose
            // spelling
            // nobody need correct.
            if (exactly == 0 || 4 * exactly < full) {
                return null;
            }
            Map<Integer, Heading> headings = new LinkedHashMap<>();
            Map<Integer, String> texts = new LinkedHashMap<>();
            Set<String> names = new HashSet<>();
            int slips = 0;
            for (int i = 0; i < cells.size(); i++) {
                Candidate cell = cells.get(i);
                if (cell.isBlank()) {
                    continue;
                }
                Optional<Heading> exact = spelt.get(i);
                Optional<Heading> heading = exact.isPresent() ? exact : Columns.nearly(kind, cell);
                if (heading.isPresent() && names.add(heading.get().column())) {
                    headings.put(i, heading.get());
                    texts.put(i, cell.text().strip());
                    slips += exact.isPresent() ? 0 : 1;
                }
            }
            boolean mostlyHeadings = headings.size() * 2L >= full && slips * 2 <= headings.size();
            return kind.isHeadedBy(names) && mostlyHeadings ? new Header(kind, headings, texts) : null;
        }
    }

    /** A word in lower case without a stop at its end. */
    static String word(String text) {
        String lower = text.strip().toLowerCase(Locale.ROOT);
        return lower.endsWith(".") ? lower.substring(0, lower.length() - 1) : lower;
    }
}
