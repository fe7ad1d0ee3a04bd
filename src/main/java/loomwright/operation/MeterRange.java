package loomwright.operation;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.message.Message;

/**
 * Function and range of a plain digital meter of 2000 counts, whose error is a share of the reading and two steps of the
 * last digit (common practice, no source).
 *
 * @param quantity what it measures
 * @param range as it is printed on the meter
 * @param full from this figure it overflows
 */
public record MeterRange(Quantity quantity, String range, double full) {
    private static final double COUNTS = 2000;
    private static final double DIGITS = 2;

    private static final List<MeterRange> VOLTS = List.of(
            new MeterRange(Quantity.VOLTS, "2 V", 2),
            new MeterRange(Quantity.VOLTS, "20 V", 20),
            new MeterRange(Quantity.VOLTS, "200 V", 200));
    private static final List<MeterRange> OHMS = List.of(
            new MeterRange(Quantity.OHMS, "200", 200),
            new MeterRange(Quantity.OHMS, "2 k", 2e3),
            new MeterRange(Quantity.OHMS, "20 k", 2e4),
            new MeterRange(Quantity.OHMS, "200 k", 2e5),
            new MeterRange(Quantity.OHMS, "2 M", 2e6));

    /** The lowest range that shows a figure; the highest if none does. */
    public static MeterRange of(Quantity quantity, double figure) {
        List<MeterRange> ranges = quantity == Quantity.VOLTS ? VOLTS : OHMS;
        return ranges.stream()
                .filter(r -> Math.abs(figure) < r.full())
                .findFirst()
                .orElse(ranges.get(ranges.size() - 1));
    }

    /** What to set. */
    public Message description() {
        return (quantity == Quantity.VOLTS ? MeterText.VOLTS : MeterText.OHMS).with(arg("range", range));
    }

    /** By how much the meter may be off at a figure. */
    public double error(double figure, double accuracyFraction) {
        return accuracyFraction * Math.abs(figure) + DIGITS * full / COUNTS;
    }
}
