package loomwright.ignition.spark;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;

import java.util.List;
import java.util.stream.IntStream;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * Evenly spaced values, both ends included.
 *
 * @param from first value
 * @param to last value, above {@code from}
 * @param steps how many intervals, 1 to 1000
 */
public record SweepRange(double from, double to, int steps) {
    public SweepRange {
        new InputErrors()
                .check(
                        to > from,
                        InputError.Code.CONTRADICTION,
                        "/to",
                        to,
                        Accepted.MORE_THAN,
                        arg("name", "from"),
                        plain("limit", from))
                .range("/steps", steps, 1, 1000)
                .reject();
    }

    public List<Double> values() {
        return IntStream.rangeClosed(0, steps)
                .mapToObj(i -> i == steps ? to : from + (to - from) * i / steps)
                .toList();
    }

    /** Notes a fault under {@code pointer} for each end outside the range that a single value would have to keep. */
    void ends(InputErrors faults, String pointer, double min, double max) {
        faults.range(pointer + "/from", from, min, max).range(pointer + "/to", to, min, max);
    }
}
