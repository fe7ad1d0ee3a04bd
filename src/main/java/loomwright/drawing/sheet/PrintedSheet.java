package loomwright.drawing.sheet;

import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.answer.WithFindings;
import loomwright.backfeed.BackfeedLimits;
import loomwright.drawing.sheet.SheetQuestion.Document;
import loomwright.network.NetworkLimits;

/** What can be printed as one file of HTML. */
public sealed interface PrintedSheet extends WithFindings<PrintedSheet> permits BenchSheet, JobSheet {
    /**
     * Draws up the bench sheet or the record.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plans, or OVER_LIMIT if their switches make too many
     *     combinations
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    static Answer<PrintedSheet> of(
            SheetQuestion question, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Answer<? extends PrintedSheet> sheet = question.document() == Document.RECORD
                ? JobSheet.of(question, limits, networkLimits, progress)
                : BenchSheet.of(question, limits, networkLimits, progress);
        return JobSheet.with(sheet.result(), sheet);
    }

    /** The file. */
    static String page(Answer<PrintedSheet> answer) {
        PrintedSheet sheet = answer.result();
        return sheet instanceof BenchSheet bench
                ? BenchPage.of(JobSheet.with(bench, answer))
                : SheetPage.of(JobSheet.with((JobSheet) sheet, answer));
    }
}
