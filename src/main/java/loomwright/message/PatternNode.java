package loomwright.message;

import java.util.List;
import java.util.Map;

/** A piece of a {@link MessagePattern}. */
sealed interface PatternNode {
    /** Fixed words. */
    record Literal(String text) implements PatternNode {}

    /** How an argument is written. */
    enum Form {
        PLAIN,
        /** As in a picture or post. */
        SHORT,
        /** With a capital, because it begins the sentence. */
        START,
        /** As a heading before a colon: with a capital and without an article. */
        HEAD,
        /** A list as a path: its items in short form, each leading to the next. */
        PATH
    }

    /** The place of an argument. */
    record Place(String name, Form form) implements PatternNode {}

    /** The number that decides the plural around it. */
    record PluralNumber(String name) implements PatternNode {}

    /** A piece chosen by the number of an argument, or by the length of a list. */
    record Plural(String name, Map<String, List<PatternNode>> cases) implements PatternNode {}

    /** A piece chosen by the code of a word; {@code other} also where the argument is absent. */
    record Select(String name, Map<String, List<PatternNode>> cases) implements PatternNode {}
}
