package loomwright.ignition.ballast;

import java.util.List;
import java.util.stream.IntStream;
import loomwright.answer.Basis;

/**
 * The preferred numbers of resistors, IEC 60063, series E12 and E24 (from memory).
 *
 * <p>The nth of E24 is about 10^(n/24); the printed figures depart from that by at most one in the second digit, and E12
 * is every other one of them.
 */
public final class PreferredNumbers {
    static final List<Integer> E24 =
            List.of(10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91);

    static final List<Integer> E12 =
            IntStream.range(0, 12).mapToObj(i -> E24.get(2 * i)).toList();

    public static final Basis BASIS = Basis.fromMemory("preferred numbers of the series E12 and E24", "IEC 60063");

    /** From one value of E24 to the next, about. */
    private static final double STEP = Math.pow(10, 1.0 / 24);

    private static final double ROUNDING = 1 + 1e-12;

    private PreferredNumbers() {}

    /** The value of a series nearest to {@code ohm} by ratio. */
    static double nearest(List<Integer> series, double ohm) {
        double decade = Math.pow(10, Math.floor(Math.log10(ohm)));
        double best = 10 * decade;
        for (int number : series) {
            double value = decade * number / 10;
            if (Math.abs(Math.log(value / ohm)) < Math.abs(Math.log(best / ohm))) {
                best = value;
            }
        }
        return best;
    }

    /** The value of E24 at or below {@code ohm}. */
    public static double below(double ohm) {
        double nearest = nearest(E24, ohm);
        return nearest <= ohm * ROUNDING ? nearest : nearest(E24, nearest / STEP);
    }

    /** The value of E24 at or above {@code ohm}. */
    public static double above(double ohm) {
        double nearest = nearest(E24, ohm);
        return nearest * ROUNDING >= ohm ? nearest : nearest(E24, nearest * STEP);
    }
}
