package loomwright.drawing.sheet;

import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.comparison.PlanComparison.PropertyChange;
import loomwright.message.PropertyName;
import org.jspecify.annotations.Nullable;

/** Properties of the plan document, {@code pullInV 8}, as one writes them on paper: pull in 8 V. */
final class PropertyWords {
    private static final String NAME = "[a-z][A-Za-z0-9]*";
    /** One of a list; the value ends where the next name begins, for a list in brackets has commas of its own. */
    private static final Pattern PROPERTY =
            Pattern.compile("(?s)(" + NAME + ") (\\[.*?\\]|(?!\\[).*?)(?:, (?=" + NAME + " )|\\z)");

    private static final Pattern POSITION = Pattern.compile("(?s)\\{name: (.*?), joins: \\[(.*?)\\]\\}");

    private static final Pattern ALTERNATIVE =
            Pattern.compile("(?s)\\{(?:conditions: \\[([^\\]]*)\\], )?switches: \\{(.*?)\\}\\}");

    private PropertyWords() {}

    /** Names with their values, {@code pullInV 8, ratingA 30}: pull in 8 V; rating 30 A. */
    static String data(String data) {
        return data(data, name -> true);
    }

    /** The same of some properties only. */
    static String data(String data, Set<String> names) {
        return data(data, names::contains);
    }

    private static String data(String data, Predicate<String> wanted) {
        return PROPERTY.matcher(data)
                .results()
                .filter(found -> wanted.test(found.group(1)))
                .map(found -> PropertyName.of(found.group(1)).words() + " " + value(found.group(1), found.group(2)))
                .collect(Collectors.joining("; "));
    }

    /** What a property was and is: length 0.5 m → 0.3 m. */
    static String change(PropertyChange change) {
        String name = change.property();
        return PropertyName.of(name).words() + " " + value(name, change.before()) + " → " + value(name, change.after());
    }

    private static String value(String name, @Nullable String value) {
        if (value == null) {
            return "none";
        }
        String unit = PropertyName.of(name).unit();
        return words(name, value) + (unit == null ? "" : " " + unit);
    }

    /** What a person named is left as it is, so each property says how its values are written. */
    private static String words(String name, String value) {
        return switch (name) {
            case "use",
                    "place",
                    "form",
                    "gender",
                    "regulation",
                    "construction",
                    "ratedBy",
                    "rectifier",
                    "senseLost",
                    "stuck",
                    "excitation" -> spaced(value);
            case "directed",
                    "closedWhenStopped",
                    "conductsWhenStopped",
                    "momentary",
                    "selfExciting",
                    "exciterDiodes",
                    "stalled",
                    "constantCurrent" -> value.equals("true") ? "yes" : "no";
            case "elementsOhm", "terminals", "halves", "meantLive", "positionByCondition" ->
                value.replace("], ", "; ").replaceAll("[\\[\\]{}]", "");
            case "meantLiveWhen" ->
                value.equals("[]")
                        ? "none"
                        : ALTERNATIVE
                                .matcher(value)
                                .results()
                                .map(found -> alternative(found.group(1), found.group(2)))
                                .collect(Collectors.joining(", or "));
            case "positions" ->
                POSITION.matcher(value)
                        .results()
                        .map(found -> found.group(1) + " (" + joined(found.group(2)) + ")")
                        .collect(Collectors.joining(", "));
            case "size" -> size(value);
            default -> value;
        };
    }

    private static String alternative(@Nullable String conditions, String switches) {
        String positions = switches.replace("], ", "; ").replaceAll("[\\[\\]]", "");
        return conditions == null ? positions : positions + " (" + conditions + ")";
    }

    /** Groups of terminals, {@code [30, 15], [56, 58]}. */
    private static String joined(String groups) {
        return groups.isEmpty()
                ? "open"
                : Stream.of(groups.substring(1, groups.length() - 1).split("\\], \\[", -1))
                        .map(group -> group.replace(", ", " with "))
                        .collect(Collectors.joining(", "));
    }

    /** A word of a closed set of the plan document: {@code fusible-link} is fusible link. */
    static String spaced(String word) {
        return word.replace('-', ' ');
    }

    /** A size of wire, or a text with one. */
    static String size(String size) {
        return size.replace("mm2", "mm²");
    }
}
