package loomwright.ignition.gap;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import org.jspecify.annotations.Nullable;

/**
 * The voltage a gap asks for: the middle between the lowest and the highest of the published formulas, or one of them if
 * the caller names it. The band between the two is how sure it is. The correlation for engines counts at compression
 * pressures alone: in free air it gives twice what is measured.
 *
 * <p>Measurements to compare with are in NACA Report 202 (Bureau of Standards), sparking voltage of spark plugs against
 * gap, pressure and temperature; no figure of it is used here.
 *
 * @param gap the gap and the gas in it
 * @param formula the formula that was named; absent for the middle
 * @param voltageV the figure
 * @param withinRange whether the formula, or any of them, is meant for these conditions; if not, it is an extrapolation
 * @param lowestV least of the formulas
 * @param highestV greatest of them
 * @param all each formula with what it gives
 */
public record BreakdownVoltage(
        GapConditions gap,
        @Nullable BreakdownFormula formula,
        double voltageV,
        boolean withinRange,
        double lowestV,
        double highestV,
        List<ByFormula> all) {
    public static final Basis MIDDLE_BASIS = Basis.computed(
            "required kilovolts: middle of the lowest and the highest published formula",
            "Paschen's law, the formula for gaps of about a millimetre, that for a uniform field, SAE 2000-01-0245");

    public BreakdownVoltage {
        all = List.copyOf(all);
    }

    /** One formula at this gap; a figure outside its range is an extrapolation. */
    public record ByFormula(BreakdownFormula formula, double voltageV, boolean withinRange) {}

    /** The middle of the formulas. */
    public static BreakdownVoltage of(GapConditions gap) {
        return of(gap, null);
    }

    /** As {@link #of(GapConditions)}, or by the formula that the caller names. */
    public static BreakdownVoltage of(GapConditions gap, @Nullable BreakdownFormula wanted) {
        List<ByFormula> all = Stream.of(BreakdownFormula.values())
                .map(f -> new ByFormula(f, f.voltageV(gap), f.covers(gap)))
                .toList();
        boolean known = all.stream().anyMatch(ByFormula::withinRange);
        DoubleSummaryStatistics band = all.stream()
                .filter(f -> f.withinRange() || f.formula() != BreakdownFormula.ENGINE_CORRELATION)
                .mapToDouble(ByFormula::voltageV)
                .summaryStatistics();
        return new BreakdownVoltage(
                gap,
                wanted,
                wanted == null ? (band.getMin() + band.getMax()) / 2 : wanted.voltageV(gap),
                wanted == null ? known : wanted.covers(gap),
                band.getMin(),
                band.getMax(),
                all);
    }

    /** Where the figure comes from. */
    public Basis basis() {
        return formula == null ? MIDDLE_BASIS : formula.basis();
    }
}
