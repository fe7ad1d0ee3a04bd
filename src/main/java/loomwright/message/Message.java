package loomwright.message;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Nested;
import loomwright.message.Argument.SwitchPosition;
import loomwright.message.Argument.Thing;

/**
 * Something to tell a person: which message of the catalogue, and what stands in its places. The words are added last, by
 * the {@link Catalogue} of the reader's language.
 *
 * @param code which message
 * @param arguments by name, in reading order
 */
public record Message(MessageCode code, Map<String, Argument> arguments) {
    public Message {
        Objects.requireNonNull(code);
        arguments = Collections.unmodifiableMap(new LinkedHashMap<>(arguments));
        assert Catalogue.english().lacking(code, arguments).isEmpty()
                : code.key() + " lacks " + Catalogue.english().lacking(code, arguments);
    }

    /**
     * A message.
     *
     * @param arguments those that its text names; more may be given, for programs
     */
    public static Message of(MessageCode code, Arg... arguments) {
        Map<String, Argument> byName = new LinkedHashMap<>();
        for (Arg argument : arguments) {
            byName.put(argument.name(), argument.value());
        }
        return new Message(code, byName);
    }

    /** The text in the language in use. */
    public String text() {
        return Catalogue.inUse().text(code, arguments);
    }

    /** The short form for pictures and posts; the text where there is none. */
    public String shortText() {
        return Catalogue.inUse().shortText(code, arguments);
    }

    /** The ids of all things of the plan that the message names, each once, in reading order. */
    public List<String> ids() {
        Set<String> ids = new LinkedHashSet<>();
        arguments.values().forEach(argument -> collect(argument, ids));
        return new ArrayList<>(ids);
    }

    private static void collect(Argument argument, Set<String> ids) {
        if (argument instanceof Thing thing) {
            ids.add(thing.id());
        } else if (argument instanceof Listing list) {
            list.items().forEach(item -> collect(item, ids));
        } else if (argument instanceof Nested nested) {
            ids.addAll(nested.message().ids());
        } else if (argument instanceof SwitchPosition position) {
            ids.add(position.operated().id());
        } else if (argument instanceof Instant) {
            // When something happens names no thing that it happens to.
            return;
        }
    }

    @Override
    public String toString() {
        return code.key() + arguments;
    }
}
