package loomwright.comparison;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loomwright.answer.RecordProperties;
import loomwright.circuit.TerminalRef;

/**
 * The value of a property of the plan document.
 *
 * @param value as the record of the plan holds it
 */
public record PropertyValue(Object value) {
    /** The properties of a record of the plan that have a value, by name. */
    static Map<String, PropertyValue> listOf(Record record) {
        Map<String, PropertyValue> values = new LinkedHashMap<>();
        RecordProperties.values(record).forEach((name, value) -> values.put(name, new PropertyValue(value)));
        return values;
    }

    /** As text for programs, a number to six digits. Values with the same text count as equal. */
    @Override
    public String toString() {
        return text(value);
    }

    private static String text(Object value) {
        if (value instanceof Double number) {
            return number(number);
        } else if (value instanceof Enum<?> word) {
            return word(word);
        } else if (value instanceof List<?> list) {
            return list.stream().map(PropertyValue::text).collect(Collectors.joining(", ", "[", "]"));
        } else if (value instanceof Map<?, ?> map) {
            return new TreeMap<>(map)
                    .entrySet().stream()
                            .map(e -> e.getKey() + ": " + text(e.getValue()))
                            .collect(Collectors.joining(", ", "{", "}"));
        } else if (value instanceof Record record && !(record instanceof TerminalRef)) {
            return listOf(record).entrySet().stream()
                    .map(e -> e.getKey() + ": " + e.getValue())
                    .collect(Collectors.joining(", ", "{", "}"));
        }
        return value.toString();
    }

    /** A word of a closed set as the plan document spells it. */
    static String word(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** A number to six digits, without an exponent where a person would write none. */
    static String number(double number) {
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(6)).stripTrailingZeros();
        double amount = Math.abs(number);
        return number == 0 ? "0" : amount >= 1e-4 && amount < 1e9 ? rounded.toPlainString() : rounded.toString();
    }
}
