package loomwright.operation;

import java.util.List;

/**
 * Function and range of a plain digital meter of 2000 counts, whose error is a share of the reading and two steps of the
 * last digit (common practice, no source).
 *
 * @param description what to set
 * @param full from this figure it overflows
 */
public record MeterRange(String description, double full) {
    private static final double COUNTS = 2000;
    private static final double DIGITS = 2;

    private static final List<MeterRange> VOLTS = List.of(
            new MeterRange("DC volts, 2 V", 2),
            new MeterRange("DC volts, 20 V", 20),
            new MeterRange("DC volts, 200 V", 200));
    private static final List<MeterRange> OHMS = List.of(
            new MeterRange("ohms, 200", 200),
            new MeterRange("ohms, 2 k", 2e3),
            new MeterRange("ohms, 20 k", 2e4),
            new MeterRange("ohms, 200 k", 2e5),
            new MeterRange("ohms, 2 M", 2e6));

    /** The lowest range that shows a figure; the highest if none does. */
    public static MeterRange of(Quantity quantity, double figure) {
        List<MeterRange> ranges = quantity == Quantity.VOLTS ? VOLTS : OHMS;
        return ranges.stream()
                .filter(r -> Math.abs(figure) < r.full())
                .findFirst()
                .orElse(ranges.get(ranges.size() - 1));
    }

    /** By how much the meter may be off at a figure. */
    public double error(double figure, double accuracyFraction) {
        return accuracyFraction * Math.abs(figure) + DIGITS * full / COUNTS;
    }
}
