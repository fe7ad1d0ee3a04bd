package loomwright.message;

import java.util.Locale;
import java.util.regex.Pattern;

/** How the keys of the catalogue are made of the names of the enums. */
final class CatalogueKey {
    private static final Pattern NEXT_WORD = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])");

    private static final ClassValue<String> SETS = new ClassValue<>() {
        @Override
        protected String computeValue(Class<?> type) {
            String name =
                    NEXT_WORD.matcher(type.getSimpleName()).replaceAll("-").toLowerCase(Locale.ROOT);
            Class<?> around = type.getEnclosingClass();
            return around == null ? name : ofSet(around) + "-" + name;
        }
    };

    private CatalogueKey() {}

    /** {@code FindingCode} is {@code finding-code}; {@code Basis.Status} is {@code basis-status}. */
    static String ofSet(Class<?> type) {
        return SETS.get(type);
    }
}
