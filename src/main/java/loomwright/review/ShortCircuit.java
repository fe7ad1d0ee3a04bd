package loomwright.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Branch;
import loomwright.operation.SolvedStep;

/** The prospective current of a short from the end of a wire to the chassis: a copy of the plan with that joint, solved. */
final class ShortCircuit {
    /** A bolted short: nothing that would help the wire. */
    private static final double SHORT_OHM = 0.001;

    private static final String EARTH = "shorted-to";
    private static final String JOINT = "short";

    private ShortCircuit() {}

    /**
     * The currents in the wire with its end shorted, one for each step that lasts and has a solution.
     *
     * @param end the end of the wire that touches the chassis
     */
    static List<Double> currentsA(ReviewContext context, Plan plan, Wire wire, TerminalRef end) {
        List<Part> parts = new ArrayList<>(plan.parts());
        List<Wire> wires = new ArrayList<>(plan.wires());
        EarthPoint chassis = new EarthPoint(free(plan, EARTH), null, 0.0);
        parts.add(chassis);
        wires.add(Wire.ofResistance(free(plan, JOINT), end, chassis.terminal(EarthPoint.TERMINAL), SHORT_OHM));
        return context.solve(plan.with(parts, wires)).stream()
                .filter(s -> s.solved() && ReviewContext.lasts(s.step()))
                .mapToDouble(s -> currentA(s, wire.id()).orElse(0))
                .boxed()
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

    private static String free(Plan plan, String wanted) {
        String id = wanted;
        while (plan.findPart(id).isPresent() || plan.findWire(id).isPresent()) {
            id += "-";
        }
        return id;
    }

    private static OptionalDouble currentA(SolvedStep solved, String wire) {
        List<Branch> branches = solved.branches();
        for (int i = 0; i < branches.size(); i++) {
            if (branches.get(i).owner() == Branch.Owner.WIRE
                    && branches.get(i).id().equals(wire)) {
                return OptionalDouble.of(Math.abs(solved.currentA(i)));
            }
        }
        return OptionalDouble.empty();
    }
}
