package loomwright.review;

import java.util.Iterator;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Branch;
import loomwright.operation.SolvedStep;

/** The prospective current of a short from the end of a wire to the chassis: a copy of the plan with that joint, solved. */
final class ShortCircuit {
    /** A bolted short: nothing that would help the wire. */
    private static final double SHORT_OHM = 0.001;

    private ShortCircuit() {}

    /**
     * The steps with the end of a wire shorted, in the situation in which it carries most; in the plan as it stands if it
     * never carries anything. Each is solved when it is asked for.
     *
     * @param end the end of the wire that touches the chassis
     */
    static Iterator<SolvedStep> steps(ReviewContext context, Wire wire, TerminalRef end) {
        Plan plan = context.lasting()
                .find(Branch.Owner.WIRE, wire.id())
                .map(peak -> peak.moment().situation().plan())
                .orElse(context.plan());
        return context.survey().settings().stepsJoinedToChassis(plan, end, "short", SHORT_OHM);
    }

    /** The current of the wire in such a step, A; 0 if the step passes or has no solution. */
    static double currentA(SolvedStep shorted, Wire wire) {
        return shorted.solved() && ReviewContext.lasts(shorted.step()) ? Math.abs(shorted.currentA(wire)) : 0;
    }
}
