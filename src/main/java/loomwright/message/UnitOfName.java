package loomwright.message;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** The unit in which the name of a quantity ends. */
final class UnitOfName {
    private static final List<String> RATIOS = List.of("Ratio", "Fraction", "Factor");
    /** Asked for with every check of a plan, of names that are all our own. */
    private static final Map<String, String> KNOWN = new ConcurrentHashMap<>();

    private static final Map<String, Boolean> HAVING = new ConcurrentHashMap<>();

    private UnitOfName() {}

    static boolean has(String name) {
        return HAVING.computeIfAbsent(name, key -> PropertyName.of(key).unit() != null);
    }

    /**
     * The symbol of the unit; empty for a ratio.
     *
     * @throws IllegalArgumentException if the name says neither
     */
    static String get(String name) {
        return KNOWN.computeIfAbsent(name, UnitOfName::read);
    }

    private static String read(String name) {
        @Nullable String unit = PropertyName.of(name).unit();
        if (unit != null) {
            return unit;
        }
        if (RATIOS.stream().anyMatch(ending -> name.endsWith(ending) || name.equalsIgnoreCase(ending))) {
            return "";
        }
        throw new IllegalArgumentException(
                "the name '" + name + "' of a quantity ends in no unit and in none of " + RATIOS);
    }
}
