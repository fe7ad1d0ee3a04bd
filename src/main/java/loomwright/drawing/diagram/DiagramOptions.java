package loomwright.drawing.diagram;

import java.util.List;
import java.util.Set;
import loomwright.answer.InputErrors;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What to show in a diagram.
 *
 * @param step the moment drawn; key on, engine stopped unless said
 * @param marks what to point out; findings and backfeed unless said
 * @param title instead of the plan's name
 */
public record DiagramOptions(
        Step step, List<Marks> marks, @Nullable String title) {
    /** Key on, engine stopped, everything pointed out. */
    public static final DiagramOptions USUAL =
            new DiagramOptions(Step.RUN, List.of(Marks.FINDINGS, Marks.BACKFEED), null);

    private static final int MOST_CHARS = 200;

    public DiagramOptions {
        step = orRun(step);
        marks = orAll(marks);
        new InputErrors().text("/title", title, MOST_CHARS).reject();
    }

    private static Step orRun(@Nullable Step step) {
        return step == null ? Step.RUN : step;
    }

    private static List<Marks> orAll(@Nullable List<Marks> marks) {
        return marks == null ? List.of(Marks.FINDINGS, Marks.BACKFEED) : List.copyOf(marks);
    }

    /** The same in another step. */
    public DiagramOptions at(Step other) {
        return new DiagramOptions(other, marks, title);
    }

    boolean shows(Marks wanted) {
        return Set.copyOf(marks).contains(wanted);
    }

    /** What can be pointed out. */
    public enum Marks {
        /** Findings of the review, by number. */
        FINDINGS,
        /** The way of a current that feeds a load unasked. */
        BACKFEED,
        /** Nothing. */
        NONE
    }
}
