package loomwright.conductor;

import java.util.Comparator;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import loomwright.answer.Basis;

/**
 * The opening time limits of blade fuses, ISO 8820-3 and SAE J1284, as a staircase: nothing is interpolated between the
 * multiples that the standards name.
 */
public final class FuseCurve {
    private static final ReferenceTable TABLE = ReferenceTables.get("blade-fuse-limits");
    private static final NavigableMap<Double, Double> LONGEST_S = limits("maxS", Comparator.naturalOrder());
    private static final NavigableMap<Double, Double> SHORTEST_S = limits("minS", Comparator.reverseOrder());

    private FuseCurve() {}

    /** The multiples at which the fuse must open within a time, rising. */
    public static List<Double> multiples() {
        return List.copyOf(LONGEST_S.keySet());
    }

    /** The largest of them, at which it opens soonest. */
    public static double largestMultiple() {
        return LONGEST_S.lastKey();
    }

    /**
     * The least multiple at which the fuse must open within a time.
     *
     * @param seconds no less than the fuse may take at the largest multiple
     */
    public static double multipleThatOpensWithin(double seconds) {
        return LONGEST_S.entrySet().stream()
                .filter(e -> e.getValue() <= seconds)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no limit of " + seconds + " s"))
                .getKey();
    }

    /** The multiple up to which the fuse must hold for hours; above it, it may open. */
    public static double heldMultiple() {
        return SHORTEST_S.firstKey();
    }

    /**
     * The longest a fuse may take: the limit at the next listed multiple below, the longer where the standards differ.
     *
     * @return empty below the first multiple, where it need not open at all
     */
    public static Optional<Double> longestS(double multiple) {
        return Optional.ofNullable(LONGEST_S.floorEntry(multiple)).map(e -> e.getValue());
    }

    /**
     * The shortest a fuse may take: the limit at the next listed multiple above; beyond the last one, t = t6 (6 / m)^2,
     * the same I2t as there.
     *
     * @return seconds
     */
    public static double shortestS(double multiple) {
        var above = SHORTEST_S.ceilingEntry(multiple);
        if (above != null) {
            return above.getValue();
        }
        var last = SHORTEST_S.lastEntry();
        double ratio = last.getKey() / multiple;
        return last.getValue() * ratio * ratio;
    }

    public static List<Basis> basis() {
        return List.of(
                TABLE.basis("opening time limits of blade fuses"),
                Basis.computed(
                        "shortest opening time above 6 times the rating: the I2t at 6 times",
                        "heat of the fuse element without loss"));
    }

    /** Per multiple the greatest value in the given order; blank cells are left out. */
    private static NavigableMap<Double, Double> limits(String column, Comparator<Double> order) {
        NavigableMap<Double, Double> limits = new TreeMap<>();
        for (List<String> row : TABLE.rows()) {
            if (!TABLE.getCell(row, column).isBlank()) {
                limits.merge(
                        TABLE.getNumber(row, "multiple"),
                        TABLE.getNumber(row, column),
                        (a, b) -> order.compare(a, b) >= 0 ? a : b);
            }
        }
        return limits;
    }
}
