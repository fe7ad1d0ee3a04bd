package loomwright.list;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;

/**
 * What a file or a text holds.
 *
 * @param sheets in their order
 * @param sentences lines of text that stand outside every table
 */
public record ListSource(List<Sheet> sheets, List<String> sentences) {
    public ListSource {
        sheets = List.copyOf(sheets);
        sentences = List.copyOf(sentences);
    }

    /** Whether a worksheet is named so, or has a name that begins so: "after", "after wires". */
    public boolean hasSheetsOf(String word) {
        return sheets.stream().anyMatch(sheet -> isOf(sheet, word));
    }

    /** The worksheets named so, and those that are named after none of the other words. */
    public ListSource sheetsOf(String word, Collection<String> others) {
        return new ListSource(
                sheets.stream()
                        .filter(sheet -> isOf(sheet, word) || others.stream().noneMatch(other -> isOf(sheet, other)))
                        .toList(),
                sentences);
    }

    /** The same with the worksheets of another file behind its own. */
    public ListSource with(String sheetName, ListSource other) {
        List<Sheet> all = new ArrayList<>(sheets);
        other.sheets().forEach(sheet -> all.add(new Sheet(sheetName, sheet.rows())));
        return new ListSource(all, sentences);
    }

    /** The same with another list behind it, whose worksheets are named by its file. */
    public ListSource joined(String fileName, ListSource other) {
        List<Sheet> all = new ArrayList<>(sheets);
        for (Sheet sheet : other.sheets()) {
            String name = "file " + fileName + (sheet.name().isEmpty() ? "" : ", worksheet " + sheet.name());
            all.add(new Sheet(name, sheet.rows()));
        }
        List<String> said = new ArrayList<>(sentences);
        said.addAll(other.sentences());
        return new ListSource(all, said);
    }

    private static boolean isOf(Sheet sheet, String word) {
        String name = sheet.name().strip().toLowerCase(Locale.ROOT);
        return name.equals(word) || name.startsWith(word + " ");
    }
}
