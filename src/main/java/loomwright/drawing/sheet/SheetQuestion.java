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
 */
public record SheetQuestion(
        @Nullable String title, Plan plan, @Nullable Plan after, Step step) {
    private static final int MOST_CHARS = 200;

    public SheetQuestion {
        new InputErrors()
                .required("/plan", plan)
                .text("/title", title, MOST_CHARS)
                .reject();
        step = orRun(step);
    }

    private static Step orRun(@Nullable Step step) {
        return step == null ? Step.RUN : step;
    }

    /** The plan by which the vehicle is to be when the job is done. */
    Plan goal() {
        return after == null ? plan : after;
    }
}
