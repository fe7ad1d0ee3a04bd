package loomwright.drawing.sheet;

import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Figures and words as they stand on paper. */
final class SheetWords {
    private SheetWords() {}

    /** Volts as a meter shows them. */
    static String volts(double value) {
        return figure(value) + " V";
    }

    /** Three digits, and no more than a plain meter shows. */
    static String figure(double value) {
        double amount = Math.abs(value);
        String form = amount < 0.005 ? "%.0f" : amount >= 100 ? "%.0f" : amount >= 10 ? "%.1f" : "%.2f";
        return String.format(Locale.ROOT, form, amount < 0.005 ? 0 : value);
    }

    /** A number as it was given, without needless zeros. */
    static String number(double value) {
        return new BigDecimal(String.valueOf(value)).stripTrailingZeros().toPlainString();
    }

    /** A length to cut. */
    static String metres(double value) {
        return String.format(Locale.ROOT, "%.2f m", value);
    }

    /** A word of a closed set: {@code not stated} stays empty for a person to fill in. */
    static String of(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String orBlank(@Nullable String text) {
        return text == null ? "" : text;
    }
}
