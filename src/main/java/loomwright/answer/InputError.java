package loomwright.answer;

import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * One thing wrong with the input.
 *
 * @param code the kind of fault; stable, tests and callers may rely on it
 * @param pointer where: a JSON pointer (RFC 6901) into the body, "" for the whole body, or the bare name of a query or
 *     path parameter
 * @param value what stood there, as text; absent where nothing did
 * @param accepted what would have been accepted; in words a noun phrase without a full stop
 * @param place where, as the writer of the input sees it: "row 8, column to", "wire W8: lengthM"; of a name that does not
 *     exist, whose name it should be; absent if the pointer is all that is known
 * @param cell the row and column of a list that the place is in; absent outside of lists
 * @param suggestion the name or word that was most likely meant; absent if none comes near
 * @param described whether {@code value} says in words of ours what stood there ("a list of 3"), and is not the text itself
 */
public record InputError(
        Code code,
        String pointer,
        @Nullable String value,
        Message accepted,
        @Nullable String place,
        @Nullable Cell cell,
        @Nullable String suggestion,
        boolean described) {
    /**
     * A cell of a list.
     *
     * @param row from 1
     * @param column its heading; empty for the whole row
     */
    public record Cell(int row, String column) {}

    public InputError(Code code, String pointer, @Nullable String value, Message accepted) {
        this(code, pointer, value, accepted, null, null, null, false);
    }

    /** A fault of something that is no single value. */
    public static InputError described(Code code, String pointer, Message found, Message accepted) {
        return new InputError(code, pointer, found.text(), accepted, null, null, null, true);
    }

    /** The kinds of fault. */
    public enum Code {
        /** Something required is not there. */
        MISSING,
        /** A property or parameter that does not exist. */
        UNKNOWN_NAME,
        /** A text where a number belongs, and so on. */
        WRONG_TYPE,
        /** A number in quotes. */
        NUMBER_AS_TEXT,
        /** A body as another operation takes it. */
        WRONG_SHAPE,
        /** A number outside its range, a text or list too short or too long. */
        OUT_OF_RANGE,
        /** A word that is not one of those accepted. */
        NOT_ONE_OF,
        /** A text that does not follow its form. */
        MALFORMED,
        /** An id used twice. */
        DUPLICATE,
        /** A reference to a part, terminal, wire or table that does not exist. */
        UNKNOWN_REFERENCE,
        /** Values that are each acceptable but not together. */
        CONTRADICTION,
        /** More work than the limits allow. */
        OVER_LIMIT,
        /** A list leaves it open, and nothing may be assumed. */
        NOT_STATED
    }

    /** The same fault seen from further out: {@code prefix} is put before the pointer. */
    public InputError under(String prefix) {
        return new InputError(code, prefix + pointer, value, accepted, place, cell, suggestion, described);
    }

    /** The same fault of something with another name. */
    public InputError of(String name) {
        return new InputError(code, name, value, accepted, place, cell, suggestion, described);
    }

    /** The same fault with its place in the writer's words. */
    public InputError at(@Nullable String placeInWords) {
        return at(placeInWords, null);
    }

    /** The same fault of a cell of a list, with its place in words. */
    public InputError at(@Nullable String placeInWords, @Nullable Cell ofList) {
        return new InputError(code, pointer, value, accepted, placeInWords, ofList, suggestion, described);
    }

    /** The same fault with the name or word that was most likely meant. */
    public InputError suggesting(@Nullable String nearest) {
        return new InputError(code, pointer, value, accepted, place, cell, nearest, described);
    }
}
