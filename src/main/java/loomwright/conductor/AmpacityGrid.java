package loomwright.conductor;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * An ampacity table made ready for looking up, once for all.
 *
 * @param classesC the insulation ratings of its columns, rising
 * @param rows its rows, the thinnest gauge first
 * @param pointsByClass the printed figures of each column, likewise
 */
record AmpacityGrid(
        ReferenceTable table,
        List<Integer> classesC,
        List<Row> rows,
        Map<Integer, List<AmpacityTable.Point>> pointsByClass) {
    /** Ampacity columns are called a105 for insulation of 105 C. */
    private static final String CLASS_PREFIX = "a";

    private static final Map<AmpacityTable, AmpacityGrid> GRIDS = build();

    /** A row and the area of its gauge. */
    record Row(double areaMm2, List<String> cells) {}

    static AmpacityGrid get(AmpacityTable table) {
        AmpacityGrid grid = GRIDS.get(table);
        if (grid == null) {
            throw new IllegalArgumentException("no grid for " + table);
        }
        return grid;
    }

    /** The thickest row with no more copper than that. */
    Optional<List<String>> findRow(double areaMm2) {
        return rows.stream()
                .filter(row -> row.areaMm2() <= areaMm2)
                .map(Row::cells)
                .reduce((thinner, thicker) -> thicker);
    }

    double currentA(List<String> row, int classC) {
        return currentA(table, row, classC);
    }

    private static double currentA(ReferenceTable table, List<String> row, int classC) {
        return table.getNumber(row, CLASS_PREFIX + classC);
    }

    /** The printed figures of one column, the thinnest gauge first. */
    List<AmpacityTable.Point> points(int classC) {
        List<AmpacityTable.Point> points = pointsByClass.get(classC);
        if (points == null) {
            throw new IllegalArgumentException("no column for " + classC);
        }
        return points;
    }

    /** "18 to 4/0 AWG, insulation rated 60 to 200 C": what a refusal names. */
    String range() {
        return rows.get(0).cells().get(0) + " to "
                + rows.get(rows.size() - 1).cells().get(0) + " AWG, insulation rated " + classesC.get(0) + " to "
                + classesC.get(classesC.size() - 1) + " C";
    }

    private static Map<AmpacityTable, AmpacityGrid> build() {
        Map<AmpacityTable, AmpacityGrid> grids = new EnumMap<>(AmpacityTable.class);
        for (AmpacityTable name : AmpacityTable.values()) {
            ReferenceTable table = name.table();
            List<Row> rows = table.rows().stream()
                    .map(cells ->
                            new Row(ConductorSize.parse(cells.get(0) + " AWG").areaMm2(), cells))
                    .sorted(Comparator.comparingDouble(Row::areaMm2))
                    .toList();
            List<Integer> classes = classesOf(table);
            Map<Integer, List<AmpacityTable.Point>> points = classes.stream()
                    .collect(Collectors.toMap(
                            c -> c,
                            c -> rows.stream()
                                    .map(row -> new AmpacityTable.Point(row.areaMm2(), currentA(table, row.cells(), c)))
                                    .toList()));
            grids.put(name, new AmpacityGrid(table, classes, rows, points));
        }
        return grids;
    }

    private static List<Integer> classesOf(ReferenceTable table) {
        return table.columns().stream()
                .map(ReferenceTable.Column::name)
                .filter(name -> name.matches(CLASS_PREFIX + "[0-9]+"))
                .map(name -> Integer.valueOf(name.substring(CLASS_PREFIX.length())))
                .toList();
    }
}
