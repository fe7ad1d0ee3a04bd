package loomwright.comparison;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCheck;
import org.jspecify.annotations.Nullable;

/**
 * Two plans to compare.
 *
 * @param before as built
 * @param after as modified
 * @param thresholdV voltages that change by no more are not told, 0 to 100 V; 0.1 unless said
 * @param thresholdA currents that change by no more are not told, 0 to 5000 A; 0.1 unless said
 */
public record ComparisonQuestion(Plan before, Plan after, Double thresholdV, Double thresholdA) {
    private static final double THRESHOLD = 0.1;

    public ComparisonQuestion {
        new InputErrors()
                .required("/before", before)
                .required("/after", after)
                .range("/thresholdV", thresholdV, 0, 100)
                .range("/thresholdA", thresholdA, 0, 5000)
                .reject();
        thresholdV = orUsual(thresholdV);
        thresholdA = orUsual(thresholdA);
    }

    public static ComparisonQuestion of(Plan before, Plan after) {
        return new ComparisonQuestion(before, after, THRESHOLD, THRESHOLD);
    }

    private static Double orUsual(@Nullable Double threshold) {
        return threshold == null ? (Double) THRESHOLD : threshold;
    }

    /**
     * Rejects plans that cannot be solved.
     *
     * @throws RejectedInput with the faults of both
     */
    void requireSound() {
        List<InputError> faults = new ArrayList<>();
        PlanCheck.check(before).forEach(f -> faults.add(f.under("/before")));
        PlanCheck.check(after).forEach(f -> faults.add(f.under("/after")));
        if (!faults.isEmpty()) {
            throw new RejectedInput(faults);
        }
    }
}
