package loomwright.message;

import java.util.Locale;
import java.util.Map;

/**
 * The name of one text of the catalogue. Enums implement it: each constant is one message, or one word of a closed set.
 * {@code FindingCode.WIRE_OVERLOADED} has the code {@code wire-overloaded} and the key
 * {@code finding-code.wire-overloaded}.
 */
public interface MessageCode {
    /** As {@link Enum#name()}. */
    String name();

    /** As {@link Enum#getDeclaringClass()}. */
    Class<?> getDeclaringClass();

    /** The stable name, as programs read it: lower case, words joined by hyphens. */
    default String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The key of its text in the catalogue: the set that it belongs to, a dot, its code. */
    default String key() {
        return CatalogueKey.ofSet(getDeclaringClass()) + "." + code();
    }

    /**
     * A message of this kind.
     *
     * @param arguments those that its text names; more may be given
     */
    default Message with(Arg... arguments) {
        return Message.of(this, arguments);
    }

    /** The text in the language in use. For messages without arguments and for words of a closed set. */
    default String text() {
        return Catalogue.inUse().text(this, Map.of());
    }
}
