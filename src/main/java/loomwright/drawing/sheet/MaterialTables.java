package loomwright.drawing.sheet;

import java.util.List;
import java.util.stream.Collectors;
import loomwright.comparison.PlanComparison.CutLine;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.PartLine;
import loomwright.comparison.PlanComparison.TerminalLine;
import loomwright.drawing.sheet.Html.Cell;

/** Parts, wire to cut and terminals to crimp, each with a box to tick. */
final class MaterialTables {
    private MaterialTables() {}

    static void write(Html html, Material material) {
        if (material.parts().isEmpty() && material.wires().isEmpty()) {
            html.paragraph("Nothing.");
        }
        if (!material.parts().isEmpty()) {
            html.table(
                    "parts",
                    List.of("", "Part", "Kind", "Data"),
                    material.parts().stream().map(MaterialTables::row).toList());
        }
        if (!material.wires().isEmpty()) {
            html.table(
                    "cut",
                    List.of("", "Colour", "Size", "Pieces", "Lengths", "In all", "Wires"),
                    material.wires().stream().map(MaterialTables::row).toList());
        }
        if (!material.terminals().isEmpty()) {
            html.table(
                    "terminals",
                    List.of("", "Terminals", "Form", "At", "On wire"),
                    material.terminals().stream().map(MaterialTables::row).toList());
        }
    }

    private static List<Cell> row(PartLine part) {
        return List.of(
                Cell.tick(),
                Cell.of(part.label()),
                Cell.of(PropertyWords.spaced(part.kind())),
                Cell.of(PropertyWords.data(part.data())));
    }

    private static List<Cell> row(CutLine wire) {
        boolean stated = !wire.lengthsM().isEmpty();
        return List.of(
                Cell.tick(),
                Cell.of(SheetWords.orBlank(wire.colour())),
                Cell.of(wire.size() == null ? "not stated" : PropertyWords.size(wire.size())),
                Cell.of(String.valueOf(wire.pieces())),
                Cell.of(
                        stated
                                ? wire.lengthsM().stream()
                                        .map(SheetWords::metres)
                                        .collect(Collectors.joining(", "))
                                : "measure"),
                Cell.of(stated ? SheetWords.metres(wire.totalM()) : ""),
                Cell.of(String.join(", ", wire.wires())));
    }

    private static List<Cell> row(TerminalLine terminal) {
        Double widthMm = terminal.widthMm();
        String form = terminal.form() == null
                ? "as fits"
                : PropertyWords.spaced(terminal.form())
                        + (widthMm == null ? "" : " " + SheetWords.figure(widthMm) + " mm") + " "
                        + SheetWords.orBlank(terminal.gender());
        return List.of(
                Cell.tick(),
                Cell.of(String.valueOf(terminal.number())),
                Cell.of(form),
                Cell.of(PropertyWords.spaced(terminal.at())),
                Cell.of(PropertyWords.size(SheetWords.orBlank(terminal.size()))));
    }
}
