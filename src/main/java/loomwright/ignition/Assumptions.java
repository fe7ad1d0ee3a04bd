package loomwright.ignition;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.message.Argument;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.Word;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/** Fills what the caller left out, notes each value that was taken instead, and collects the faults of all parts of an input. */
public final class Assumptions {
    private final List<Message> lines = new ArrayList<>();
    private final InputErrors faults = new InputErrors();

    /** The given number, or a common value, which is then noted with its unit. */
    public double or(@Nullable Double given, AssumedValue what, double common, String unit) {
        return or(given, what, common, 1, unit);
    }

    /** As above, for a quantity that people write in a unit of which there are {@code perSi} to one of SI. */
    public double or(@Nullable Double given, AssumedValue what, double common, double perSi, String unit) {
        if (given != null) {
            return given;
        }
        note(what, new Quantity(common * perSi, unit));
        return common;
    }

    /** The given choice, or a common one, which is then noted. */
    public <T extends MessageCode> T or(@Nullable T given, AssumedValue what, T common) {
        if (given != null) {
            return given;
        }
        note(what, new Word(common));
        return common;
    }

    /** The given number of things, or a common one, which is then noted. */
    public int or(@Nullable Integer given, AssumedValue what, int common) {
        if (given != null) {
            return given;
        }
        note(what, new Count(common));
        return common;
    }

    /** Notes a value that was taken. */
    public void note(AssumedValue what, Argument value) {
        lines.add(AssumedValue.ASSUMED.with(arg("what", what), arg("value", value)));
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
    public void note(Message line) {
        lines.add(line);
    }

    public InputErrors faults() {
        return faults;
    }

    public List<Message> lines() {
        return List.copyOf(lines);
    }
}
