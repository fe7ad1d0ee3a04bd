package loomwright.comparison;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Switch;
import loomwright.comparison.PlanComparison.PropertyChange;
import loomwright.message.Catalogue;
import loomwright.message.MessageCode;
import loomwright.message.PropertyName;
import org.jspecify.annotations.Nullable;

/** Properties of the plan document, {@code pullInV} 8, as one writes them on paper: pull in 8 V. */
public final class PropertyWording {
    private PropertyWording() {}

    /** Names with their values: pull in 8 V; rating 30 A. */
    public static String list(Map<String, PropertyValue> properties) {
        return list(properties, properties.keySet());
    }

    /** The same of some properties only. */
    public static String list(Map<String, PropertyValue> properties, Set<String> wanted) {
        return properties.entrySet().stream()
                .filter(property -> wanted.contains(property.getKey()))
                .map(property -> Catalogue.inUse().property(property.getKey()) + " "
                        + value(property.getKey(), property.getValue()))
                .collect(Collectors.joining("; "));
    }

    /** What a property was and is: length 0.5 m → 0.3 m. */
    public static String change(PropertyChange change) {
        String name = change.property();
        return Catalogue.inUse().property(name) + " " + value(name, change.before()) + " → "
                + value(name, change.after());
    }

    private static String value(String name, @Nullable PropertyValue value) {
        if (value == null) {
            return ValueText.NONE.text();
        }
        if (name.endsWith("Fraction") && value.value() instanceof Double share) {
            return Catalogue.inUse().quantity(100 * share, "%");
        }
        String unit = PropertyName.of(name).unit();
        String words = name.equals("size") ? size(value.toString()) : words(value.value());
        return words + (unit == null ? "" : " " + unit);
    }

    /** What a person named is left as it is. */
    private static String words(Object value) {
        if (value instanceof Boolean yes) {
            return (yes ? ValueText.YES : ValueText.NO).text();
        } else if (value instanceof MessageCode code) {
            return code.text();
        } else if (value instanceof Enum<?> word) {
            return spaced(PropertyValue.word(word));
        } else if (value instanceof Switch.Position position) {
            return position.name() + " (" + joined(position.joins()) + ")";
        } else if (value instanceof Switch.ContactFault fault) {
            return contact(fault);
        } else if (value instanceof LiveAlternative alternative) {
            String switches = map(alternative.switches());
            List<?> conditions = alternative.conditions();
            return conditions == null ? switches : switches + " (" + list(conditions, ", ") + ")";
        } else if (value instanceof Switch.PositionByCondition positions) {
            return map(PropertyValue.listOf(positions));
        } else if (value instanceof List<?> list) {
            boolean alternatives = !list.isEmpty() && list.get(0) instanceof LiveAlternative;
            return list.isEmpty()
                    ? ValueText.NONE.text()
                    : list(list, alternatives ? ", " + ValueText.OR.text() + " " : ", ");
        } else if (value instanceof Map<?, ?> map) {
            return map(map);
        }
        return value instanceof PropertyValue property ? words(property.value()) : new PropertyValue(value).toString();
    }

    /** A contact that the plan states to be faulty: 30–56 worn 2 Ω. */
    public static String contact(Switch.ContactFault fault) {
        String contact = String.join("–", fault.between()) + " " + spaced(PropertyValue.word(fault.state()));
        Double ohm = fault.resistanceOhm();
        return ohm == null ? contact : contact + " " + new PropertyValue(ohm) + " Ω";
    }

    private static String list(List<?> items, String between) {
        return items.stream().map(PropertyWording::words).collect(Collectors.joining(between));
    }

    private static String map(Map<?, ?> map) {
        return new TreeMap<>(map)
                .entrySet().stream()
                        .map(entry -> entry.getKey() + ": " + words(entry.getValue()))
                        .collect(Collectors.joining("; "));
    }

    /** Groups of terminals that a position joins. */
    private static String joined(List<List<String>> groups) {
        return groups.isEmpty()
                ? ValueText.OPEN.text()
                : groups.stream()
                        .map(group -> String.join(" " + ValueText.WITH.text() + " ", group))
                        .collect(Collectors.joining(", "));
    }

    /** A word of a closed set of the plan document: {@code fusible-link} is fusible link. */
    public static String spaced(String word) {
        return word.replace('-', ' ');
    }

    /** A size of wire as it is written on paper. */
    public static String size(String size) {
        return size.replace("mm2", "mm²");
    }
}
