package loomwright.catalogue;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loomwright.answer.RecordProperties;
import loomwright.circuit.Part;

/**
 * The properties of each kind of part as the plan document has them, taken from the records themselves, so that a new kind
 * is known as soon as it exists.
 */
public final class PartShape {
    private static final Pattern NEXT_WORD = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])");
    private static final Pattern NO_LETTER = Pattern.compile("[^a-z0-9]");
    private static final Map<String, Map<String, Type>> KINDS = readKinds();
    private static final Map<String, String> BY_PLAIN_NAME = readNames();

    private PartShape() {}

    /** The words of all kinds. */
    public static List<String> kinds() {
        return List.copyOf(KINDS.keySet());
    }

    /** The properties of a kind with their types, in the order of the record, without {@code id} and {@code label}. */
    public static Map<String, Type> properties(String kind) {
        return KINDS.getOrDefault(kind, Map.of());
    }

    /** The property that a heading names: {@code contact resistance ohm} and {@code contactResistanceOhm} are one. */
    public static Optional<String> findProperty(String heading) {
        return Optional.ofNullable(BY_PLAIN_NAME.get(plain(heading)));
    }

    /** How a property is headed in a list: {@code contact resistance ohm}. */
    public static String heading(String property) {
        String[] words = NEXT_WORD.split(property, -1);
        List<String> lower = new ArrayList<>();
        for (String word : words) {
            lower.add(word.length() == 1 ? word : word.toLowerCase(Locale.ROOT));
        }
        return String.join(" ", lower);
    }

    private static String plain(String heading) {
        String lower = heading.toLowerCase(Locale.ROOT).replace("ω", "ohm").replace("µ", "u");
        return NO_LETTER.matcher(lower).replaceAll("");
    }

    private static Map<String, Map<String, Type>> readKinds() {
        Map<String, Map<String, Type>> kinds = new LinkedHashMap<>();
        leaves(Part.class).forEach(record -> {
            Map<String, Type> properties = RecordProperties.types(record);
            properties.keySet().removeAll(List.of("id", "label"));
            kinds.put(record.getAnnotation(JsonTypeName.class).value(), properties);
        });
        return kinds;
    }

    private static Stream<Class<?>> leaves(Class<?> type) {
        Class<?>[] permitted = type.getPermittedSubclasses();
        return permitted == null ? Stream.of(type) : Stream.of(permitted).flatMap(PartShape::leaves);
    }

    private static Map<String, String> readNames() {
        Map<String, String> names = new LinkedHashMap<>();
        KINDS.values().forEach(properties -> properties.keySet().forEach(name -> names.put(plain(name), name)));
        return names;
    }
}
