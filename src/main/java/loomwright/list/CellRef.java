package loomwright.list;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputError;
import org.jspecify.annotations.Nullable;

/**
 * Where in a list something stands, as the person who wrote it sees it.
 *
 * @param sheet the worksheet, or {@code file} and the name of one of several files; empty in a text
 * @param row from 1
 * @param column its heading; empty for the whole row
 */
public record CellRef(String sheet, int row, String column) {
    /** "worksheet wires, row 8, column to"; empty for the whole list. */
    public String inWords() {
        List<String> words = new ArrayList<>();
        if (!sheet.isEmpty()) {
            words.add(
                    sheet.startsWith("file ")
                            ? sheet
                            : ListPlace.WORKSHEET.with(arg("name", sheet)).text());
        }
        if (row > 0) {
            words.add(ListPlace.ROW.with(arg("number", String.valueOf(row))).text());
        }
        if (!column.isEmpty()) {
            words.add(ListPlace.COLUMN.with(arg("name", column)).text());
        }
        return String.join(", ", words);
    }

    /** Row and column; absent for the whole list. */
    public InputError.@Nullable Cell cell() {
        return row > 0 ? new InputError.Cell(row, column) : null;
    }

    CellRef in(String otherColumn) {
        return new CellRef(sheet, row, otherColumn);
    }
}
