package loomwright.list;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** Reads a list from a file of whatever form, which its first bytes tell. */
public final class ListFile {
    /** How the names of files of lists end. */
    public static final List<String> SUFFIXES = List.of(".csv", ".tsv", ".txt", ".md", ".xlsx", ".ods");

    private static final int HEAD = 120;

    private ListFile() {}

    /** Whether a file of this name is taken for a list. */
    public static boolean isNamedSo(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return SUFFIXES.stream().anyMatch(lower::endsWith);
    }

    /** Whether a file is a workbook, or a text with the headings of a table. */
    public static boolean hasTable(byte[] bytes) {
        return isWorkbook(bytes)
                || TextList.decode(bytes)
                        .lines()
                        .anyMatch(line -> ListTables.recognised(TextList.read(line, ListLimits.defaults())) > 0);
    }

    /** Whether a file is a workbook, which can only be read as a whole. */
    public static boolean isWorkbook(byte[] bytes) {
        return bytes.length > 3 && bytes[0] == 'P' && bytes[1] == 'K';
    }

    /** Whether a text has more lines than are read as a whole. */
    public static boolean isLong(byte[] bytes, ListLimits limits) {
        if (isWorkbook(bytes)) {
            return false;
        }
        int lines = 0;
        for (byte b : bytes) {
            lines += b == '\n' ? 1 : 0;
        }
        return lines >= limits.rows();
    }

    /**
     * Reads the cells.
     *
     * @throws loomwright.answer.RejectedInput as {@link TextList#read} and {@link Workbooks#readXlsx}
     */
    public static ListSource read(byte[] bytes, ListLimits limits) {
        if (!isWorkbook(bytes)) {
            return TextList.read(TextList.decode(bytes), limits);
        }
        // In an OpenDocument file the first entry, unpacked, names the type: OpenDocument 1.3, part 2, section 3.3.
        String head = new String(bytes, 0, Math.min(bytes.length, HEAD), StandardCharsets.ISO_8859_1);
        return head.contains("opendocument") ? Workbooks.readOds(bytes, limits) : Workbooks.readXlsx(bytes, limits);
    }
}
