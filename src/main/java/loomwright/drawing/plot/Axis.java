package loomwright.drawing.plot;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * One axis: its words, its range and where it is divided.
 *
 * @param label what is measured, and the unit
 * @param logarithmic whether equal steps are equal factors
 * @param min lower end
 * @param max upper end, above {@code min}
 * @param ticks the labelled divisions, rising
 * @param between divisions without a label
 */
public record Axis(
        String label, boolean logarithmic, double min, double max, List<Double> ticks, List<Double> between) {
    /** About as many labelled divisions as can be read. */
    private static final int WANTED_TICKS = 7;

    /** Up to so many decades 2 and 5 of each are labelled as well. */
    private static final double NARROW_DECADES = 2.5;

    private static final double HEADROOM = 1.04;
    private static final double ROUNDING = 1e-9;

    public Axis {
        if (!(min < max) || (logarithmic && min <= 0)) {
            throw new IllegalArgumentException("no axis from " + min + " to " + max);
        }
        ticks = List.copyOf(ticks);
        between = List.copyOf(between);
    }

    /**
     * An axis of equal steps of 1, 2 or 5 times a power of ten, whose ends are divisions.
     *
     * @param from the least that is to be seen
     * @param to the most; if it is not above {@code from}, a little more is taken
     */
    public static Axis linear(String label, double from, double to) {
        double span = to > from ? to - from : Math.max(Math.abs(from), 1);
        double step = niceStep(span / WANTED_TICKS);
        long first = (long) Math.floor(from / step + ROUNDING);
        long last = (long) Math.ceil((from + span) / step - ROUNDING);
        BigDecimal exactStep = new BigDecimal(String.valueOf(step)).stripTrailingZeros();
        List<Double> ticks = IntStream.rangeClosed(0, (int) (last - first))
                .mapToObj(i -> exactStep.multiply(BigDecimal.valueOf(first + i)).doubleValue())
                .toList();
        return new Axis(label, false, ticks.get(0), ticks.get(ticks.size() - 1), ticks, List.of());
    }

    /** From 0 to a little more than the most that is to be seen, so that no curve runs along the frame. */
    public static Axis fromZero(String label, double to) {
        return linear(label, 0, HEADROOM * to);
    }

    /**
     * An axis of equal factors, divided at the powers of ten.
     *
     * @param from the least that is to be seen, above 0
     * @param to the most, above {@code from}
     */
    public static Axis logarithmic(String label, double from, double to) {
        boolean narrow = Math.log10(to / from) <= NARROW_DECADES;
        List<Double> all = IntStream.rangeClosed((int) Math.floor(Math.log10(from)), (int) Math.ceil(Math.log10(to)))
                .boxed()
                .flatMap(decade -> IntStream.range(1, 10).mapToObj(m -> power(m, decade)))
                .toList();
        double min = all.stream()
                .filter(v -> v <= from * (1 + ROUNDING) && isLabelled(v, narrow))
                .reduce(all.get(0), Math::max);
        double max = all.stream()
                .filter(v -> v >= to * (1 - ROUNDING) && isLabelled(v, narrow))
                .reduce(all.get(all.size() - 1), Math::min);
        List<Double> within = all.stream().filter(v -> v >= min && v <= max).toList();
        return new Axis(
                label,
                true,
                min,
                max,
                within.stream().filter(v -> isLabelled(v, narrow)).toList(),
                within.stream().filter(v -> !isLabelled(v, narrow)).toList());
    }

    /** The same with a little room on both sides, so that no line at an end is drawn over by the frame. */
    public static Axis logarithmicAround(String label, double from, double to) {
        return logarithmic(label, from / HEADROOM, HEADROOM * to);
    }

    /** Where on the axis a value is: 0 at its lower end, 1 at its upper end, beyond them outside. */
    public double fraction(double value) {
        return logarithmic ? Math.log(value / min) / Math.log(max / min) : (value - min) / (max - min);
    }

    boolean contains(double value) {
        return value >= min && value <= max;
    }

    /** A tick as it is written. */
    public static String text(double tick) {
        BigDecimal exact = new BigDecimal(String.valueOf(tick)).stripTrailingZeros();
        return (exact.scale() < 0 ? exact.setScale(0, RoundingMode.UNNECESSARY) : exact).toPlainString();
    }

    private static double niceStep(double rough) {
        int decade = (int) Math.floor(Math.log10(rough));
        return DoubleStream.of(1, 2, 5, 10)
                .map(m -> power(m, decade))
                .filter(step -> step >= rough * (1 - ROUNDING))
                .findFirst()
                .orElseThrow();
    }

    private static boolean isLabelled(double value, boolean narrow) {
        double mantissa = value / Math.pow(10, Math.floor(Math.log10(value) + ROUNDING));
        return Math.abs(mantissa - 1) < 0.1
                || (narrow && (Math.abs(mantissa - 2) < 0.1 || Math.abs(mantissa - 5) < 0.1));
    }

    /** Exactly the number that its digits say. */
    private static double power(double mantissa, int decade) {
        return BigDecimal.valueOf(mantissa).scaleByPowerOfTen(decade).doubleValue();
    }
}
