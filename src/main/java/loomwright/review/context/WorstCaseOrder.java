package loomwright.review.context;

import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import loomwright.backfeed.Survey.Moment;

/**
 * Which of many moments a finding tells of: the one with most of something, and of those with as much the plainest. The
 * order in which a plan lists its parts and wires decides nothing.
 */
public final class WorstCaseOrder {
    /** The nearest to the plan as it stands first, then the earliest, then by the switches that stand otherwise. */
    private static final Comparator<Moment> PLAINEST = Comparator.comparingInt(
                    (Moment m) -> m.situation().changes())
            .thenComparing(m -> m.solved().step())
            .thenComparing(m -> switches(m.situation().changed()));

    private WorstCaseOrder() {}

    /** Most first. */
    public static Comparator<Moment> mostOf(ToDoubleFunction<Moment> amount) {
        return (a, b) -> compare(a, amount.applyAsDouble(a), b, amount.applyAsDouble(b));
    }

    /**
     * Compares two moments with their amounts, 0 or more, below 0 if the first is to be told.
     */
    public static int compare(Moment a, double amountA, Moment b, double amountB) {
        int most = Integer.compare(rounded(amountB), rounded(amountA));
        return most == 0 ? PLAINEST.compare(a, b) : most;
    }

    /** In steps of about a millionth: moments that are the same but for the arithmetic are alike. */
    private static int rounded(double amount) {
        // The bits of a float grow with it; its last three are rounded away.
        return (Float.floatToIntBits((float) amount) + 4) >> 3;
    }

    private static String switches(Map<String, String> changed) {
        return new TreeMap<>(changed).toString();
    }
}
