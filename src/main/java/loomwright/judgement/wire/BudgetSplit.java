package loomwright.judgement.wire;

import java.util.List;
import loomwright.answer.Basis;

/** How a budget of volts is split over wires in series so that they need least copper. */
public final class BudgetSplit {
    public static final Basis BASIS = Basis.computed(
            "least copper: each wire's share of the drop in proportion to its length times the root of its current",
            "area in proportion to the root of the current, by Lagrange's multiplier");
    /** What wires cannot cure at 12 V: a fuse with its holder. Common practice, no source. */
    public static final double FUSE_V = 0.1;

    private BudgetSplit() {}

    /** One wire of a way. */
    public record Run(double lengthM, double currentA) {}

    /**
     * Shares of the budget.
     *
     * @param budgetV what the wires may lose together
     * @param runs in the order of the way
     * @return volts for each, in the same order
     */
    public static List<Double> splitV(double budgetV, List<Run> runs) {
        double whole = runs.stream().mapToDouble(BudgetSplit::weight).sum();
        return runs.stream().map(run -> budgetV * weight(run) / whole).toList();
    }

    private static double weight(Run run) {
        return run.lengthM() * Math.sqrt(run.currentA());
    }
}
