package loomwright.service.form;

import java.util.Locale;

/** EnumWords of a closed set are written {@code common-practice} outside and {@code COMMON_PRACTICE} in Java. */
public final class EnumWords {
    private EnumWords() {}

    /** The word outside. */
    public static String of(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
