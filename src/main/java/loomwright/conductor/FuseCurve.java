package loomwright.conductor;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import loomwright.answer.Basis;

/**
 * The opening time limits of a construction of fuses, as a staircase: nothing is interpolated between the multiples of what the
 * fuse carries that the standards name.
 */
public enum FuseCurve {
    /** ISO 8820-3 and SAE J1284. */
    BLADE("blade-fuse-limits"),
    /** UL 248-14, above twice the rating IEC 60127-2. */
    GLASS("glass-fuse-limits"),
    /** ISO 8820-5. */
    BOLT_DOWN("bolt-down-fuse-limits");

    // Read once and never changed.
    @SuppressWarnings("ImmutableEnumChecker")
    private final ReferenceTable table;

    @SuppressWarnings("ImmutableEnumChecker")
    private final NavigableMap<Double, Double> longestS;

    @SuppressWarnings("ImmutableEnumChecker")
    private final NavigableMap<Double, Double> shortestS;

    FuseCurve(String table) {
        this.table = ReferenceTables.get(table);
        this.longestS = limits(this.table, "maxS", Comparator.naturalOrder());
        this.shortestS = limits(this.table, "minS", Comparator.reverseOrder());
    }

    /** The multiples at which the fuse must open within a time, rising. */
    public List<Double> multiples() {
        return List.copyOf(longestS.keySet());
    }

    /** The largest of them, at which it opens soonest. */
    public double largestMultiple() {
        return longestS.lastKey();
    }

    /**
     * The least multiple at which the fuse must open within a time.
     *
     * @param seconds no less than the fuse may take at the largest multiple
     */
    public double multipleThatOpensWithin(double seconds) {
        return longestS.entrySet().stream()
                .filter(e -> e.getValue() <= seconds)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no limit of " + seconds + " s"))
                .getKey();
    }

    /** The multiple up to which the fuse must hold for hours; above it, it may open. */
    public double heldMultiple() {
        return shortestS.firstKey();
    }

    /**
     * The longest a fuse may take: the limit at the next listed multiple below, the longer where the standards differ; beyond
     * the last one, t = tl (l / m)^2: the sooner a fuse opens the less heat its element loses, so a higher current lets no more
     * I2t through.
     *
     * @return seconds; empty below the first multiple, where it need not open at all
     */
    public Optional<Double> longestS(double multiple) {
        return multiple > longestS.lastKey()
                ? Optional.of(withSameHeat(longestS.lastEntry(), multiple))
                : Optional.ofNullable(longestS.floorEntry(multiple)).map(e -> e.getValue());
    }

    /**
     * The shortest a fuse may take: the limit at the next listed multiple above; beyond the last one, t = tl (l / m)^2,
     * the same I2t as there.
     *
     * @return seconds
     */
    public double shortestS(double multiple) {
        var above = shortestS.ceilingEntry(multiple);
        if (above != null) {
            return above.getValue();
        }
        return withSameHeat(shortestS.lastEntry(), multiple);
    }

    private static double withSameHeat(Map.Entry<Double, Double> limit, double multiple) {
        double ratio = limit.getKey() / multiple;
        return limit.getValue() * ratio * ratio;
    }

    public List<Basis> basis() {
        return List.of(
                table.basis("opening time limits of "
                        + name().toLowerCase(Locale.ROOT).replace('_', '-') + " fuses"),
                Basis.computed(
                        "opening times above the last multiple: the I2t there",
                        "heat of the fuse element without loss"));
    }

    /** Per multiple the greatest value in the given order; blank cells are left out. */
    private static NavigableMap<Double, Double> limits(ReferenceTable table, String column, Comparator<Double> order) {
        NavigableMap<Double, Double> limits = new TreeMap<>();
        for (List<String> row : table.rows()) {
            if (!table.getCell(row, column).isBlank()) {
                limits.merge(
                        table.getNumber(row, "multiple"),
                        table.getNumber(row, column),
                        (a, b) -> order.compare(a, b) >= 0 ? a : b);
            }
        }
        return limits;
    }
}
