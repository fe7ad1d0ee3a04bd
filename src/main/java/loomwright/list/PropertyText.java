package loomwright.list;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import loomwright.circuit.Switch;
import org.jspecify.annotations.Nullable;

/** A value of the plan document as it stands in one cell, and back. Several values are separated by a semicolon. */
final class PropertyText {
    private static final String BETWEEN = "; ";

    private PropertyText() {}

    /** The text of a value that {@link #parse} reads back; empty if it is no plain value or list of them. */
    static Optional<String> write(Object value) {
        if (value instanceof List<?> list) {
            return list.stream()
                            .allMatch(each ->
                                    !(each instanceof List) && plain(each).isPresent())
                    ? Optional.of(
                            list.stream().map(each -> plain(each).orElse("")).collect(Collectors.joining(BETWEEN)))
                    : Optional.empty();
        }
        return plain(value);
    }

    private static Optional<String> plain(@Nullable Object value) {
        if (value instanceof Boolean yes) {
            return Optional.of(yes ? "yes" : "no");
        }
        if (value instanceof Number number) {
            return Optional.of(Fixed.text(number.doubleValue()));
        }
        if (value instanceof Map<?, ?> fault && fault.get("between") instanceof List<?> between) {
            String ohm =
                    plain(fault.get("resistanceOhm")).map(text -> " " + text).orElse("");
            return Optional.of(fault.get("state") + " " + between.get(0) + " " + between.get(1) + ohm);
        }
        return value instanceof String text ? Optional.of(text) : Optional.empty();
    }

    /** {@code worn 30 15 0.4}: what is wrong with a contact, between which terminals, and its ohms. */
    private static Optional<Object> faultOfContact(String text) {
        String[] words = text.split("\\s+", -1);
        if (words.length < 3 || words.length > 4) {
            return Optional.empty();
        }
        Map<String, Object> fault = new LinkedHashMap<>();
        fault.put("state", words[0]);
        fault.put("between", List.of(words[1], words[2]));
        if (words.length == 4) {
            OptionalDouble ohm = Quantities.number(words[3]);
            if (ohm.isEmpty()) {
                return Optional.empty();
            }
            fault.put("resistanceOhm", ohm.getAsDouble());
        }
        return Optional.of(fault);
    }

    /**
     * The value of a text.
     *
     * @param type of the property in its record
     * @return empty if the text is none of that type
     */
    static Optional<Object> parse(String text, Type type) {
        if (type instanceof ParameterizedType list && list.getRawType() == List.class) {
            List<Object> values = new ArrayList<>();
            for (String each : text.split(";", -1)) {
                Optional<Object> value = parse(each.strip(), list.getActualTypeArguments()[0]);
                if (value.isEmpty()) {
                    return Optional.empty();
                }
                values.add(value.get());
            }
            return Optional.of(values);
        }
        if (type == Switch.ContactFault.class) {
            return faultOfContact(text);
        }
        if (type == Double.class || type == double.class) {
            OptionalDouble number = Quantities.number(text);
            return number.isPresent() ? Optional.of(number.getAsDouble()) : Optional.empty();
        }
        if (type == Integer.class || type == int.class) {
            OptionalDouble number = Quantities.number(text);
            return number.isPresent() ? Optional.of((int) number.getAsDouble()) : Optional.empty();
        }
        if (type == Boolean.class || type == boolean.class) {
            String plain = Columns.plain(text);
            boolean yes = plain.equals("yes") || plain.equals("true");
            return yes || plain.equals("no") || plain.equals("false") ? Optional.of(yes) : Optional.empty();
        }
        boolean word = type == String.class || (type instanceof Class<?> plain && plain.isEnum());
        return word ? Optional.of(text) : Optional.empty();
    }
}
