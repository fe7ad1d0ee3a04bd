package loomwright.list;

import static loomwright.message.Arg.arg;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.MessageCode;

/**
 * Reads a list from text: comma, semicolon or tab between the cells, or a Markdown table as pasted from a post.
 *
 * <p>Nothing in such a text says which separator it uses; the header row does: the right one is that by which most header
 * rows are recognised.
 */
public final class TextList {
    private static final char[] SEPARATORS = {',', ';', '\t'};
    private static final char BAR = '|';
    private static final Pattern RULE = Pattern.compile("[\\s|:+-]*-[\\s|:+-]*");
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    /** A cell that a spreadsheet would take for a formula has an apostrophe before it. */
    static final Pattern GUARDED = Pattern.compile("^'(?=['=+\\-@\\t\\r])");

    private TextList() {}

    /** The text of a file: UTF-8 or UTF-16 by its byte order mark, UTF-8 if it is that, else Windows-1252. */
    public static String decode(byte[] bytes) {
        if (bytes.length >= 2 && (bytes[0] & 0xff) == 0xff && (bytes[1] & 0xff) == 0xfe) {
            return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16LE);
        }
        if (bytes.length >= 2 && (bytes[0] & 0xff) == 0xfe && (bytes[1] & 0xff) == 0xff) {
            return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16BE);
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException notUtf8) {
            return new String(bytes, WINDOWS);
        }
    }

    /**
     * A list as it stands in an address, where line breaks and commas are awkward: {@code ;} ends a row and {@code ~} a cell,
     * unless it is text with line breaks after all.
     */
    public static String ofAddress(String text) {
        return text.indexOf('~') < 0 || text.indexOf('\n') >= 0
                ? text
                : text.replace(';', '\n').replace('~', '\t');
    }

    /**
     * Reads the cells.
     *
     * @throws RejectedInput OVER_LIMIT if there is more than the limits allow, MALFORMED if a quoted cell is never closed
     */
    public static ListSource read(String text, ListLimits limits) {
        List<String> lines = text.lines().toList();
        if (lines.size() > limits.rows()) {
            throw tooLarge(lines.size(), AcceptedList.ROWS, limits.rows());
        }
        return lines.stream()
                        .anyMatch(
                                line -> line.contains("|") && RULE.matcher(line).matches())
                ? markdown(lines, limits)
                : separated(text, limits);
    }

    /** What separates the cells of the headings of a table: comma, semicolon, tab or the bar of Markdown; empty if a line is none. */
    static Optional<Character> separatorOf(String line) {
        Character best = null;
        int most = 0;
        for (char separator : new char[] {',', ';', '\t', BAR}) {
            int score = endsInsideQuotes(line, separator)
                    ? 0
                    : row(line, 1, separator, ListLimits.defaults())
                            .map(row -> ListTables.recognised(
                                    new ListSource(List.of(new Sheet("", List.of(row))), List.of())))
                            .orElse(0);
            if (score > most) {
                most = score;
                best = separator;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * The cells of a text that is one row.
     *
     * @return empty if it is the rule below the headings of a Markdown table
     * @throws RejectedInput as {@link #read}
     */
    static Optional<Sheet.Row> row(String text, int number, char separator, ListLimits limits) {
        ListSource source = separator == BAR ? markdown(List.of(text), limits) : split(text, separator, limits);
        return source.sheets().get(0).rows().stream().findFirst().map(row -> new Sheet.Row(number, row.cells()));
    }

    /** Whether a line is a text beside a Markdown table. */
    static boolean isSentence(String line, char separator) {
        return separator == BAR && line.indexOf(BAR) < 0;
    }

    private static ListSource markdown(List<String> lines, ListLimits limits) {
        List<Sheet.Row> rows = new ArrayList<>();
        List<String> sentences = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.contains("|")) {
                if (!RULE.matcher(line).matches()) {
                    rows.add(new Sheet.Row(i + 1, checked(cellsOfMarkdown(line), limits)));
                }
            } else if (!line.isEmpty()) {
                sentences.add(line);
            }
        }
        return new ListSource(List.of(new Sheet("", rows)), sentences);
    }

    private static List<String> cellsOfMarkdown(String line) {
        String inner = line.startsWith("|") ? line.substring(1) : line;
        inner = inner.endsWith("|") && !inner.endsWith("\\|") ? inner.substring(0, inner.length() - 1) : inner;
        List<String> cells = new ArrayList<>();
        for (String cell : inner.split("(?<!\\\\)\\|", -1)) {
            cells.add(cell.strip().replace("\\|", "|"));
        }
        return cells;
    }

    private static ListSource separated(String text, ListLimits limits) {
        ListSource best = null;
        int most = -1;
        for (char separator : SEPARATORS) {
            ListSource source = split(text, separator, limits);
            int score = ListTables.recognised(source);
            if (score > most) {
                most = score;
                best = source;
            }
        }
        if (best == null) {
            throw new IllegalStateException("no separator was tried");
        }
        return best;
    }

    private static ListSource split(String text, char separator, ListLimits limits) {
        List<Sheet.Row> rows = new ArrayList<>();
        if (text.chars().filter(c -> c == '"').count() % 2 != 0 && endsInsideQuotes(text, separator)) {
            throw openQuote();
        }
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .skipEmptyLines(false)
                .ignoreDifferentFieldCount(true)
                .ofCsvRecord(text)) {
            for (CsvRecord each : reader) {
                List<String> cells = each.getFields().stream()
                        .map(cell -> GUARDED.matcher(cell.strip()).replaceFirst(""))
                        .toList();
                rows.add(new Sheet.Row((int) each.getStartingLineNumber(), checked(cells, limits)));
            }
        } catch (CsvParseException | java.io.IOException broken) {
            throw openQuote();
        }
        return new ListSource(List.of(new Sheet("", rows)), List.of());
    }

    /** Whether a cell that begins with a quote is never closed; the reader takes the rest of the text for that cell. */
    static boolean endsInsideQuotes(String text, char separator) {
        boolean quoted = false;
        boolean start = true;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' && (quoted || start)) {
                quoted = !quoted;
            }
            start = !quoted && (c == separator || c == '\n' || c == '\r');
        }
        return quoted;
    }

    static RejectedInput openQuote() {
        return new RejectedInput(
                new InputError(InputError.Code.MALFORMED, "", null, AcceptedList.CLOSED_QUOTES.with()));
    }

    static List<String> checked(List<String> cells, ListLimits limits) {
        if (cells.size() > limits.columns()) {
            throw tooLarge(cells.size(), AcceptedList.COLUMNS, limits.columns());
        }
        for (String cell : cells) {
            if (cell.length() > limits.cellChars()) {
                throw tooLarge(cell.length(), AcceptedList.CELL_CHARACTERS, limits.cellChars());
            }
        }
        return cells;
    }

    static RejectedInput tooLarge(long found, MessageCode accepted, long max) {
        return new RejectedInput(
                new InputError(InputError.Code.OVER_LIMIT, "", String.valueOf(found), accepted.with(arg("max", max))));
    }
}
