package loomwright.ignition;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import org.jspecify.annotations.Nullable;

/** Fills what the caller left out, notes each value that was taken instead, and collects the faults of all parts of an input. */
public final class Assumptions {
    private final List<String> lines = new ArrayList<>();
    private final InputErrors faults = new InputErrors();

    /** The given number, or a common value, which is then noted with its unit. */
    public double or(@Nullable Double given, String what, double common, String unit) {
        return or(given, what, common, 1, unit);
    }

    /** As above, for a quantity that people write in a unit of which there are {@code perSi} to one of SI. */
    public double or(@Nullable Double given, String what, double common, double perSi, String unit) {
        if (given != null) {
            return given;
        }
        lines.add(("Assumed: " + what + " " + WorkingNumber.of(common * perSi) + " " + unit).strip());
        return common;
    }

    /** The given choice, or a common one, which is then noted. */
    public <T> T or(@Nullable T given, String what, T common) {
        if (given != null) {
            return given;
        }
        lines.add("Assumed: " + what + " "
                + String.valueOf(common).toLowerCase(Locale.ROOT).replace('_', ' '));
        return common;
    }

    /** A part of the input, unless it is at fault. */
    public <T> Optional<T> part(Supplier<T> part) {
        try {
            return Optional.of(part.get());
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(faults::add);
            return Optional.empty();
        }
    }

    /** A step of working that belongs to a value of the input. */
    public void note(String line) {
        lines.add(line);
    }

    public InputErrors faults() {
        return faults;
    }

    public List<String> lines() {
        return List.copyOf(lines);
    }
}
