package loomwright.message;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * Numbers and units for people: three significant digits at most, and nothing finer than what a workshop meter shows, so
 * that 12.5678 V is 12.6 V, 0.0213 A is 21 mA and 0.0003 V is 0 V. What programs read keeps all its digits and does not
 * come here.
 */
final class QuantityFormat {
    private static final MathContext THREE_DIGITS = new MathContext(3, RoundingMode.HALF_EVEN);

    /**
     * One way to write a unit.
     *
     * @param from the smallest absolute value that is written so
     * @param shift the power of ten by which the value is multiplied
     * @param symbol the unit then
     * @param decimals the resolution: how many decimals are written at most
     */
    private record Scale(double from, int shift, String symbol, int decimals) {}

    /** Finest last. The resolutions are those of a pocket multimeter (common practice, no source). */
    private static final Map<String, List<Scale>> SCALES = Map.ofEntries(
            Map.entry("V", List.of(new Scale(9_995, -3, "kV", 1), new Scale(0, 0, "V", 2))),
            Map.entry("A", List.of(new Scale(0.0995, 0, "A", 2), new Scale(0, 3, "mA", 0))),
            Map.entry("W", List.of(new Scale(9_995, -3, "kW", 1), new Scale(0, 0, "W", 2))),
            Map.entry(
                    "Ω",
                    List.of(
                            new Scale(999_500, -6, "MΩ", 2),
                            new Scale(9_995, -3, "kΩ", 1),
                            new Scale(0.0995, 0, "Ω", 2),
                            new Scale(0, 3, "mΩ", 1))),
            Map.entry("J", List.of(new Scale(0.9995, 0, "J", 2), new Scale(0, 3, "mJ", 1))),
            Map.entry("H", List.of(new Scale(0.9995, 0, "H", 2), new Scale(0, 3, "mH", 2))),
            Map.entry(
                    "F",
                    List.of(
                            new Scale(0.9995, 0, "F", 2),
                            new Scale(0.00995e-6, 6, "µF", 2),
                            new Scale(0, 12, "pF", 0))),
            Map.entry("s", List.of(new Scale(0.0995, 0, "s", 2), new Scale(0, 3, "ms", 2))),
            Map.entry("°C", List.of(new Scale(0, 0, "°C", 0))),
            Map.entry("cm", List.of(new Scale(0, 0, "cm", 3))),
            Map.entry("K", List.of(new Scale(0, 0, "K", 0))),
            Map.entry("rpm", List.of(new Scale(0, 0, "rpm", 0))),
            Map.entry("kPa", List.of(new Scale(0, 0, "kPa", 0))),
            Map.entry("%", List.of(new Scale(9.95, 0, "%", 0), new Scale(0, 0, "%", 1))));

    /** Of an angle: written without a blank. */
    private static final String DEGREES = "°";

    private final char decimalMark;
    private final String groupMark;
    private final UnaryOperator<String> unitName;

    /**
     * The numbers of one language.
     *
     * @param unitName the language's word for a unit whose symbol is not international, such as rpm
     */
    QuantityFormat(char decimalMark, String groupMark, UnaryOperator<String> unitName) {
        this.decimalMark = decimalMark;
        this.groupMark = groupMark;
        this.unitName = unitName;
    }

    /**
     * A quantity with its unit.
     *
     * @param value finite
     * @param unit the symbol of a unit, or two with {@code per} between them; empty for a ratio
     */
    String text(double value, String unit) {
        int per = unit.indexOf(" per ");
        String counted = per < 0 ? unit : unit.substring(0, per);
        Scale scale = scale(Math.abs(value), counted, per >= 0);
        String number = number(value, scale);
        // A nought has no prefix: 0 A, not 0 mA.
        String symbol = number.equals("0") ? counted : scale.symbol();
        String tail = per < 0 ? "" : "/" + unit.substring(per + " per ".length());
        if (symbol.equals(DEGREES) || (symbol.isEmpty() && tail.isEmpty())) {
            return number + symbol;
        }
        return number + " " + unitName.apply(symbol) + tail;
    }

    /** A whole number, all its digits. */
    String count(long value) {
        return marked(BigDecimal.valueOf(value));
    }

    /** Per metre or kelvin any size is usual: three digits, no resolution. */
    private static Scale scale(double size, String unit, boolean per) {
        List<Scale> scales = SCALES.getOrDefault(unit, List.of(new Scale(0, 0, unit, 2)));
        Scale scale = scales.stream().filter(s -> size >= s.from()).findFirst().orElseThrow();
        return per ? new Scale(scale.from(), scale.shift(), scale.symbol(), Integer.MAX_VALUE) : scale;
    }

    private String number(double value, Scale scale) {
        BigDecimal exact = new BigDecimal(Double.toString(value)).scaleByPowerOfTen(scale.shift());
        BigDecimal rounded = exact.round(THREE_DIGITS);
        if (rounded.scale() > scale.decimals()) {
            rounded = exact.setScale(scale.decimals(), RoundingMode.HALF_EVEN);
        }
        return marked(rounded);
    }

    private String marked(BigDecimal number) {
        if (number.signum() == 0) {
            return "0";
        }
        String plain = number.abs().stripTrailingZeros().toPlainString();
        int point = plain.indexOf('.');
        StringBuilder whole = new StringBuilder(point < 0 ? plain : plain.substring(0, point));
        for (int i = whole.length() - 3; i > 0; i -= 3) {
            whole.insert(i, groupMark);
        }
        String sign = number.signum() < 0 ? "-" : "";
        return sign + whole + (point < 0 ? "" : decimalMark + plain.substring(point + 1));
    }
}
