package loomwright.message;

import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import loomwright.message.Argument.Quantity;

/** Finds a message by its code and reads its arguments, so that no test depends on wording. */
public final class MessageFinder {
    private MessageFinder() {}

    /** The only message of a kind. */
    public static Message find(Collection<Message> messages, MessageCode code) {
        return messages.stream()
                .filter(m -> m.code() == code)
                .reduce((a, b) -> {
                    throw new AssertionError(code.key() + " is said twice in " + messages);
                })
                .orElseThrow(() -> new AssertionError(code.key() + " is not said in " + messages));
    }

    /** A quantity in a message. */
    public static double quantity(Message message, String name) {
        if (message.arguments().get(name) instanceof Quantity quantity) {
            return quantity.value();
        }
        throw new AssertionError("no quantity " + name + " in " + message);
    }

    /** The ids of the things, or codes of the words and messages, in a list. */
    public static List<String> words(Message message, String name) {
        if (message.arguments().get(name) instanceof Argument.Listing list) {
            return list.items().stream().map(MessageFinder::word).toList();
        }
        throw new AssertionError("no list " + name + " in " + message);
    }

    /** A message within a message. */
    public static Message nested(Message message, String name) {
        if (message.arguments().get(name) instanceof Argument.Nested nested) {
            return nested.message();
        }
        throw new AssertionError("no message " + name + " in " + message);
    }

    /** When it is: the step, then each switch with its position, as "crank", "lights dip". */
    public static List<String> instant(Message message) {
        if (message.arguments().get("when") instanceof Argument.Instant instant) {
            return Stream.concat(
                            Stream.of(instant.step().code()),
                            instant.switches().stream().map(at -> at.operated().id() + " " + at.position()))
                    .toList();
        }
        throw new AssertionError("no instant in " + message);
    }

    /** An argument as the code of its word, the id of its thing, or its text. */
    public static String word(Message message, String name) {
        Argument argument = message.arguments().get(name);
        if (argument == null) {
            throw new AssertionError("no word " + name + " in " + message);
        }
        return word(argument);
    }

    /** The ids of all things and all texts of the plan that a message names. */
    public static List<String> names(Message message) {
        return message.arguments().values().stream()
                .filter(argument -> argument instanceof Argument.Thing || argument instanceof Argument.Verbatim)
                .map(MessageFinder::word)
                .toList();
    }

    private static String word(Argument argument) {
        if (argument instanceof Argument.Word word) {
            return word.code().code();
        } else if (argument instanceof Argument.Thing thing) {
            return thing.id();
        } else if (argument instanceof Argument.Verbatim text) {
            return text.text();
        } else if (argument instanceof Argument.Nested nested) {
            return nested.message().code().code();
        }
        throw new AssertionError("no word: " + argument);
    }
}
