package loomwright.drawing.sheet;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Figures and words as they stand on paper. */
final class Words {
    /** How the names of the plan document end, and what one writes instead. */
    private static final Map<String, String> UNITS = Map.ofEntries(
            Map.entry("Ohm", "Ω"),
            Map.entry("V", "V"),
            Map.entry("A", "A"),
            Map.entry("W", "W"),
            Map.entry("M", "m"),
            Map.entry("Ft", "ft"),
            Map.entry("Mm", "mm"),
            Map.entry("Mm2", "mm²"),
            Map.entry("Mh", "mH"),
            Map.entry("Uf", "µF"),
            Map.entry("C", "°C"));

    private static final String UNIT_NAMES = "(Ohm|V|A|W|M|Ft|Mm2|Mm|Mh|Uf|C)";
    private static final Pattern NAME = Pattern.compile("([a-z][A-Za-z0-9]*?)" + UNIT_NAMES);
    private static final Pattern NAMED = Pattern.compile("\\b([a-z][A-Za-z0-9]*?)" + UNIT_NAMES + " ([-+0-9.eE]+)");

    private Words() {}

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

    /** Names of the plan document with their values, {@code pullInV 8, ratingA 30}, as one says them: pull in 8 V. */
    static String data(String data) {
        Matcher matcher = NAMED.matcher(data);
        StringBuilder out = new StringBuilder();
        while (matcher.find()) {
            String unit = UNITS.getOrDefault(matcher.group(2), "");
            String said = words(matcher.group(1)) + " " + matcher.group(3) + (unit.isEmpty() ? "" : " " + unit);
            matcher.appendReplacement(out, Matcher.quoteReplacement(said));
        }
        return matcher.appendTail(out).toString();
    }

    /** The name of a property as one says it: {@code lengthM} is length, m. */
    static String property(String name) {
        Matcher matcher = NAME.matcher(name);
        return matcher.matches() ? words(matcher.group(1)) + ", " + UNITS.get(matcher.group(2)) : words(name);
    }

    private static String words(String camelCase) {
        return camelCase.replaceAll("(?<=[a-z0-9])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
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
