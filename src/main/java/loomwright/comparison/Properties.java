package loomwright.comparison;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loomwright.circuit.TerminalRef;
import loomwright.comparison.PlanComparison.PropertyChange;
import org.jspecify.annotations.Nullable;

/** The properties of a record of the plan document as text, and those in which two records differ. */
final class Properties {
    private Properties() {}

    /** The properties that differ, leaving out {@code except}. */
    static List<PropertyChange> changes(Record before, Record after, Set<String> except) {
        Map<String, String> was = texts(before);
        Map<String, String> is = texts(after);
        Set<String> names = new TreeSet<>(was.keySet());
        names.addAll(is.keySet());
        List<PropertyChange> changes = new ArrayList<>();
        for (String name : names) {
            String wasText = was.get(name);
            String isText = is.get(name);
            boolean equal = wasText == null ? isText == null : wasText.equals(isText);
            if (!equal && !except.contains(name)) {
                changes.add(new PropertyChange(name, wasText, isText));
            }
        }
        return changes;
    }

    /** The properties that have a value, by name. */
    static Map<String, String> texts(Record record) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            Object value = value(record, component);
            if (value != null) {
                texts.put(component.getName(), text(value));
            }
        }
        return texts;
    }

    private static @Nullable Object value(Record record, RecordComponent component) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(component + " of a record of the plan cannot be read", e);
        }
    }

    private static String text(Object value) {
        if (value instanceof Double number) {
            return number(number);
        } else if (value instanceof Enum<?> word) {
            return word(word);
        } else if (value instanceof List<?> list) {
            return list.stream().map(Properties::text).collect(Collectors.joining(", ", "[", "]"));
        } else if (value instanceof Map<?, ?> map) {
            return new TreeMap<>(map)
                    .entrySet().stream()
                            .map(e -> e.getKey() + ": " + text(e.getValue()))
                            .collect(Collectors.joining(", ", "{", "}"));
        } else if (value instanceof TerminalRef terminal) {
            return terminal.toString();
        } else if (value instanceof Record record) {
            return texts(record).entrySet().stream()
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
