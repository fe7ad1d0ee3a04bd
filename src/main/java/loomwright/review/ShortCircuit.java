package loomwright.review;

import java.util.List;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Branch;

/** The prospective current of a short from the end of a wire to the chassis: a copy of the plan with that joint, solved. */
final class ShortCircuit {
    /** A bolted short: nothing that would help the wire. */
    private static final double SHORT_OHM = 0.001;

    private ShortCircuit() {}

    /**
     * The currents in the wire with its end shorted, one for each step that lasts and has a solution.
     *
     * @param end the end of the wire that touches the chassis
     */
    static List<Double> currentsA(ReviewContext context, Plan plan, Wire wire, TerminalRef end) {
        return context.survey().settings().solveJoinedToChassis(plan, end, "short", SHORT_OHM).stream()
                .filter(s -> s.solved() && ReviewContext.lasts(s.step()))
                .map(s -> Math.abs(s.currentA(wire)))
                .distinct()
                .toList();
    }

    /** The situation in which the wire carries most; the plan as it stands if it never carries anything. */
    static Plan situation(ReviewContext context, Wire wire) {
        return context.lasting()
                .find(Branch.Owner.WIRE, wire.id())
                .map(peak -> peak.moment())
                .map(Moment::situation)
                .map(s -> s.plan())
                .orElse(context.plan());
    }
}
