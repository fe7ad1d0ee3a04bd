package loomwright.drawing.sheet;

import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.drawing.sheet.SheetQuestion.Document;
import loomwright.network.NetworkLimits;

/**
 * A sheet as one file of HTML.
 *
 * @param page the file
 */
public record PrintedSheet(String page) {
    /**
     * Draws up the bench sheet or the record.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plans, or OVER_LIMIT if their switches make too many
     *     combinations
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Answer<PrintedSheet> of(
            SheetQuestion question, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        if (question.document() == Document.RECORD) {
            Answer<JobSheet> record = JobSheet.of(question, limits, networkLimits, progress);
            return JobSheet.with(new PrintedSheet(SheetPage.of(record)), record);
        }
        Answer<BenchSheet> bench = BenchSheet.of(question, limits, networkLimits, progress);
        return JobSheet.with(new PrintedSheet(BenchPage.of(bench)), bench);
    }
}
