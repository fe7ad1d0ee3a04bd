package loomwright.answer;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;

import java.util.ArrayList;
import java.util.List;
import loomwright.message.Arg;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/** Collects what is wrong with one input, so that all of it is said at once. */
public final class InputErrors {
    private final List<InputError> found = new ArrayList<>(0);

    /**
     * Notes a fault unless {@code holds}.
     *
     * @param accepted what would be accepted
     * @param arguments those that its text names
     */
    public InputErrors check(
            boolean holds,
            InputError.Code code,
            String pointer,
            @Nullable Object value,
            MessageCode accepted,
            Arg... arguments) {
        if (!holds) {
            found.add(new InputError(code, pointer, value == null ? null : inWords(value), accepted.with(arguments)));
        }
        return this;
    }

    /** Notes a fault unless {@code value} is a finite number from {@code min} to {@code max}, both included. */
    public InputErrors range(String pointer, double value, double min, double max) {
        if (!(value >= min && value <= max)) {
            check(
                    false,
                    InputError.Code.OUT_OF_RANGE,
                    pointer,
                    value,
                    Accepted.NUMBER,
                    plain("min", min),
                    plain("max", max));
        }
        return this;
    }

    /** As {@link #range(String, double, double, double)}, for a value that may be left out. */
    public InputErrors range(String pointer, @Nullable Double value, double min, double max) {
        return value == null ? this : range(pointer, value.doubleValue(), min, max);
    }

    /** Notes a fault if a text has more than {@code most} characters, as a person counts them. */
    public InputErrors text(String pointer, @Nullable String text, int most) {
        boolean fits = text == null || text.codePointCount(0, text.length()) <= most;
        return fits
                ? this
                : check(
                        false,
                        InputError.Code.OUT_OF_RANGE,
                        pointer,
                        text,
                        Accepted.CHARACTERS_AT_MOST,
                        arg("max", most));
    }

    /** Notes a fault if {@code value} is missing. */
    public InputErrors required(String pointer, @Nullable Object value) {
        if (value == null) {
            check(false, InputError.Code.MISSING, pointer, null, Accepted.VALUE);
        }
        return this;
    }

    public InputErrors add(InputError fault) {
        found.add(fault);
        return this;
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    public List<InputError> list() {
        return List.copyOf(found);
    }

    /**
     * Ends the inspection.
     *
     * @throws RejectedInput with all faults noted, if there are any
     */
    public void reject() {
        if (!found.isEmpty()) {
            throw new RejectedInput(found);
        }
    }

    private static String inWords(Object value) {
        return value instanceof Double number ? Arg.plain(number) : String.valueOf(value);
    }
}
