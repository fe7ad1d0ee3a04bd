package loomwright.drawing.diagram;

import java.util.List;
import java.util.Set;
import loomwright.answer.InputErrors;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What to show in a diagram.
 *
 * @param step the moment drawn; absent for the usual one
 * @param marks what to point out; findings and backfeed unless said
 * @param legend what stands under the circuit; numbers with a few words unless said
 * @param title instead of the plan's name
 * @param allSteps whether an SVG holds all other steps as well, hidden
 * @param size of a PNG; for a screen unless said
 * @param colours how colours of wires are written; in letters unless said
 * @param after moves after which the plan is drawn, in order; none unless said
 * @param sheet number of the sheet drawn, of a plan that has several; the whole plan unless said
 * @param figures whether an answer in JSON has the figures of all steps as well
 */
public record DiagramOptions(
        @Nullable Step step,
        List<Marks> marks,
        LegendText legend,
        @Nullable String title,
        Boolean allSteps,
        Size size,
        @Nullable Integer sheet,
        List<String> after,
        Colours colours,
        Boolean figures) {
    /** Key on, engine stopped, everything pointed out. */
    public static final DiagramOptions USUAL =
            new DiagramOptions(null, null, null, null, null, null, null, null, null, null);

    private static final int MOST_CHARS = 200;

    public DiagramOptions(
            @Nullable Step step,
            @Nullable List<Marks> marks,
            @Nullable LegendText legend,
            @Nullable String title,
            @Nullable Boolean allSteps,
            @Nullable Size size,
            @Nullable Integer sheet,
            @Nullable List<String> after,
            @Nullable Colours colours,
            @Nullable Boolean figures) {
        this.step = step;
        this.marks = marks == null ? List.of(Marks.FINDINGS, Marks.BACKFEED) : List.copyOf(marks);
        this.legend = legend == null ? LegendText.SHORT : legend;
        this.title = title;
        this.allSteps = allSteps != null && allSteps;
        this.size = size == null ? Size.SCREEN : size;
        this.sheet = sheet;
        this.after = after == null ? List.of() : List.copyOf(after);
        this.colours = colours == null ? Colours.LETTERS : colours;
        this.figures = figures != null && figures;
        new InputErrors().text("/title", title, MOST_CHARS).reject();
    }

    /** The same in another step. */
    public DiagramOptions at(Step other) {
        return new DiagramOptions(other, marks, legend, title, allSteps, size, sheet, after, colours, figures);
    }

    /** The same of one sheet. */
    public DiagramOptions ofSheet(int number) {
        return new DiagramOptions(step, marks, legend, title, allSteps, size, number, after, colours, figures);
    }

    /** The same with another legend. */
    public DiagramOptions with(LegendText other) {
        return new DiagramOptions(step, marks, other, title, allSteps, size, sheet, after, colours, figures);
    }

    /** The step asked for, or the usual one. */
    Step stepOr(Step usual) {
        return step == null ? usual : step;
    }

    /** The same with all steps in one picture, or with one. */
    public DiagramOptions with(boolean all) {
        return new DiagramOptions(step, marks, legend, title, all, size, sheet, after, colours, figures);
    }

    boolean shows(Marks wanted) {
        return Set.copyOf(marks).contains(wanted);
    }

    /** What can be pointed out. */
    public enum Marks {
        /** Findings of the review, by number. */
        FINDINGS,
        /** The way of a current that feeds a load that should be off. */
        BACKFEED,
        /** Nothing. */
        NONE
    }

    /** How colours of wires are written. */
    public enum Colours {
        /** Letters of IEC 60757. */
        LETTERS,
        WORDS
    }

    /** How large a picture of dots is. */
    public enum Size {
        /** 1,000 dots wide, for a forum post or a telephone. */
        POST,
        /** Two dots for each pixel of the SVG. */
        SCREEN,
        /** 300 dots per inch. */
        PRINT
    }

    /** What stands under the circuit. */
    public enum LegendText {
        /** What lines and colours mean, and each mark in a few words. */
        SHORT,
        /** The same, each mark in full, and the cautions. */
        FULL,
        /** What lines and colours mean, no marks: the page around the picture has them. */
        KEYS,
        /** Nothing: the answer in JSON has it all, and a page writes it beside the picture. */
        NONE
    }
}
