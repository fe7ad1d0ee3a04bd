package loomwright.message;

import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The name of a property as a person says it. Names in the contract and in the plan document end in the unit of the
 * value: {@code pullInV} is a pull in, in V; {@code heatWPerM} a heat, in W per m.
 *
 * @param words what it is; empty where the name is a unit and no more, as {@code ohmPerM}
 * @param unit in which; absent if it has none
 */
public record PropertyName(String words, @Nullable String unit) {
    private static final Map<String, String> SYMBOLS = Map.ofEntries(
            Map.entry("V", "V"),
            Map.entry("Kv", "kV"),
            Map.entry("A", "A"),
            Map.entry("W", "W"),
            Map.entry("J", "J"),
            Map.entry("Mj", "mJ"),
            Map.entry("Ohm", "Ω"),
            Map.entry("ohm", "Ω"),
            Map.entry("Mh", "mH"),
            Map.entry("Uf", "µF"),
            Map.entry("Pf", "pF"),
            Map.entry("Km", "km"),
            Map.entry("M", "m"),
            Map.entry("Mm", "mm"),
            Map.entry("Mm2", "mm²"),
            Map.entry("Ft", "ft"),
            Map.entry("S", "s"),
            Map.entry("Ms", "ms"),
            Map.entry("Rpm", "rpm"),
            Map.entry("C", "°C"),
            Map.entry("K", "K"),
            Map.entry("Kpa", "kPa"),
            Map.entry("Degrees", "degrees"),
            Map.entry("Percent", "%"));

    private static final String UNIT = "(" + String.join("|", SYMBOLS.keySet()) + ")";
    /** Words, a unit, and by what and how many of them it is counted; a capital or digit before it makes it no unit. */
    private static final Pattern FORM = Pattern.compile("(.*?)((?<![A-Z0-9])" + UNIT + ")?(Per([0-9]*)" + UNIT + ")?");

    private static final Pattern NEXT_WORD = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])");

    public static PropertyName of(String name) {
        Matcher form = FORM.matcher(name);
        if (!form.matches()) {
            throw new IllegalArgumentException(name + " is no name of a property");
        }
        String unit = symbol(form.group(3));
        String per = form.group(4) == null ? "" : " per " + (form.group(5) + " " + symbol(form.group(6))).strip();
        String whole = (unit + per).strip();
        return new PropertyName(words(form.group(1)), whole.isEmpty() ? null : whole);
    }

    private static String symbol(@Nullable String unit) {
        return unit == null ? "" : Objects.requireNonNull(SYMBOLS.get(unit));
    }

    private static String words(String camelCase) {
        return NEXT_WORD.matcher(camelCase).replaceAll(" ").toLowerCase(Locale.ROOT);
    }

    /** Above a column of figures: "average coil, V". */
    public String heading() {
        return unit == null ? words : words.isEmpty() ? unit : words + ", " + unit;
    }
}
