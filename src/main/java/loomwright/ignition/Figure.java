package loomwright.ignition;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as they stand in a line of working: four significant digits, no exponent. */
final class Figure {
    private static final MathContext FOUR_DIGITS = new MathContext(4);

    private Figure() {}

    static String of(double value) {
        BigDecimal rounded = new BigDecimal(value).round(FOUR_DIGITS);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** In thousandths of the unit: ms, mJ, mH. */
    static String milli(double value) {
        return of(value * 1e3);
    }

    /** In thousands of the unit: kV. */
    static String kilo(double value) {
        return of(value * 1e-3);
    }
}
