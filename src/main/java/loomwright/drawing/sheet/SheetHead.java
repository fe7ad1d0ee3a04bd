package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.comparison.PlanComparison;
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
                        ? SheetText.PLAN_LINE.with(arg("plan", goal.name()), nominalV, polarity)
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
}
