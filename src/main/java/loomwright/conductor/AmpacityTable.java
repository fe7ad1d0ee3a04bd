package loomwright.conductor;

import java.util.List;
import java.util.Optional;

/** The published tables of continuous current. */
public enum AmpacityTable {
    /** 33 CFR 183.425 Table 5: single conductors in boats, ambient 30 C. */
    US_33CFR183("us-33cfr183-ampacity", 30),
    /** FAA AC 43.13-1B table 11-9: wires in large bundles in aircraft at height, ambient 70 C. */
    AC43_13("ac43-ampacity", 70);

    /** Ampacity columns are called a105 for insulation of 105 C. */
    private static final String CLASS_PREFIX = "a";

    private final String tableName;
    private final double ambientC;

    AmpacityTable(String tableName, double ambientC) {
        this.tableName = tableName;
        this.ambientC = ambientC;
    }

    public ReferenceTable table() {
        return ReferenceTables.get(tableName);
    }

    /** The ambient temperature the figures hold for. */
    public double ambientC() {
        return ambientC;
    }

    /** The insulation temperature ratings it has columns for, rising. */
    public List<Integer> classesC() {
        return table().columns().stream()
                .map(ReferenceTable.Column::name)
                .filter(name -> name.matches(CLASS_PREFIX + "[0-9]+"))
                .map(name -> Integer.valueOf(name.substring(CLASS_PREFIX.length())))
                .toList();
    }

    /** The column for an insulation rating: that rating, or the next lower one the table has. */
    Optional<Integer> findClassC(double insulationC) {
        return classesC().stream().filter(c -> c <= insulationC).reduce((lower, higher) -> higher);
    }

    /**
     * The row for a conductor: its own gauge, or else the thickest listed gauge that has no more copper.
     *
     * @return empty if the conductor is thinner than the thinnest row
     */
    Optional<List<String>> findRow(ConductorSize size) {
        List<String> best = null;
        for (List<String> row : table().rows()) {
            double rowMm2 = ConductorSize.parse(row.get(0) + " AWG").areaMm2();
            if (rowMm2 <= size.areaMm2() && (best == null || rowMm2 > areaOf(best))) {
                best = row;
            }
        }
        return Optional.ofNullable(best);
    }

    double currentA(List<String> row, int classC) {
        return table().getNumber(row, CLASS_PREFIX + classC);
    }

    /** "18 to 4/0 AWG, insulation 60 to 200 C": what a refusal names. */
    String range() {
        List<List<String>> rows = table().rows();
        List<Integer> classes = classesC();
        return rows.get(0).get(0) + " to " + rows.get(rows.size() - 1).get(0) + " AWG, insulation rated "
                + classes.get(0) + " to " + classes.get(classes.size() - 1) + " C";
    }

    private static double areaOf(List<String> row) {
        return ConductorSize.parse(row.get(0) + " AWG").areaMm2();
    }
}
