package loomwright.ignition.gap;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The voltage a gap asks for, by one published formula, with what the others say as its uncertainty.
 *
 * <p>Measurements to compare with are in NACA Report 202 (Bureau of Standards), sparking voltage of spark plugs against
 * gap, pressure and temperature; no figure of it is used here.
 *
 * @param gap the gap and the gas in it
 * @param formula the formula taken
 * @param voltageV what it gives
 * @param withinRange whether the formula is meant for these conditions; if not, the figure is an extrapolation
 * @param lowestV least of the four formulas
 * @param highestV greatest of the four formulas
 */
public record BreakdownVoltage(
        GapConditions gap,
        BreakdownFormula formula,
        double voltageV,
        boolean withinRange,
        double lowestV,
        double highestV) {

    /** In this order the first that covers the conditions is taken, if the caller doesn't name one. */
    private static final List<BreakdownFormula> PREFERENCE = List.of(
            BreakdownFormula.ENGINE_CORRELATION,
            BreakdownFormula.LINEAR,
            BreakdownFormula.UNIFORM_FIELD,
            BreakdownFormula.PASCHEN);

    /**
     * The breakdown voltage by the formula that suits the conditions: the engine correlation at compression pressures,
     * the linear one in free air, then the uniform field, then Paschen's law; the uniform field if none covers them.
     */
    public static BreakdownVoltage of(GapConditions gap) {
        return by(
                PREFERENCE.stream().filter(f -> f.covers(gap)).findFirst().orElse(BreakdownFormula.UNIFORM_FIELD), gap);
    }

    /** As {@link #of(GapConditions)}, by the formula the caller wants if he names one. */
    public static BreakdownVoltage of(GapConditions gap, @Nullable BreakdownFormula wanted) {
        return wanted == null ? of(gap) : by(wanted, gap);
    }

    private static BreakdownVoltage by(BreakdownFormula formula, GapConditions gap) {
        double[] all = Stream.of(BreakdownFormula.values())
                .mapToDouble(f -> f.voltageV(gap))
                .sorted()
                .toArray();
        return new BreakdownVoltage(
                gap, formula, formula.voltageV(gap), formula.covers(gap), all[0], all[all.length - 1]);
    }
}
