package loomwright.circuit;

import static loomwright.message.Arg.arg;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * The ranges that values of a plan document may have. Wide enough for anything on a road vehicle or boat, narrow enough
 * that a slip of the decimal point or of the unit is noticed and that the solver stays accurate.
 */
public final class Bounds {
    /** Below this the ends are one node to any meter; an ideal joint is a shared terminal, not a resistance. */
    public static final double MIN_RESISTANCE_OHM = 1e-6;

    public static final double MAX_RESISTANCE_OHM = 1e9;
    public static final double MAX_VOLTAGE_V = 100;
    public static final double MIN_CURRENT_A = 1e-6;
    public static final double MAX_CURRENT_A = 5000;
    public static final double MIN_POWER_W = 1e-3;
    public static final double MAX_POWER_W = 50_000;
    public static final double MIN_TEMPERATURE_C = -60;
    public static final double MAX_TEMPERATURE_C = 250;
    public static final double MIN_LENGTH_M = 0.001;
    public static final double MAX_LENGTH_M = 1000;

    static final int MAX_TEXT = 200;
    /** An id stands in front of a dot in {@code part.terminal}, so it has none itself. */
    public static final String ID_FORM = "[A-Za-z0-9][A-Za-z0-9_-]{0,39}";

    public static final String TERMINAL_FORM = "[A-Za-z0-9+-]{1,12}";
    static final int MAX_ID = 40;
    private static final int MAX_TERMINAL = 12;

    private Bounds() {}

    static InputErrors part(@Nullable String id, @Nullable String label) {
        return text(id(new InputErrors(), "/id", id), "/label", label, 0, MAX_TEXT);
    }

    /** Notes a fault unless the text, where there is one, has {@code min} to {@code max} characters. */
    static InputErrors text(InputErrors faults, String pointer, @Nullable String text, int min, int max) {
        int length = text == null ? min : text.codePointCount(0, text.length());
        return faults.check(
                length >= min && length <= max,
                InputError.Code.OUT_OF_RANGE,
                pointer,
                text,
                Accepted.CHARACTERS,
                arg("min", min),
                arg("max", max));
    }

    /** Notes a fault for each entry that stands in the list before. */
    static InputErrors distinct(InputErrors faults, String pointer, List<?> list) {
        Set<Object> seen = new HashSet<>();
        for (int i = 0; i < list.size(); i++) {
            faults.check(
                    seen.add(list.get(i)),
                    InputError.Code.DUPLICATE,
                    pointer + "/" + i,
                    list.get(i),
                    Accepted.EACH_ONCE);
        }
        return faults;
    }

    static InputErrors id(InputErrors faults, String pointer, @Nullable String id) {
        if (id == null) {
            return faults.required(pointer, id);
        }
        return faults.check(isId(id), InputError.Code.MALFORMED, pointer, id, AcceptedPlan.ID);
    }

    /** Whether a text has {@link #ID_FORM}. */
    static boolean isId(String text) {
        return isWord(text, MAX_ID, "_-") && isLetterOrDigit(text.charAt(0));
    }

    /** Whether a text has {@link #TERMINAL_FORM}. */
    static boolean isTerminal(@Nullable String text) {
        return text != null && isWord(text, MAX_TERMINAL, "+-");
    }

    private static boolean isWord(String text, int max, String beside) {
        for (int i = 0; i < text.length(); i++) {
            if (!isLetterOrDigit(text.charAt(i)) && beside.indexOf(text.charAt(i)) < 0) {
                return false;
            }
        }
        return !text.isEmpty() && text.length() <= max;
    }

    private static boolean isLetterOrDigit(char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    }

    static InputErrors resistance(InputErrors faults, String pointer, @Nullable Double ohm) {
        return faults.range(pointer, ohm, MIN_RESISTANCE_OHM, MAX_RESISTANCE_OHM);
    }

    /** A voltage above zero: a rating or a threshold. */
    static InputErrors voltage(InputErrors faults, String pointer, @Nullable Double voltageV) {
        return faults.range(pointer, voltageV, 0.01, MAX_VOLTAGE_V);
    }

    static InputErrors current(InputErrors faults, String pointer, @Nullable Double currentA) {
        return faults.range(pointer, currentA, MIN_CURRENT_A, MAX_CURRENT_A);
    }

    static InputErrors power(InputErrors faults, String pointer, @Nullable Double powerW) {
        return faults.range(pointer, powerW, MIN_POWER_W, MAX_POWER_W);
    }

    /** Notes a fault unless the list has {@code min} to {@code max} entries, none of them null. */
    static InputErrors size(InputErrors faults, String pointer, @Nullable List<?> list, int min, int max) {
        if (list == null) {
            return faults.required(pointer, null);
        }
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i) == null) {
                faults.required(pointer + "/" + i, null);
            }
        }
        return faults.check(
                list.size() >= min && list.size() <= max,
                InputError.Code.OUT_OF_RANGE,
                pointer,
                list.size(),
                Accepted.ENTRIES,
                arg("min", min),
                arg("max", max));
    }

    static double orElse(@Nullable Double value, double otherwise) {
        return value == null ? otherwise : value;
    }

    static boolean orFalse(@Nullable Boolean value) {
        return value != null && value;
    }

    /** The resistance of a joint or a battery, 0 where it is absent or too small for any meter. */
    static double soundIfTiny(@Nullable Double resistanceOhm) {
        return resistanceOhm == null || resistanceOhm < MIN_RESISTANCE_OHM ? 0 : resistanceOhm;
    }
}
