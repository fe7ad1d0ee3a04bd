package loomwright.conductor;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import org.jspecify.annotations.Nullable;

/**
 * How much drop is permitted, and who says so.
 *
 * @param limitV volts from source to load and back
 * @param reason the rule in words
 * @param basis its source
 */
public record DropLimit(double limitV, String reason, Basis basis) {
    private static final Map<CircuitKind, Rule> RULES =
            Stream.of(CircuitKind.values()).collect(Collectors.toUnmodifiableMap(kind -> kind, Rule::of));
    private static final double TABLE_NOMINAL_V = 12;
    private static final double HIGHEST_6V_SYSTEM_V = 9;
    private static final double HIGHEST_12V_SYSTEM_V = 18;

    /** A given limit goes first, then that of the circuit, then 3 % of the supply, boat practice for critical circuits. */
    static DropLimit of(
            @Nullable Double limitV, @Nullable Double limitPercent, @Nullable CircuitKind circuit, double supplyV) {
        if (limitV != null) {
            return new DropLimit(limitV, "as asked", Basis.computed("limit of the drop", "the question itself"));
        }
        if (limitPercent != null) {
            return new DropLimit(
                    limitPercent / 100 * supplyV,
                    FigureText.text(limitPercent) + " % of " + FigureText.text(supplyV) + " V, as asked",
                    Basis.computed("limit of the drop", "the question itself"));
        }
        return of(circuit == null ? CircuitKind.ELECTRONICS : circuit, supplyV);
    }

    /**
     * The usual limit of a kind of circuit.
     *
     * <p>A limit in volts holds for 12 V and is scaled with the nominal voltage: up to 9 V half of it, above 18 V twice.
     *
     * @param supplyV supply voltage, above 0
     */
    public static DropLimit of(CircuitKind circuit, double supplyV) {
        return Objects.requireNonNull(RULES.get(circuit)).at(supplyV);
    }

    /** A row of the table: the share of the supply, or the volts at 12 V. */
    private record Rule(double share, double at12V, String reason, Basis basis) {
        static Rule of(CircuitKind circuit) {
            ReferenceTable table = ReferenceTables.get("drop-limits");
            List<String> row = table.findRow(FigureText.word(circuit)).orElseThrow();
            String scope = FigureText.word(circuit) + ", " + table.getCell(row, "scope");
            Basis basis = new Basis(
                    "usual limit of the drop: " + scope,
                    table.getCell(row, "source"),
                    table.basis("", row).status());
            if (table.getCell(row, "limitV").isBlank()) {
                double percent = table.getNumber(row, "limitPercent");
                return new Rule(percent / 100, 0, scope + ": " + FigureText.text(percent) + " %", basis);
            }
            double at12V = table.getNumber(row, "limitV");
            return new Rule(0, at12V, scope + ": " + FigureText.text(at12V) + " V at 12 V", basis);
        }

        DropLimit at(double supplyV) {
            double limitV = at12V == 0 ? share * supplyV : at12V * nominalV(supplyV) / TABLE_NOMINAL_V;
            return new DropLimit(limitV, reason, basis);
        }
    }

    private static double nominalV(double supplyV) {
        if (supplyV <= HIGHEST_6V_SYSTEM_V) {
            return TABLE_NOMINAL_V / 2;
        }
        return supplyV <= HIGHEST_12V_SYSTEM_V ? TABLE_NOMINAL_V : 2 * TABLE_NOMINAL_V;
    }
}
