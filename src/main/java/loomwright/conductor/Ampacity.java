package loomwright.conductor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;

/**
 * The continuous current a table allows a conductor under given conditions.
 *
 * @param table which table
 * @param gauge the row used, an AWG size
 * @param ownRow true if that is the conductor's own size, false if it is the next listed gauge with less copper
 * @param classC the insulation rating of the column used, at most that of the wire
 * @param tableA the printed figure
 * @param corrections what it is multiplied by
 * @param allowedA the product
 */
public record Ampacity(
        AmpacityTable table,
        String gauge,
        boolean ownRow,
        int classC,
        double tableA,
        List<Correction> corrections,
        double allowedA) {

    /** From this voltage on 33 CFR 183.435(b) requires the bundle factors. */
    static final double BUNDLE_RULE_FROM_V = 50;

    private static final double ENGINE_SPACE_C = 50;

    public Ampacity {
        corrections = List.copyOf(corrections);
    }

    /** One factor on a printed figure. */
    public record Correction(String reason, double factor, Basis basis) {}

    /**
     * What the wire is exposed to.
     *
     * @param insulationC temperature rating of the insulation
     * @param ambientC temperature around the wire, below that rating
     * @param engineSpace true in an engine space
     * @param bundleCount current-carrying wires in the bundle, this one included; 1 for a wire alone
     * @param bundleFactors true to apply the bundle factors, false to leave them out
     */
    public record Conditions(
            double insulationC, double ambientC, boolean engineSpace, int bundleCount, boolean bundleFactors) {
        public Conditions {
            if (!(ambientC < insulationC) || bundleCount < 1) {
                throw new IllegalArgumentException("ambient must be below the insulation rating, bundle at least 1");
            }
        }

        /** A wire alone, outside engine spaces. */
        public static Conditions of(double insulationC, double ambientC) {
            return new Conditions(insulationC, ambientC, false, 1, false);
        }
    }

    /**
     * Looks up and corrects one table.
     *
     * <p>allowed = table figure x product of factors; factor for ambient = sqrt((TR - T) / (TR - Ttable)), at most 1,
     * because heat lost is proportional to the rise and heat made to the square of the current; no credit is given for an
     * ambient below that of the table. Engine space: the printed factor of 33 CFR 183.425 Table 5 note 1. Bundle: note 2 of
     * that table, where asked for; AC 43.13-1B has the bundle in its figures.
     *
     * @return empty if the conductor is thinner than the table's thinnest row or its insulation rated below the first
     *     column
     */
    public static Optional<Ampacity> find(ConductorSize size, AmpacityTable table, Conditions conditions) {
        Optional<Integer> classC = table.findClassC(conditions.insulationC());
        Optional<List<String>> row = table.findRow(size);
        if (classC.isEmpty() || row.isEmpty()) {
            return Optional.empty();
        }
        String gauge = row.get().get(0);
        double tableA = table.currentA(row.get(), classC.get());
        List<Correction> corrections = corrections(table, classC.get(), conditions);
        return Optional.of(new Ampacity(
                table,
                gauge,
                size.name().equals(gauge + " AWG"),
                classC.get(),
                tableA,
                corrections,
                derated(tableA, corrections)));
    }

    /** A current times all factors, as AC 43.13-1B paragraph 11-69 does from the free-air figure. */
    public static double derated(double currentA, List<Correction> corrections) {
        return corrections.stream().mapToDouble(Correction::factor).reduce(currentA, (a, b) -> a * b);
    }

    /** The factor that 33 CFR 183.425 Table 5 note 2 gives for a bundle; 1 below three wires. */
    public static double bundleFactor(int conductors) {
        ReferenceTable table = ReferenceTables.get("us-33cfr183-bundle");
        return table.rows().stream()
                .filter(row -> table.getNumber(row, "fromConductors") <= conductors)
                .mapToDouble(row -> table.getNumber(row, "factor"))
                .reduce(1, Math::min);
    }

    /** The rise above ambient that the allowed current makes: to the class of the column, from the ambient it holds for. */
    double riseK(double ambientC) {
        return classC - Math.max(ambientC, table.ambientC());
    }

    /** Steady conductor temperature: the rise is proportional to the square of the current. */
    double steadyC(double currentA, double ambientC) {
        double load = currentA / allowedA;
        return ambientC + riseK(ambientC) * load * load;
    }

    /** The calculation as a line to follow. */
    String working() {
        StringBuilder line = new StringBuilder(table + ": " + gauge + " AWG");
        if (!ownRow) {
            line.append(" (the next listed gauge with no more copper)");
        }
        line.append(", insulation ")
                .append(classC)
                .append(" C: ")
                .append(Figure.text(tableA))
                .append(" A");
        for (Correction c : corrections) {
            line.append(" x ")
                    .append(Figure.text(c.factor()))
                    .append(" (")
                    .append(c.reason())
                    .append(')');
        }
        if (!corrections.isEmpty()) {
            line.append(" = ").append(Figure.text(allowedA)).append(" A");
        }
        return line.toString();
    }

    public List<Basis> basis() {
        List<Basis> all = new ArrayList<>();
        all.add(table.table().basis("continuous current by insulation rating"));
        corrections.forEach(c -> all.add(c.basis()));
        return all;
    }

    private static List<Correction> corrections(AmpacityTable table, int classC, Conditions conditions) {
        List<Correction> corrections = new ArrayList<>();
        double ambientFactor = ambientFactor(classC, conditions.ambientC(), table.ambientC());
        boolean engineSpace = conditions.engineSpace() && table == AmpacityTable.US_33CFR183;
        if (engineSpace) {
            corrections.add(engineSpace(classC));
            ambientFactor = conditions.ambientC() > ENGINE_SPACE_C
                    ? ambientFactor(classC, conditions.ambientC(), ENGINE_SPACE_C)
                    : 1;
        }
        if (ambientFactor < 1) {
            corrections.add(new Correction(
                    "ambient " + Figure.text(conditions.ambientC()) + " C",
                    ambientFactor,
                    Basis.computed(
                            "ambient correction by the square-root law sqrt((TR - T) / (TR - Ttable))",
                            "heat lost proportional to temperature rise, heat made to the square of the current")));
        }
        double bundle = bundleFactor(conditions.bundleCount());
        if (conditions.bundleFactors() && table == AmpacityTable.US_33CFR183 && bundle < 1) {
            corrections.add(new Correction(
                    conditions.bundleCount() + " in the bundle",
                    bundle,
                    ReferenceTables.get("us-33cfr183-bundle").basis("bundle factor")));
        }
        return corrections;
    }

    private static Correction engineSpace(int classC) {
        ReferenceTable table = ReferenceTables.get("us-33cfr183-engine-space");
        List<String> row = table.findRow(String.valueOf(classC)).orElseThrow();
        return new Correction(
                "engine space, 50 C", table.getNumber(row, "factor"), table.basis("engine space factor", row));
    }

    private static double ambientFactor(int classC, double ambientC, double tableAmbientC) {
        return Math.min(1, Math.sqrt(Math.max(0, classC - ambientC) / (classC - tableAmbientC)));
    }
}
