package loomwright.drawing.sheet;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.comparison.PlanComparison;
import org.jspecify.annotations.Nullable;

/** What stands at the top of everything printed: the job, the plans, and lines to write on. */
final class SheetHead {
    private SheetHead() {}

    static void write(Html html, String title, Plan goal, @Nullable PlanComparison comparison) {
        html.element("h1", "", title);
        String plans = comparison == null ? goal.name() : "From " + comparison.before() + " to " + comparison.after();
        html.paragraph(plans + ". " + SheetWords.number(goal.system().nominalVoltageV()) + " V, "
                + SheetWords.of(goal.system().earthPolarity()) + " earth.");
        html.open("dl", "fill");
        for (String blank : List.of("Vehicle", "Owner", "Done by", "Date")) {
            html.open("div", "").element("dt", "", blank).element("dd", "", "").close();
        }
        html.close();
    }
}
