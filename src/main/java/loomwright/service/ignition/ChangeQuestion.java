package loomwright.service.ignition;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.ignition.change.BypassLead;
import loomwright.ignition.change.ChangeInput;
import loomwright.ignition.change.ChangeResult;
import loomwright.ignition.change.FittedParts;
import loomwright.ignition.change.IgnitionChange;
import loomwright.ignition.spark.SparkCurves;
import loomwright.ignition.spark.SparkInput;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** An ignition as it is and as it will be; ratings as in {@link ChangeInput}. */
public record ChangeQuestion(
        SparkQuestion before,
        SparkQuestion after,
        @JsonUnwrapped FittedParts fitted,
        @JsonUnwrapped BypassLead bypass) {
    public ChangeQuestion {
        new InputErrors().required("/before", before).required("/after", after).reject();
    }

    /** Both sides with the figures that matter side by side, and what stands against the change. */
    public record Report(
            SparkReport before, SparkReport after, List<ChangeResult.Compared> comparison, List<Finding> findings) {
        public Table table() {
            return new Table(
                    List.of("figure", "before", "after"),
                    comparison.stream()
                            .map(one -> List.<@Nullable Object>of(one.figure(), one.before(), one.after()))
                            .toList());
        }
    }

    /**
     * Answers it.
     *
     * @throws RejectedInput with every fault, named as in the contract
     */
    public Answer<Report> answer() {
        Answer<ChangeResult> answer = ContractNames.named(() -> IgnitionChange.calculate(input()));
        ChangeResult result = answer.result();
        Report report = new Report(
                SparkReport.of(result.before()),
                SparkReport.of(result.after()),
                result.comparison(),
                result.findings());
        return new Answer<>(report, answer.working(), answer.basis(), answer.cautions());
    }

    /** What a plot of the answer shows: before and after. */
    public List<SparkCurves> curves() {
        return ContractNames.named(() -> IgnitionChange.curves(input()));
    }

    private ChangeInput input() {
        InputErrors faults = new InputErrors();
        SparkInput was = side(faults, "/before", before);
        SparkInput is = side(faults, "/after", after);
        faults.reject();
        if (was == null || is == null) {
            throw new IllegalStateException("a side without faults was not read");
        }
        return new ChangeInput(was, is, fitted, bypass);
    }

    private static @Nullable SparkInput side(InputErrors faults, String pointer, SparkQuestion question) {
        try {
            return question.input();
        } catch (RejectedInput rejected) {
            for (InputError fault : rejected.faults()) {
                faults.add(fault.under(pointer));
            }
            return null;
        }
    }
}
