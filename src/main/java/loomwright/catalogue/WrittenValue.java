package loomwright.catalogue;

import java.util.OptionalDouble;
import loomwright.circuit.Load;
import org.jspecify.annotations.Nullable;

/**
 * What a figure with a unit means that an owner writes beside a part.
 *
 * @param unit of the figure
 * @param property the property of the plan document that it gives
 * @param law how
 * @param voltsShare share of the nominal voltage at which it is rated; absent for the rated volts beside it, else the nominal
 * @param from the least figure that is meant so; absent for any
 */
public record WrittenValue(
        String unit,
        String property,
        Law law,
        @Nullable Double voltsShare,
        @Nullable Double from) {
    /** How a property follows from what is written. */
    public enum Law {
        IS,
        /** For each of several: {@code 2 x 5 W}. */
        EACH,
        OVER_VOLTS,
        TIMES_VOLTS,
        VOLTS_OVER,
        VOLTS_SQUARED_OVER,
        /** As the only one of a list. */
        LIST,
        /** With its unit, as a conductor size. */
        SIZE,
        /** Stated only where it is not the nominal voltage. */
        UNLESS_NOMINAL,
        /** The volts from which a load works that is rated for other volts than the nominal. */
        WORKS_FROM
    }

    /**
     * The property, for a property that is a number.
     *
     * @param value as written
     * @param times of how many like it
     * @param ratedV the volts written beside it, else the nominal
     * @param nominalV of the vehicle
     * @return empty where it need not be stated
     */
    public OptionalDouble value(double value, int times, double ratedV, double nominalV) {
        double volts = voltsShare == null ? ratedV : voltsShare * nominalV;
        return switch (law) {
            case IS, LIST, SIZE -> OptionalDouble.of(value);
            case EACH -> OptionalDouble.of(value * times);
            case OVER_VOLTS -> OptionalDouble.of(value * times / volts);
            case TIMES_VOLTS -> OptionalDouble.of(value * times * volts);
            case VOLTS_OVER -> OptionalDouble.of(volts / (value * times));
            case VOLTS_SQUARED_OVER -> OptionalDouble.of(volts * volts / (value * times));
            case WORKS_FROM -> value == nominalV ? OptionalDouble.empty() : OptionalDouble.of(Load.WORKS_FROM * value);
            case UNLESS_NOMINAL -> value == nominalV ? OptionalDouble.empty() : OptionalDouble.of(value);
        };
    }
}
