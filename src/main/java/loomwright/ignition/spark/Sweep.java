package loomwright.ignition.spark;

import java.util.List;
import java.util.stream.IntStream;
import loomwright.answer.Fault;
import loomwright.answer.Faults;

/**
 * Evenly spaced values, both ends included.
 *
 * @param from first value
 * @param to last value, above {@code from}
 * @param steps how many intervals, 1 to 1000
 */
public record Sweep(double from, double to, int steps) {
    public Sweep {
        new Faults()
                .check(to > from, Fault.Code.CONTRADICTION, "/to", to, "a number above 'from', which is " + from)
                .range("/steps", steps, 1, 1000)
                .reject();
    }

    public List<Double> values() {
        return IntStream.rangeClosed(0, steps)
                .mapToObj(i -> i == steps ? to : from + (to - from) * i / steps)
                .toList();
    }

    /** Notes a fault under {@code pointer} for each end outside the range that a single value would have to keep. */
    void ends(Faults faults, String pointer, double min, double max) {
        faults.range(pointer + "/from", from, min, max).range(pointer + "/to", to, min, max);
    }
}
