package loomwright.list;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loomwright.catalogue.PartShape;
import loomwright.conductor.ReferenceTable;
import loomwright.conductor.ReferenceTables;
import org.jspecify.annotations.Nullable;

/** Knows what a heading means: which column, and in which unit. */
final class Columns {
    private static final Pattern BEFORE_UNIT = Pattern.compile("[\\s,(\\[]");
    private static final Pattern UNIT = Pattern.compile(
            "(.*?)[\\s,(\\[]+(mm²|mm2|mm\\^2|sq ?mm|cm|mm|m|ft|feet|foot|in|inch|inches|metres|meters|awg|ohm|ohms|Ω|mΩ|milliohm|v|a|w"
                    + "|°c|c)[\\s)\\].]*",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern MARKS = Pattern.compile("[_.:*]+");
    private static final Pattern BLANKS = Pattern.compile("\\s+");

    /** No heading is longer; a whole line that is taken for one cell is. */
    private static final int LONGEST = 60;

    private static final Map<String, Heading> BARE_UNITS = Map.ofEntries(
            Map.entry("mm2", new Heading("size", "mm2")),
            Map.entry("mm²", new Heading("size", "mm2")),
            Map.entry("mm^2", new Heading("size", "mm2")),
            Map.entry("sqmm", new Heading("size", "mm2")),
            Map.entry("sq mm", new Heading("size", "mm2")),
            Map.entry("awg", new Heading("size", "awg")),
            Map.entry("cm", new Heading("length", "cm")),
            Map.entry("mm", new Heading("length", "mm")),
            Map.entry("m", new Heading("length", "m")),
            Map.entry("metres", new Heading("length", "m")),
            Map.entry("meters", new Heading("length", "m")),
            Map.entry("ft", new Heading("length", "ft")),
            Map.entry("feet", new Heading("length", "ft")),
            Map.entry("in", new Heading("length", "in")),
            Map.entry("inches", new Heading("length", "in")),
            Map.entry("ohm", new Heading("resistance", "ohm")),
            Map.entry("ohms", new Heading("resistance", "ohm")));
    private static final Map<TableKind, Map<String, String>> WORDS = read();

    private Columns() {}

    /**
     * What a heading says.
     *
     * @param column its name in the catalogue, or {@code .property} for a property of the plan document
     * @param unit in lower case; empty if it names none
     */
    record Heading(String column, String unit) {}

    /**
     * A cell that may be a heading, read once for all kinds of tables.
     *
     * @param base what stands before a unit at its end; absent if no unit stands there
     * @param unit that unit in lower case; empty without one
     */
    record Candidate(String text, String plain, @Nullable String base, String unit) {
        static Candidate of(String text) {
            String stripped = text.strip();
            if (text.length() <= LONGEST && BEFORE_UNIT.matcher(stripped).find()) {
                Matcher unit = UNIT.matcher(stripped);
                if (unit.matches()) {
                    return new Candidate(
                            text, Columns.plain(stripped), Columns.plain(unit.group(1)), unitWord(unit.group(2)));
                }
            }
            return new Candidate(text, Columns.plain(stripped), null, "");
        }

        boolean isBlank() {
            return text.isBlank();
        }
    }

    /** Without correcting spelling. */
    static Optional<Heading> exact(TableKind kind, Candidate cell) {
        if (cell.text().length() > LONGEST) {
            return Optional.empty();
        }
        Map<String, String> words = WORDS.getOrDefault(kind, Map.of());
        String column = words.get(cell.plain());
        if (column != null) {
            return Optional.of(new Heading(column, ""));
        }
        if (kind == TableKind.WIRES && BARE_UNITS.containsKey(cell.plain())) {
            return Optional.of(BARE_UNITS.get(cell.plain()));
        }
        if (kind == TableKind.PARTS) {
            Optional<String> property = PartShape.findProperty(cell.text());
            if (property.isPresent()) {
                return property.map(name -> new Heading("." + name, ""));
            }
        }
        String known = cell.base() == null ? null : words.get(cell.base());
        return Optional.ofNullable(known).map(word -> new Heading(word, cell.unit()));
    }

    /** With its spelling corrected. */
    static Optional<Heading> nearly(TableKind kind, Candidate cell) {
        Map<String, String> words = WORDS.getOrDefault(kind, Map.of());
        return Spelling.nearest(cell.plain(), words.keySet())
                .map(word -> new Heading(words.getOrDefault(word, word), ""));
    }

    private static String unitWord(String unit) {
        String lower = unit.toLowerCase(Locale.ROOT).replace(" ", "");
        return switch (lower) {
            case "mm²", "mm^2", "sqmm" -> "mm2";
            case "feet", "foot" -> "ft";
            case "inch", "inches" -> "in";
            case "metres", "meters" -> "m";
            case "ohms", "ω" -> "ohm";
            case "mω", "milliohm" -> "milliohm";
            default -> lower;
        };
    }

    static String plain(String text) {
        String lower = text.strip().toLowerCase(Locale.ROOT);
        return BLANKS.matcher(MARKS.matcher(lower).replaceAll(" "))
                .replaceAll(" ")
                .strip();
    }

    private static Map<TableKind, Map<String, String>> read() {
        ReferenceTable table = ReferenceTables.load("/parts/columns.csv", "parts/columns");
        Map<TableKind, Map<String, String>> words = new LinkedHashMap<>();
        for (List<String> row : table.rows()) {
            TableKind kind = TableKind.valueOf(table.getCell(row, "table").toUpperCase(Locale.ROOT));
            for (String word : table.getCell(row, "words").split("\\|", -1)) {
                words.computeIfAbsent(kind, k -> new LinkedHashMap<>()).put(plain(word), table.getCell(row, "column"));
            }
        }
        return words;
    }
}
