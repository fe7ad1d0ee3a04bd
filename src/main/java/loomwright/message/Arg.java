package loomwright.message;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Nested;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.Thing;
import loomwright.message.Argument.Verbatim;
import loomwright.message.Argument.Word;

/**
 * A named argument. Import {@link #arg} and its kin statically.
 *
 * @param name as in the contract: camel case; the name of a quantity ends in its unit ({@code dropV}), that of a ratio in
 *     Ratio, Fraction or Factor
 */
public record Arg(String name, Argument value) {

    /**
     * A quantity or a ratio; the name says which and in which unit.
     *
     * @throws IllegalArgumentException if the name ends in no unit and in none of Ratio, Fraction, Factor, or the value is
     *     not finite
     */
    public static Arg arg(String name, double value) {
        return new Arg(name, new Quantity(value, UnitOfName.get(name)));
    }

    /** A number of things, or a whole number of the unit that the name ends in. */
    public static Arg arg(String name, int value) {
        return arg(name, (long) value);
    }

    /** As {@link #arg(String, int)}. */
    public static Arg arg(String name, long value) {
        return UnitOfName.has(name) ? arg(name, (double) value) : new Arg(name, new Count(value));
    }

    /** A name or other text that is not ours to translate. */
    public static Arg arg(String name, String text) {
        return new Arg(name, new Verbatim(text));
    }

    /** A number with all its digits, as it is written in a request: the limit of a range, the value given. */
    public static Arg plain(String name, double value) {
        return arg(name, plain(value));
    }

    /** A number as it is written in a request: 1000000, not 1.0E6; 0.000001, not 1.0E-6. */
    public static String plain(double value) {
        return Math.abs(value) < 1e15
                ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString()
                : String.valueOf(value);
    }

    /** A word of a closed set. */
    public static Arg arg(String name, MessageCode word) {
        return new Arg(name, new Word(word));
    }

    /** A message within a message. */
    public static Arg arg(String name, Message message) {
        return new Arg(name, new Nested(message));
    }

    /** A thing of the plan, an instant, or whatever else is an argument already. */
    public static Arg arg(String name, Argument value) {
        return new Arg(name, value);
    }

    /** Several things of the plan. */
    public static Arg things(String name, Collection<Thing> things) {
        return list(name, things);
    }

    /** Several words of a closed set. */
    public static Arg words(String name, Collection<? extends MessageCode> words) {
        return list(name, words.stream().map(Word::new).toList());
    }

    /** Several texts that are not ours to translate. */
    public static Arg texts(String name, Collection<String> texts) {
        return list(name, texts.stream().map(Verbatim::new).toList());
    }

    /** Several messages. */
    public static Arg messages(String name, Collection<Message> messages) {
        return list(name, messages.stream().map(Nested::new).toList());
    }

    /** Several quantities of the unit that the name ends in. */
    public static Arg quantities(String name, Collection<Double> values) {
        String unit = UnitOfName.get(name);
        return list(name, values.stream().map(v -> new Quantity(v, unit)).toList());
    }

    /** Several arguments of any kind. */
    public static Arg list(String name, Collection<? extends Argument> items) {
        return new Arg(name, new Listing(List.copyOf(items)));
    }
}
