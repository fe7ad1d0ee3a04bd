package loomwright.list;

import static loomwright.message.Arg.arg;

import com.github.miachm.sods.NotAnOdsException;
import com.github.miachm.sods.SpreadSheet;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.Message;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;

/**
 * Reads and writes workbooks, {@code .xlsx} and {@code .ods}.
 *
 * <p>A workbook is unpacked once without being read, to see that it holds no more than the limits allow and no document
 * type, by which entities would come. Of formulas the value counts that the program stored beside them; macros, links and
 * whatever else a workbook holds are passed over, so nothing is ever run or fetched.
 */
public final class Workbooks {
    private static final int CHUNK = 8192;
    private static final List<String> FORBIDDEN = List.of("<!doctype", "<!entity");

    private Workbooks() {}

    /**
     * Reads a workbook of a spreadsheet program in the form of ISO/IEC 29500.
     *
     * @throws RejectedInput OVER_LIMIT beyond the limits, MALFORMED if it is no such workbook
     */
    public static ListSource readXlsx(byte[] bytes, ListLimits limits) {
        inspect(bytes, limits, ".xlsx");
        List<Sheet> sheets = new ArrayList<>();
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes))) {
            for (org.dhatim.fastexcel.reader.Sheet sheet : workbook.getSheets().toList()) {
                sheets.add(new Sheet(sheet.getName(), rowsOf(sheet, limits)));
            }
            // The library throws these, unchecked, for a broken or half-written file; none of them is a fault of ours.
        } catch (IOException
                | IllegalArgumentException
                | IllegalStateException
                | UnsupportedOperationException
                | NullPointerException
                | IndexOutOfBoundsException
                | org.dhatim.fastexcel.reader.ExcelReaderException notAWorkbook) {
            throw broken(".xlsx");
        }
        return new ListSource(sheets, List.of());
    }

    private static List<Sheet.Row> rowsOf(org.dhatim.fastexcel.reader.Sheet sheet, ListLimits limits)
            throws IOException {
        List<Sheet.Row> rows = new ArrayList<>();
        try (Stream<Row> stream = sheet.openStream()) {
            for (Row row : (Iterable<Row>) stream::iterator) {
                List<String> cells = new ArrayList<>();
                for (Cell cell : row) {
                    cells.add(cell == null ? "" : text(cell));
                    if (cells.size() > limits.columns()) {
                        break;
                    }
                }
                add(rows, new Sheet.Row(row.getRowNum(), trimmed(cells)), limits);
            }
        }
        return rows;
    }

    private static String text(Cell cell) {
        if (cell.getType() == CellType.NUMBER) {
            return Fixed.text(Double.parseDouble(cell.getRawValue()));
        }
        if (cell.getType() == CellType.FORMULA || cell.getType() == CellType.ERROR) {
            String stored = cell.getRawValue();
            if (stored == null) {
                return "";
            }
            return Quantities.number(stored).isPresent() ? Fixed.text(Double.parseDouble(stored)) : stored;
        }
        if (cell.getType() == CellType.BOOLEAN) {
            return Boolean.TRUE.equals(cell.asBoolean()) ? "yes" : "no";
        }
        String text = cell.getText();
        return text == null ? "" : text;
    }

    /**
     * Reads a workbook of a spreadsheet program in the form of ISO/IEC 26300.
     *
     * @throws RejectedInput OVER_LIMIT beyond the limits, MALFORMED if it is no such workbook
     */
    public static ListSource readOds(byte[] bytes, ListLimits limits) {
        inspect(bytes, limits, ".ods");
        List<Sheet> sheets = new ArrayList<>();
        try {
            for (com.github.miachm.sods.Sheet sheet : new SpreadSheet(new ByteArrayInputStream(bytes)).getSheets()) {
                sheets.add(new Sheet(sheet.getName(), rowsOf(sheet, limits)));
            }
        } catch (IOException
                | NotAnOdsException
                | IllegalArgumentException
                | IllegalStateException
                | NullPointerException
                | IndexOutOfBoundsException
                | AssertionError notAWorkbook) {
            throw broken(".ods");
        }
        return new ListSource(sheets, List.of());
    }

    private static List<Sheet.Row> rowsOf(com.github.miachm.sods.Sheet sheet, ListLimits limits) {
        List<Sheet.Row> rows = new ArrayList<>();
        int last = sheet.getDataRange().getLastRow();
        int width = Math.min(sheet.getMaxColumns(), limits.columns());
        if (last >= limits.rows()) {
            throw TextList.tooLarge(last + 1, AcceptedList.ROWS, limits.rows());
        }
        for (int r = 0; r <= last && width > 0; r++) {
            List<String> cells = new ArrayList<>();
            for (int c = 0; c < width; c++) {
                cells.add(text(sheet.getRange(r, c).getValue()));
            }
            add(rows, new Sheet.Row(r + 1, trimmed(cells)), limits);
        }
        return rows;
    }

    private static String text(@org.jspecify.annotations.Nullable Object value) {
        if (value == null) {
            return "";
        }
        if (value instanceof Number number) {
            return Fixed.text(number.doubleValue());
        }
        if (value instanceof Boolean yes) {
            return yes ? "yes" : "no";
        }
        return value.toString();
    }

    private static List<String> trimmed(List<String> cells) {
        int end = cells.size();
        while (end > 0 && cells.get(end - 1).isBlank()) {
            end--;
        }
        return cells.subList(0, end);
    }

    private static void add(List<Sheet.Row> rows, Sheet.Row row, ListLimits limits) {
        if (row.cells().isEmpty()) {
            return;
        }
        TextList.checked(row.cells(), limits);
        rows.add(row);
        if (rows.size() > limits.rows()) {
            throw TextList.tooLarge(limits.rows() + 1, AcceptedList.ROWS, limits.rows());
        }
    }

    /** Unpacks without keeping anything. */
    private static void inspect(byte[] bytes, ListLimits limits, String form) {
        long unpacked = 0;
        int entries = 0;
        byte[] chunk = new byte[CHUNK];
        try (ZipFile zip = ZipFile.builder()
                .setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes))
                .get()) {
            for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
                if (++entries > limits.entries()) {
                    throw TextList.tooLarge(entries, AcceptedList.FILES_INSIDE, limits.entries());
                }
                unpacked = inspect(zip.getInputStream(entry), isMarkup(entry.getName()), unpacked, chunk, limits, form);
            }
        } catch (IOException notAZip) {
            throw broken(form);
        }
        if (entries == 0) {
            throw new RejectedInput(new InputError(InputError.Code.MALFORMED, "", null, accepted(form)));
        }
    }

    private static long inspect(
            InputStream in, boolean markup, long unpackedBefore, byte[] chunk, ListLimits limits, String form)
            throws IOException {
        long unpacked = unpackedBefore;
        String before = "";
        for (int read = in.read(chunk); read > 0; read = in.read(chunk)) {
            unpacked += read;
            if (unpacked > limits.unpackedBytes()) {
                throw TextList.tooLarge(unpacked, AcceptedList.UNPACKED_BYTES, limits.unpackedBytes());
            }
            if (markup) {
                String text = before + new String(chunk, 0, read, StandardCharsets.ISO_8859_1);
                refuseEntities(text.toLowerCase(Locale.ROOT), form);
                before = text.substring(Math.max(0, text.length() - 10));
            }
        }
        return unpacked;
    }

    private static boolean isMarkup(String name) {
        return name.endsWith(".xml") || name.endsWith(".rels") || name.endsWith(".vml");
    }

    private static void refuseEntities(String text, String form) {
        if (FORBIDDEN.stream().anyMatch(text::contains)) {
            throw new RejectedInput(new InputError(
                    InputError.Code.MALFORMED, "", null, AcceptedList.NO_DOCUMENT_TYPE.with(arg("form", form))));
        }
    }

    private static RejectedInput broken(String form) {
        return new RejectedInput(new InputError(InputError.Code.MALFORMED, "", null, accepted(form)));
    }

    private static Message accepted(String form) {
        return AcceptedList.WORKBOOK.with(arg("form", form));
    }

    /** Writes sheets as an {@code .xlsx} workbook; cells that are numbers become numbers. */
    public static byte[] writeXlsx(List<Sheet> sheets) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "Loomwright", "1.0")) {
            for (Sheet sheet : sheets) {
                Worksheet page = workbook.newWorksheet(sheet.name());
                for (Sheet.Row row : sheet.rows()) {
                    for (int c = 0; c < row.cells().size(); c++) {
                        String cell = row.cells().get(c);
                        if (isNumber(cell)) {
                            page.value(row.number() - 1, c, Double.valueOf(cell));
                        } else if (!cell.isEmpty()) {
                            page.value(row.number() - 1, c, cell);
                        }
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a workbook in memory", e);
        }
        return out.toByteArray();
    }

    /** Writes sheets as an {@code .ods} workbook; cells that are numbers become numbers. */
    public static byte[] writeOds(List<Sheet> sheets) {
        SpreadSheet book = new SpreadSheet();
        for (Sheet sheet : sheets) {
            int rows = sheet.rows().stream().mapToInt(Sheet.Row::number).max().orElse(1);
            int columns = sheet.rows().stream()
                    .mapToInt(row -> row.cells().size())
                    .max()
                    .orElse(1);
            com.github.miachm.sods.Sheet page = new com.github.miachm.sods.Sheet(sheet.name(), rows, columns);
            for (Sheet.Row row : sheet.rows()) {
                for (int c = 0; c < row.cells().size(); c++) {
                    String cell = row.cells().get(c);
                    if (!cell.isEmpty()) {
                        page.getRange(row.number() - 1, c)
                                .setValue(isNumber(cell) ? (Object) Double.valueOf(cell) : cell);
                    }
                }
            }
            book.appendSheet(page);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            book.save(out);
        } catch (IOException e) {
            throw new UncheckedIOException("a workbook in memory", e);
        }
        return out.toByteArray();
    }

    /** Whether a cell is just the text that the number has, so that nothing is lost by storing the number. */
    private static boolean isNumber(String cell) {
        return Quantities.number(cell).isPresent()
                && !cell.contains(",")
                && Fixed.text(Double.parseDouble(cell)).equals(cell);
    }
}
