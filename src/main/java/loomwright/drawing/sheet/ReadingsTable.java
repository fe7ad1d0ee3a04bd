package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.drawing.sheet.Html.Cell;
import loomwright.message.Message;
import loomwright.readings.ReadingsSheet;
import loomwright.readings.ReadingsSheet.Reading;

/** What to measure, with an empty box for what the meter shows. */
final class ReadingsTable {
    private ReadingsTable() {}

    static void write(Html html, ReadingsSheet sheet) {
        html.list("", sheet.first().stream().map(Message::text).toList());
        List<List<Cell>> rows = new ArrayList<>();
        String situation = "";
        for (Reading reading : sheet.readings()) {
            if (!reading.taken().situation().equals(situation)) {
                situation = reading.taken().situation();
                rows.add(List.of(Cell.of(situation)));
            }
            rows.add(row(reading));
        }
        html.table(
                "readings",
                List.of(
                        "",
                        SheetText.RED_LEAD.text(),
                        SheetText.BLACK_LEAD.text(),
                        SheetText.METER.text(),
                        SheetText.EXPECTED.text(),
                        SheetText.MEASURED.text(),
                        SheetText.WHAT_IT_MEANS.text()),
                rows);
        if (!sheet.leftOut().isEmpty()) {
            html.paragraph(SheetText.NOT_ON_THIS_SHEET
                    .with(arg(
                            "left", sheet.leftOut().stream().map(Message::text).collect(Collectors.joining(" "))))
                    .text());
        }
    }

    private static List<Cell> row(Reading reading) {
        return List.of(
                Cell.of(String.valueOf(reading.number())),
                Cell.of(reading.leads().redLabel()),
                Cell.of(reading.leads().blackLabel()),
                Cell.of(reading.meter()),
                new Cell(sound(reading), "sound"),
                Cell.box(),
                new Cell(reading.advice(), "tells"));
    }

    /** What a sound circuit shows. */
    static String sound(Reading reading) {
        Double lowest = reading.expected().lowest();
        Double highest = reading.expected().highest();
        if (lowest == null || highest == null) {
            return reading.expected().shows().text();
        }
        String least = SheetWords.figure(lowest);
        String most = SheetWords.figure(highest);
        return (least.equals(most) ? least : least + " to " + most) + " "
                + reading.expected().unit();
    }
}
