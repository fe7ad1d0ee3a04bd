package loomwright.service.problem;

import static loomwright.message.Arg.arg;

import java.util.Locale;
import java.util.regex.Pattern;
import loomwright.answer.InputError;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/** A fault of the input in words: what is wrong, where by the name that its writer knows, and what would be right. */
final class ErrorText {
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?([eE][+-]?\\d+)?");

    /** The sentences. */
    private enum Code implements MessageCode {
        MISSING,
        UNKNOWN_NAME,
        UNKNOWN_PARAMETER,
        NUMBER_IN_QUOTES,
        NOT_ACCEPTED,
        EXPECTED,
        WRONG_SHAPE,
        OPEN,
        ALONE
    }

    private ErrorText() {}

    static String of(InputError fault, boolean inBody) {
        return message(fault, inBody).text();
    }

    private static Message message(InputError fault, boolean inBody) {
        String value = fault.value();
        Code code = code(fault, inBody);
        return code.with(
                arg("place", Problem.shortened(place(fault, inBody))),
                arg("name", Problem.shortened(name(fault.pointer()))),
                arg("value", value == null ? "" : quoted(Problem.shortened(value), fault.described())),
                // What is accepted may show the place in a second line; this is one sentence.
                arg("accepted", fault.accepted().text().lines().findFirst().orElse("")),
                arg("suggestions", fault.suggestion() == null ? 0 : 1),
                arg("suggestion", fault.suggestion() == null ? "" : fault.suggestion()));
    }

    private static Code code(InputError fault, boolean inBody) {
        return switch (fault.code()) {
            case MISSING -> Code.MISSING;
            case UNKNOWN_NAME -> inBody ? Code.UNKNOWN_NAME : Code.UNKNOWN_PARAMETER;
            case NOT_STATED -> fault.place() == null ? Code.ALONE : Code.OPEN;
            case WRONG_SHAPE -> Code.WRONG_SHAPE;
            case NUMBER_AS_TEXT -> Code.NUMBER_IN_QUOTES;
            default -> fault.value() == null ? Code.EXPECTED : Code.NOT_ACCEPTED;
        };
    }

    private static String place(InputError fault, boolean inBody) {
        @Nullable String known = fault.place();
        if (known != null && !known.isEmpty()) {
            return known.indexOf(' ') < 0 ? known : capitalised(known);
        }
        String path = fault.pointer().replaceFirst("^/", "");
        if (inBody && fault.code() == InputError.Code.UNKNOWN_NAME) {
            return "The body";
        }
        return path.isEmpty() ? "The body" : name(path).equals(path) ? path : fault.pointer();
    }

    /** A place begins its sentence; the name of a property keeps its spelling. */
    private static String capitalised(String place) {
        return place.substring(0, 1).toUpperCase(Locale.ROOT) + place.substring(1);
    }

    /** The last name of a pointer (RFC 6901). */
    private static String name(String pointer) {
        return pointer.substring(pointer.lastIndexOf('/') + 1)
                .replace("~1", "/")
                .replace("~0", "~");
    }

    private static String quoted(String value, boolean described) {
        return described || NUMBER.matcher(value).matches() ? value : '"' + value + '"';
    }
}
