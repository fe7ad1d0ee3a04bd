package loomwright.ignition.change;

import java.util.List;
import loomwright.answer.Finding;
import loomwright.ignition.spark.SparkResult;

/**
 * Both ignitions and what the change does.
 *
 * @param before the spark as it is
 * @param after the spark as it will be
 * @param comparison the figures that matter, side by side
 * @param findings what must be looked at, the most serious first; empty if nothing stands against the change
 */
public record ChangeResult(SparkResult before, SparkResult after, List<Compared> comparison, List<Finding> findings) {
    public ChangeResult {
        comparison = List.copyOf(comparison);
        findings = List.copyOf(findings);
    }

    /**
     * One figure before and after.
     *
     * @param figure its name with the unit in it, as in the contract
     */
    public record Compared(String figure, double before, double after) {}
}
