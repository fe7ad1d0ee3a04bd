package loomwright.conductor;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers and words as the working lines write them. */
public final class FigureText {
    private static final MathContext FOUR_FIGURES = new MathContext(4);

    private FigureText() {}

    /** A word of a closed set as answers spell it: within-limit. */
    public static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Four significant figures, without exponent and without needless zeros. */
    public static String text(double value) {
        return new BigDecimal(value).round(FOUR_FIGURES).stripTrailingZeros().toPlainString();
    }
}
