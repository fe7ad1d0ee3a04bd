package loomwright.conductor;

import java.math.BigDecimal;
import java.math.MathContext;

/** A number as the working lines write it. */
final class Figure {
    private static final MathContext FOUR_FIGURES = new MathContext(4);

    private Figure() {}

    /** Four significant figures, without exponent and without needless zeros. */
    static String text(double value) {
        return new BigDecimal(value).round(FOUR_FIGURES).stripTrailingZeros().toPlainString();
    }
}
