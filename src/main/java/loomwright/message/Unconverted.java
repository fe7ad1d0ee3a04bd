package loomwright.message;

import java.util.List;

/**
 * A text that a caller has glued together himself. Only for surfaces that have no messages of their own yet; this class
 * goes when the last of them has.
 *
 * @param code the stable name
 * @param text the whole text
 */
public record Unconverted(String code, @Override String text) implements MessageCode {
    public static Message message(String code, String text) {
        return Message.of(new Unconverted(code, text));
    }

    /** Lines of working. */
    public static List<Message> lines(List<String> lines) {
        return lines.stream().map(line -> message("line", line)).toList();
    }

    @Override
    public String name() {
        return code;
    }

    @Override
    public Class<?> getDeclaringClass() {
        return Unconverted.class;
    }
}
