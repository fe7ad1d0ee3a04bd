package loomwright.list;

import java.math.BigDecimal;

/** A number as it is written in a cell: all its digits, no exponent, no zeros at the end. */
final class Fixed {
    private Fixed() {}

    static String text(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return exact.toPlainString();
    }
}
