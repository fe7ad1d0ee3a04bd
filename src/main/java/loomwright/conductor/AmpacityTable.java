package loomwright.conductor;

import java.util.List;
import java.util.Optional;

/** The published tables of continuous current. */
public enum AmpacityTable {
    /** Single conductors in boats, ambient 30 C. */
    US_33CFR183("us-33cfr183-ampacity", "33 CFR 183.425 Table 5", 30),
    /** Of the FAA: wires in large bundles in aircraft at height, ambient 70 C. */
    AC43_13("ac43-ampacity", "AC 43.13-1B table 11-9", 70);

    private final String tableName;
    private final String label;
    private final double ambientC;

    AmpacityTable(String tableName, String tableLabel, double ambientC) {
        this.tableName = tableName;
        this.label = tableLabel;
        this.ambientC = ambientC;
    }

    public ReferenceTable table() {
        return ReferenceTables.get(tableName);
    }

    /** What people know it by. */
    public String label() {
        return label;
    }

    /** The ambient temperature the figures hold for. */
    public double ambientC() {
        return ambientC;
    }

    /**
     * The printed figures of one column.
     *
     * @param classC one of {@link #classesC}
     * @return the thinnest gauge first
     */
    public List<Point> points(int classC) {
        return AmpacityGrid.get(this).points(classC);
    }

    /** Area of a gauge and the current printed for it. */
    public record Point(double areaMm2, double currentA) {}

    /** The insulation temperature ratings it has columns for, rising. */
    public List<Integer> classesC() {
        return AmpacityGrid.get(this).classesC();
    }

    /** The column for an insulation rating: that rating, or the next lower one; the first where none is so low. */
    int classC(double insulationC) {
        return classesC().stream()
                .filter(c -> c <= insulationC)
                .reduce(classesC().get(0), (lower, higher) -> higher);
    }

    /**
     * The row for a conductor: its own gauge, or else the thickest listed gauge that has no more copper.
     *
     * @return empty if the conductor is thinner than the thinnest row
     */
    Optional<List<String>> findRow(ConductorSize size) {
        return AmpacityGrid.get(this).findRow(size.areaMm2());
    }

    double currentA(List<String> row, int classC) {
        return AmpacityGrid.get(this).currentA(row, classC);
    }

    String range() {
        return AmpacityGrid.get(this).range();
    }
}
