package loomwright.answer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Collects what is wrong with one input, so that all of it is said at once. */
public final class InputErrors {
    private final List<InputError> found = new ArrayList<>(0);

    /** Notes a fault unless {@code holds}. */
    public InputErrors check(
            boolean holds, InputError.Code code, String pointer, @Nullable Object value, String accepted) {
        if (!holds) {
            found.add(new InputError(code, pointer, value == null ? null : inWords(value), accepted));
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
                    "a number from " + plain(min) + " to " + plain(max));
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
        return check(fits, InputError.Code.OUT_OF_RANGE, pointer, text, "a text of at most " + most + " characters");
    }

    /** Notes a fault if {@code value} is missing. */
    public InputErrors required(String pointer, @Nullable Object value) {
        if (value == null) {
            check(false, InputError.Code.MISSING, pointer, null, "a value");
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
        return value instanceof Double number ? plain(number) : String.valueOf(value);
    }

    /** A number as a person writes it: 1000000, not 1.0E6; 0.000001, not 1.0E-6. */
    private static String plain(double number) {
        return Math.abs(number) < 1e15
                ? BigDecimal.valueOf(number).stripTrailingZeros().toPlainString()
                : String.valueOf(number);
    }
}
