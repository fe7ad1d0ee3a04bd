package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.answer.Assumption;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.circuit.Plan;
import loomwright.comparison.PlanComparison;
import loomwright.drawing.diagram.DiagramText;
import loomwright.message.Arg;
import org.jspecify.annotations.Nullable;

/** What stands at the top of everything printed: the job, the plans, and lines to write on. */
final class SheetHead {
    private SheetHead() {}

    static void write(Html html, String title, Plan goal, @Nullable PlanComparison comparison) {
        html.element("h1", "", title);
        Arg nominalV = arg("nominalV", goal.system().nominalVoltageV());
        Arg polarity = arg("polarity", SheetWords.of(goal.system().earthPolarity()));
        html.paragraph((comparison == null
                        ? title.equals(goal.name())
                                ? SheetText.SUPPLY_LINE.with(nominalV, polarity)
                                : SheetText.PLAN_LINE.with(arg("plan", goal.name()), nominalV, polarity)
                        : SheetText.COMPARISON_LINE.with(
                                arg("before", comparison.before()),
                                arg("after", comparison.after()),
                                nominalV,
                                polarity))
                .text());
        html.open("dl", "fill");
        for (SheetText blank : List.of(SheetText.VEHICLE, SheetText.OWNER, SheetText.DONE_BY, SheetText.DATE)) {
            html.open("div", "")
                    .element("dt", "", blank.text())
                    .element("dd", "", "")
                    .close();
        }
        html.close();
    }

    /** What may hurt, before all that may lead to the car. */
    static void writeCautions(Html html, List<Caution> cautions) {
        html.open("section", "cautions").heading(DiagramText.CAUTIONS_HEAD.text());
        html.list("", cautions.stream().map(Caution::text).toList()).close();
    }

    /** How a list was read, which its owner must know before the results: what is open, to be ticked, and what was taken. */
    static void writeReading(Html html, List<Assumption> assumptions) {
        List<String> questions = assumptions.stream()
                .filter(Assumption::isQuestion)
                .map(each -> each.text().text())
                .toList();
        List<String> read = assumptions.stream()
                .filter(each -> each.isOfReading() && !each.isQuestion())
                .map(each -> each.text().text())
                // Two lists of one vehicle are read alike.
                .distinct()
                .toList();
        if (!questions.isEmpty()) {
            html.open("section", "reading").heading(SheetText.QUESTIONS.text());
            html.list("ticks", questions).close();
        }
        if (!read.isEmpty()) {
            html.open("section", "reading").heading(SheetText.READ_FROM_LIST.text());
            html.list("", read).close();
        }
    }

    /** A finding with what it is not certain on account of. */
    static String text(Finding finding) {
        return (finding.text() + " " + finding.doubts()).strip();
    }
}
