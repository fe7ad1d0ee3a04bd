package loomwright.drawing.sheet;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.comparison.PlanComparison.CutLine;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.PartLine;
import loomwright.comparison.PlanComparison.TerminalLine;
import loomwright.comparison.PropertyWording;
import loomwright.drawing.sheet.Html.Cell;

/** Parts, wire to cut and terminals to crimp, each with a box to tick. */
final class MaterialTables {
    private MaterialTables() {}

    static void write(Html html, Material material) {
        if (material.parts().isEmpty() && material.wires().isEmpty()) {
            html.paragraph(SheetText.NOTHING.text());
        }
        if (!material.parts().isEmpty()) {
            html.table(
                    "parts",
                    heads(SheetText.PART, SheetText.KIND, SheetText.DATA),
                    material.parts().stream().map(MaterialTables::row).toList());
        }
        if (!material.wires().isEmpty()) {
            html.table(
                    "cut",
                    heads(
                            SheetText.COLOUR,
                            SheetText.SIZE,
                            SheetText.PIECES,
                            SheetText.LENGTHS,
                            SheetText.TOTAL,
                            SheetText.WIRES),
                    material.wires().stream().map(MaterialTables::row).toList());
        }
        if (!material.terminals().isEmpty()) {
            html.table(
                    "terminals",
                    heads(SheetText.TERMINALS, SheetText.FORM, SheetText.AT, SheetText.ON_WIRE),
                    material.terminals().stream().map(MaterialTables::row).toList());
        }
    }

    /** A column for the ticks goes before them. */
    private static List<String> heads(SheetText... heads) {
        return Stream.concat(Stream.of(""), Stream.of(heads).map(SheetText::text))
                .toList();
    }

    private static List<Cell> row(PartLine part) {
        return List.of(
                Cell.tick(),
                Cell.of(part.label()),
                Cell.of(PropertyWording.spaced(part.kind())),
                Cell.of(PropertyWording.list(part.properties())));
    }

    private static List<Cell> row(CutLine wire) {
        boolean stated = !wire.lengthsM().isEmpty();
        return List.of(
                Cell.tick(),
                Cell.of(SheetWords.orBlank(wire.colour())),
                Cell.of(wire.size() == null ? SheetText.NOT_STATED.text() : PropertyWording.size(wire.size())),
                Cell.of(String.valueOf(wire.pieces())),
                Cell.of(
                        stated
                                ? wire.lengthsM().stream()
                                        .map(SheetWords::metres)
                                        .collect(Collectors.joining(", "))
                                : SheetText.MEASURE.text()),
                Cell.of(stated ? SheetWords.metres(wire.totalM()) : ""),
                Cell.of(String.join(", ", wire.wires())));
    }

    private static List<Cell> row(TerminalLine terminal) {
        Double widthMm = terminal.widthMm();
        String form = terminal.form() == null
                ? SheetText.AS_FITS.text()
                : PropertyWording.spaced(terminal.form())
                        + (widthMm == null ? "" : " " + SheetWords.figure(widthMm) + " mm") + " "
                        + SheetWords.orBlank(terminal.gender());
        return List.of(
                Cell.tick(),
                Cell.of(String.valueOf(terminal.number())),
                Cell.of(form),
                Cell.of(PropertyWording.spaced(terminal.at())),
                Cell.of(PropertyWording.size(SheetWords.orBlank(terminal.size()))));
    }
}
