package loomwright.review.context;

import static loomwright.message.Arg.arg;

import java.util.Collection;
import java.util.Map;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Plan;
import loomwright.message.Arg;
import loomwright.operation.Step;

/** The arguments that many findings share. */
public final class FindingWording {
    /** How many times the limit a value is: what the findings of one severity are sorted by. */
    public static final String LIMIT_RATIO = "limitRatio";

    private FindingWording() {}

    /** The step, and the switches that stand otherwise than in the plan. */
    public static Arg when(Moment moment) {
        return when(
                moment.solved().plan(),
                moment.solved().step(),
                moment.situation().changed());
    }

    /**
     * As above.
     *
     * @param switches position by id of the switch
     */
    public static Arg when(Plan plan, Step step, Map<String, String> switches) {
        return arg("when", step.in(plan, switches));
    }

    /** Parts, wires and connectors by their ids. */
    public static Arg things(String name, Plan plan, Collection<String> ids) {
        return Arg.things(name, ids.stream().map(plan::thing).toList());
    }

    public static Arg limitRatio(double value, double limit) {
        return arg(LIMIT_RATIO, value / limit);
    }
}
