package loomwright.operation;

import java.util.OptionalDouble;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;

/** What an ideal meter shows: one that takes no current on volts, and has leads without resistance on ohms. */
public final class Meter {
    private Meter() {}

    /**
     * Volts of the red lead against the black one.
     *
     * @return empty where nothing joins the two points, so that a meter shows nothing steady, and where the step has no
     *     solution
     */
    public static OptionalDouble volts(SolvedStep solved, Probe probe) {
        if (!solved.solved()) {
            return OptionalDouble.empty();
        }
        int from = solved.node(probe.from());
        int to = solved.node(probe.to());
        return solved.joined(from, to) ? OptionalDouble.of(solved.acrossV(from, to)) : OptionalDouble.empty();
    }

    /**
     * Ohms between the two leads with the battery disconnected. For more than one reading of the same plan ask a {@link
     * DisconnectedPlan}.
     *
     * @return empty where the meter shows an open circuit
     */
    public static OptionalDouble ohms(Plan plan, Condition condition, Probe probe) {
        return DisconnectedPlan.of(plan, condition).ohms(probe);
    }
}
