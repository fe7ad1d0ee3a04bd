package loomwright.list;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads lengths and values as people write them. */
public final class Quantities {
    private static final String NUMBER = "(\\d+(?:[.,]\\d+)?|[.,]\\d+)";
    private static final Pattern PLAIN = Pattern.compile("[+-]?" + NUMBER);
    private static final Pattern LENGTH = Pattern.compile(NUMBER
            + "\\s*(mm|cm|m|metres?|meters?|ft|feet|foot|'|′|in|inch|inches|\"|″|'')?\\.?(?:\\s*"
            + NUMBER
            + "\\s*(in|inch|inches|\"|″|'')?\\.?)?");
    private static final Pattern WITH_UNIT = Pattern.compile(
            NUMBER
                    + "(?:\\s*/\\s*"
                    + NUMBER
                    + ")?\\s*(volts?|v|watts?|w|ah|amp ?hours?|amps?|amperes?|a|kohms?|kω|k|ohms?|ω|r|rpm|rev/min|µf|uf|mfd|microfarads?|mm2|mm²|awg)\\b",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.UNICODE_CHARACTER_CLASS);
    /**
     * Beside the name of a part, where 56a and 58R are terminals: no amperes without a blank, no R for ohms. A small a after one
     * digit is a terminal too, as in "glow plug 3 a".
     */
    private static final Pattern BESIDE_A_NAME = Pattern.compile(
            NUMBER + "(?:\\s*/\\s*" + NUMBER
                    + ")?\\s*(volts?|v|watts?|w|ah|ohms?|ω|amps?(?=\\b)|(?<=\\s)(?-i:A)|(?<=(?:\\d|[.,])\\d\\s)a)(?![\\w+-])",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.UNICODE_CHARACTER_CLASS);

    private static final Pattern TIMES =
            Pattern.compile("\\b(\\d{1,2})\\s*(?:x|×|off)\\s*(?=[\\d.,])", Pattern.CASE_INSENSITIVE);
    private static final Pattern ABOUT = Pattern.compile("^(?:about|approx\\.?|approximately|circa|ca\\.?|~|≈)\\s*");
    private static final Map<String, String> FRACTIONS = Map.of("½", "1/2", "¼", "1/4", "¾", "3/4");
    private static final Pattern FRACTION = Pattern.compile("(?:(\\d{1,3})[\\s-]+)?\\b([1-9]\\d?)/([1-9]\\d?)\\b");
    private static final Pattern THOUSANDS = Pattern.compile("^[+-]?[1-9]\\d{0,2},\\d{3}(?!\\d)");
    /** Units of this class by their symbols, where the two differ. */
    private static final Map<String, String> LETTERS = Map.of("Ω", "ohm", "µF", "uF", "mm²", "mm2");

    private static final double MILLIMETRES_PER_METRE = 1000;
    private static final double METRES_PER_INCH = 0.0254;
    private static final int INCHES_PER_FOOT = 12;

    private Quantities() {}

    /**
     * One quantity as a person or a spreadsheet writes it: {@code 5,2}, {@code 10 ft}, {@code 8 A}, {@code 4' 6"}.
     *
     * @param unit the symbol of the unit wanted, which a number alone is in: {@code A}, {@code V}, {@code W}, {@code Ω},
     *     {@code µF}, {@code m}, {@code mm}; of others only numbers alone are read
     * @return in that unit; empty if it is no such quantity, if it says another unit, or if it may mean two numbers:
     *     {@code 1,234} is a thousand and more in some countries, and a little more than one in others
     */
    public static OptionalDouble inUnit(String text, String unit) {
        String stripped = text.strip();
        if (THOUSANDS.matcher(stripped).find()) {
            return OptionalDouble.empty();
        }
        OptionalDouble plain = number(stripped);
        if (plain.isPresent()) {
            return plain;
        }
        if (unit.equals("m") || unit.equals("mm")) {
            OptionalDouble lengthM = lengthM(stripped, "");
            return unit.equals("m") || lengthM.isEmpty()
                    ? lengthM
                    : OptionalDouble.of(lengthM.getAsDouble() * MILLIMETRES_PER_METRE);
        }
        Values values = values(stripped);
        boolean alone = values.byUnit().size() == 1 && values.rest().isEmpty() && values.times() == 1;
        return alone && values.secondW().isEmpty()
                ? values.in(LETTERS.getOrDefault(unit, unit))
                : OptionalDouble.empty();
    }

    /** A number with a point or a comma; {@code 1,5} is one and a half. */
    static OptionalDouble number(String text) {
        String stripped = text.strip();
        return PLAIN.matcher(stripped).matches()
                ? OptionalDouble.of(Double.parseDouble(stripped.replace(',', '.')))
                : OptionalDouble.empty();
    }

