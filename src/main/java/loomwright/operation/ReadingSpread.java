package loomwright.operation;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Battery;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;
import loomwright.network.Element;
import loomwright.network.Linearisation;

/**
 * How the voltages of one solved step move when the figures of the plan are off by their tolerances, to first order. Not
 * thread safe.
 */
public final class ReadingSpread {
    private static final double NOTHING_V = 1e-6;

    private final SolvedStep solved;
    private final Linearisation linear;
    private final List<Element> elements;
    private final double[] changeA;
    private final String[] sources;

    ReadingSpread(SolvedStep solved, Linearisation linear, List<Element> elements) {
        this.solved = solved;
        this.linear = linear;
        this.elements = elements;
        this.changeA = new double[elements.size()];
        this.sources = new String[elements.size()];
        Plan plan = solved.plan();
        for (int i = 0; i < changeA.length; i++) {
            Branch branch = solved.branches().get(i);
            Part part = solved.partOf(i).orElse(null);
            sources[i] = branch.owner() + " " + branch.id() + " " + branch.from() + " " + branch.to();
            changeA[i] = part instanceof Battery
                    ? 0
                    : BranchTolerance.changeA(
                            plan, branch, part, elements.get(i), solved.currentA(i), linear.slopeS(i));
        }
    }

    /**
     * By how much a reading moves for each figure that is off by its whole tolerance, V, under a name for the figure that is
     * the same in all steps. Figures that make no difference are left out.
     */
    public Map<String, Double> of(Probe probe) {
        double[] response = linear.response(solved.node(probe.from()), solved.node(probe.to()));
        Map<String, Double> moves = new HashMap<>();
        double supply = 0;
        for (int i = 0; i < changeA.length; i++) {
            double across =
                    response[elements.get(i).from()] - response[elements.get(i).to()];
            if (solved.partOf(i).orElse(null) instanceof Battery battery) {
                ResolvedSupply store = battery.in(solved.step().condition(), solved.plan());
                supply -= across * linear.slopeS(i) * store.emfV() * store.tolerancePercent() / 100;
            }
            double moveV = -across * changeA[i];
            if (Math.abs(moveV) > NOTHING_V) {
                moves.merge(sources[i], moveV, Double::sum);
            }
        }
        if (Math.abs(supply) > NOTHING_V) {
            moves.put("supply", supply);
        }
        return moves;
    }
}
