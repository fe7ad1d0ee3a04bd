package loomwright.readings;

import java.util.List;
import java.util.OptionalDouble;
import loomwright.circuit.Condition;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.tolerance.Spreads;
import loomwright.operation.DisconnectedPlan;
import loomwright.operation.Probe;

/**
 * Between which ohms a reading with the battery disconnected lies when every resistance is somewhere within its tolerance.
 *
 * <p>The resistance between two points never falls when any one resistance rises (Rayleigh's monotonicity law), so that
 * the bounds are those with all low and all high, exactly. A motor's stated resistance is that at work; standing it has as
 * little as a tenth (common practice, no source), which goes into the lower bound.
 */
final class OhmBounds {
    private final DisconnectedPlan nominal;
    private final DisconnectedPlan low;
    private final DisconnectedPlan high;

    OhmBounds(Spreads spreads, Condition condition) {
        nominal = DisconnectedPlan.of(spreads.plan(), condition);
        low = DisconnectedPlan.of(standing(spreads.ohms(-1)), condition);
        high = DisconnectedPlan.of(spreads.ohms(1), condition);
    }

    Range of(Probe probe) {
        OptionalDouble ohm = nominal.ohms(probe);
        return ohm.isEmpty()
                ? Range.NONE
                : new Range(ohm, low.ohms(probe).orElseThrow(), high.ohms(probe).orElseThrow(), false);
    }

    private static Plan standing(Plan plan) {
        List<Part> parts = plan.parts().stream()
                .map(p -> p instanceof Motor m ? standing(m) : p)
                .toList();
        return plan.with(parts, plan.wires());
    }

    private static Part standing(Motor m) {
        return m.withResistanceOhm(Spreads.ohm(m.resistanceOhm() * DisconnectedPlan.STANDING_MOTOR));
    }
}
