package loomwright.ignition;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Locale;

/** Numbers as they stand in a line of working: four significant digits, no exponent. */
public final class WorkingNumber {
    private static final MathContext FOUR_DIGITS = new MathContext(4);

    private WorkingNumber() {}

    public static String of(double value) {
        BigDecimal rounded = new BigDecimal(value).round(FOUR_DIGITS);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** A line of working with its numbers in the places marked {@code %s}. */
    public static String line(String line, double... values) {
        return String.format(
                Locale.ROOT,
                line,
                Arrays.stream(values).mapToObj(WorkingNumber::of).toArray());
    }

    /** In thousandths of the unit: ms, mJ, mH. */
    public static String milli(double value) {
        return of(value * 1e3);
    }

    /** In thousands of the unit: kV. */
    public static String kilo(double value) {
        return of(value * 1e-3);
    }
}
