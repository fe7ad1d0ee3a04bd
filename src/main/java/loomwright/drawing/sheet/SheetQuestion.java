package loomwright.drawing.sheet;

import loomwright.answer.InputErrors;
import loomwright.circuit.Plan;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What a sheet is asked for.
 *
 * @param title of the job, at most 200 characters; the plan's name unless said
 * @param plan as built
 * @param after the same as modified; without it the sheet is about the one plan
 * @param step the moment in which the pictures are drawn; key on, engine stopped unless said
 * @param document what is printed; the bench sheet unless said
 */
public record SheetQuestion(
        @Nullable String title, Plan plan, @Nullable Plan after, Step step, Document document) {
    private static final int MOST_CHARS = 200;

    public SheetQuestion {
        new InputErrors()
                .required("/plan", plan)
                .text("/title", title, MOST_CHARS)
                .reject();
        step = orRun(step);
        document = orBench(document);
    }

    /** What can be printed. */
    public enum Document {
        /** What is needed at the bench, on few pages. */
        BENCH,
        /** All that was calculated, with its sources. */
        RECORD
    }

    private static Document orBench(@Nullable Document document) {
        return document == null ? Document.BENCH : document;
    }

    /** The title, or this. */
    String titleOr(String name) {
        return title == null || title.isBlank() ? name : title;
    }

    private static Step orRun(@Nullable Step step) {
        return step == null ? Step.RUN : step;
    }

    /** The plan by which the vehicle is to be when the job is done. */
    Plan goal() {
        return after == null ? plan : after;
    }
}
