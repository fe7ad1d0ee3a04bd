package loomwright.conductor;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.message.Message;

/**
 * The continuous current a table allows a conductor under given conditions.
 *
 * @param table which table
 * @param gauge the row used, an AWG size
 * @param ownRow true if that is the conductor's own size, false if it is the next listed gauge with less copper
 * @param classC the insulation rating of the column used: the next lower one, or the first of the table
 * @param ratingC the conductor temperature allowed: {@code classC}, or the insulation's own rating if lower
 * @param tableA the printed figure
 * @param corrections what it is multiplied by
 * @param allowedA the product
 */
public record Ampacity(
        AmpacityTable table,
        String gauge,
        boolean ownRow,
        int classC,
        double ratingC,
        double tableA,
        List<Correction> corrections,
        double allowedA) {

    private static final double ENGINE_SPACE_C = 50;

    private static final Basis SQUARE_ROOT_LAW = Basis.computed(
            "correction for temperature by the square-root law sqrt((TR - T) / (TC - Ttable))",
            "heat lost proportional to temperature rise, heat made to the square of the current");

    public Ampacity {
        corrections = List.copyOf(corrections);
    }

    /** One factor on a printed figure. */
    public record Correction(Message reason, double factor, Basis basis) {}

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
     * <p>allowed = table figure x product of factors; factor for temperature = sqrt((TR - T) / (TC - Ttable)), at most 1, TR
     * the rating, TC that of the column, because heat lost is proportional to the rise and heat made to the square of the
     * current. By the same law insulation rated below the first column is judged by that column. No credit is given for
     * an ambient below that of the table. Engine space: the printed factor of 33 CFR 183.425 Table 5 note 1. Bundle: note 2 of
     * that table, where asked for; AC 43.13-1B has the bundle in its figures.
     *
     * @return empty if the conductor is thinner than the thinnest row
     */
    public static Optional<Ampacity> find(ConductorSize size, AmpacityTable table, Conditions conditions) {
        int classC = table.classC(conditions.insulationC());
        double ratingC = Math.min(classC, conditions.insulationC());
        return table.findRow(size).map(row -> {
            String gauge = row.get(0);
            double tableA = table.currentA(row, classC);
            List<Correction> corrections = corrections(table, classC, ratingC, conditions);
            boolean ownRow = size.name().equals(gauge + " AWG");
            double allowedA = derated(tableA, corrections);
            return new Ampacity(table, gauge, ownRow, classC, ratingC, tableA, corrections, allowedA);
        });
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

    /** Where the figure and its corrections come from. */
    public List<Basis> basis() {
        List<Basis> all = new ArrayList<>();
        all.add(table.table().basis("continuous current by insulation rating"));
        corrections.forEach(c -> all.add(c.basis()));
        if (ratingC < classC) {
            all.add(SQUARE_ROOT_LAW);
        }
        return all;
    }

    private static List<Correction> corrections(
            AmpacityTable table, int classC, double ratingC, Conditions conditions) {
        List<Correction> corrections = new ArrayList<>();
        double fromC = table.ambientC();
        double ambientC =
                conditions.engineSpace() ? Math.max(conditions.ambientC(), ENGINE_SPACE_C) : conditions.ambientC();
        if (conditions.engineSpace() && table == AmpacityTable.US_33CFR183) {
            corrections.add(engineSpace(classC));
            fromC = ENGINE_SPACE_C;
        }
        double factor = Math.min(1, Math.sqrt(Math.max(0, ratingC - ambientC) / (classC - fromC)));
        if (factor < 1) {
            corrections.add(new Correction(
                    ConductorText.ABOVE_TABLE_AMBIENT.with(arg("ratingC", ratingC), arg("ambientC", ambientC)),
                    factor,
                    SQUARE_ROOT_LAW));
        }
        double bundle = bundleFactor(conditions.bundleCount());
        if (conditions.bundleFactors() && table == AmpacityTable.US_33CFR183 && bundle < 1) {
            corrections.add(new Correction(
                    ConductorText.IN_BUNDLE.with(arg("wires", conditions.bundleCount())),
                    bundle,
                    ReferenceTables.get("us-33cfr183-bundle").basis("bundle factor")));
        }
        return corrections;
    }

    private static Correction engineSpace(int classC) {
        ReferenceTable table = ReferenceTables.get("us-33cfr183-engine-space");
        List<String> row = table.findRow(String.valueOf(classC)).orElseThrow();
        return new Correction(
                ConductorText.IN_ENGINE_SPACE.with(arg("ambientC", ENGINE_SPACE_C)),
                table.getNumber(row, "factor"),
                table.basis("engine space factor", row));
    }
}