    /**
     * A length.
     *
     * @param unit what a number without a unit is in
     * @return in metres; empty if it is no length
     */
    static OptionalDouble lengthM(String text, String unit) {
        Matcher m = LENGTH.matcher(withoutFractions(
                ABOUT.matcher(text.strip().toLowerCase(Locale.ROOT)).replaceFirst("")));
        if (!m.matches()) {
            return OptionalDouble.empty();
        }
        String written = m.group(2) == null ? unit : m.group(2);
        boolean feet = isFeet(written);
        if (m.group(3) != null && !feet) {
            return OptionalDouble.empty();
        }
        double value = parse(m.group(1));
        if (feet) {
            double inches = m.group(3) == null ? 0 : parse(m.group(3));
            return OptionalDouble.of((value * INCHES_PER_FOOT + inches) * METRES_PER_INCH);
        }
        return switch (written) {
            case "mm" -> OptionalDouble.of(value / 1000);
            case "cm" -> OptionalDouble.of(value / 100);
            case "m", "metre", "metres", "meter", "meters" -> OptionalDouble.of(value);
            case "in", "inch", "inches", "\"", "″", "''" -> OptionalDouble.of(value * METRES_PER_INCH);
            default -> OptionalDouble.empty();
        };
    }

    /** {@code 1 1/2 ft}, {@code 1½ ft} as decimals. */
    private static String withoutFractions(String text) {
        StringBuilder slashed = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            String sign = text.substring(i, i + 1);
            slashed.append(FRACTIONS.containsKey(sign) ? " " + FRACTIONS.get(sign) : sign);
        }
        Matcher fraction = FRACTION.matcher(slashed);
        return fraction.replaceAll(found -> {
                    double whole = found.group(1) == null ? 0 : Double.parseDouble(found.group(1));
                    double part = Double.parseDouble(found.group(2)) / Double.parseDouble(found.group(3));
                    return String.valueOf(whole + part);
                })
                .strip();
    }

    private static boolean isFeet(String unit) {
        return unit.equals("ft") || unit.equals("feet") || unit.equals("foot") || unit.equals("'") || unit.equals("′");
    }

    /** What stands on a part or in its row: {@code 12 V 45/40 W}, {@code 3 x 10 W}, {@code 1.5 ohm}. */
    record Values(Map<String, Double> byUnit, Optional<Double> secondW, int times, String rest) {
        Values {
            byUnit = Map.copyOf(byUnit);
        }

        /** The value in a unit; {@code W2} is the second figure of {@code 45/40 W}. */
        OptionalDouble in(String unit) {
            Double value = unit.equals("W2") ? secondW.orElse(null) : byUnit.get(unit);
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
        }

        boolean isEmpty() {
            return byUnit.isEmpty();
        }
    }

    /** All values with a unit in a text, by unit: V, W, A, Ah, ohm, uF, mm2, AWG, rpm; the rest of the text beside them. */
    static Values values(String text) {
        return values(text, WITH_UNIT);
    }

    /** As {@link #values}, from a text that names a part and perhaps its terminal. */
    static Values besideName(String text) {
        return values(text, BESIDE_A_NAME);
    }

    private static Values values(String text, Pattern pattern) {
        String left = text;
        int times = 1;
        Matcher multiple = TIMES.matcher(left);
        if (multiple.find()) {
            times = Integer.parseInt(multiple.group(1));
            left = left.substring(0, multiple.start()) + left.substring(multiple.end());
        }
        Map<String, Double> byUnit = new LinkedHashMap<>();
        Optional<Double> second = Optional.empty();
        Matcher m = pattern.matcher(left);
        StringBuilder rest = new StringBuilder();
        int end = 0;
        while (m.find()) {
            String unit = unit(m.group(3));
            double scale = m.group(3).toLowerCase(Locale.ROOT).startsWith("k") ? 1000 : 1;
            byUnit.putIfAbsent(unit, parse(m.group(1)) * scale);
            if (m.group(2) != null && unit.equals("W")) {
                second = Optional.of(parse(m.group(2)));
            }
            rest.append(left.substring(end, m.start()));
            end = m.end();
        }
        rest.append(left.substring(end));
        return new Values(
                byUnit, second, times, rest.toString().replaceAll("\\s+", " ").strip());
    }

    private static String unit(String written) {
        String lower = written.toLowerCase(Locale.ROOT);
        if (lower.startsWith("v")) {
            return "V";
        }
        if (lower.startsWith("w")) {
            return "W";
        }
        if (lower.equals("ah") || lower.startsWith("amp hour") || lower.startsWith("amphour")) {
            return "Ah";
        }
        if (lower.equals("awg")) {
            return "AWG";
        }
        if (lower.startsWith("a")) {
            return "A";
        }
        if (lower.equals("rpm") || lower.equals("rev/min")) {
            return "rpm";
        }
        if (lower.startsWith("mm")) {
            return "mm2";
        }
        return lower.endsWith("f") || lower.startsWith("mf") || lower.startsWith("micro") ? "uF" : "ohm";
    }

    private static double parse(String number) {
        return Double.parseDouble(number.replace(',', '.'));
    }
}
