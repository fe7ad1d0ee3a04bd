package loomwright.drawing.sheet;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Finding;
import loomwright.drawing.sheet.Html.Cell;

/** Findings with their remedies, each to tick; their numbers are those in the pictures. */
final class FindingsTable {
    private FindingsTable() {}

    /** Writes findings in the order of their numbers. */
    static void write(Html html, List<Finding> findings) {
        List<List<Cell>> rows = new ArrayList<>();
        for (Finding finding : findings) {
            rows.add(List.of(
                    Cell.tick(),
                    new Cell(String.valueOf(rows.size() + 1), "number"),
                    new Cell(finding.severity().text(), "severity " + SheetWords.of(finding.severity())),
                    Cell.of(SheetHead.text(finding)),
                    Cell.of(SheetWords.orBlank(finding.remedyText()))));
        }
        html.table(
                "found",
                List.of("", "", SheetText.SEVERITY.text(), SheetText.WHAT.text(), SheetText.REMEDY.text()),
                rows);
    }
}
