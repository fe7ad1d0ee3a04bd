package loomwright.expression;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.message.Arg;
import loomwright.network.AcceptedElement;
import loomwright.network.CurrentSource;
import loomwright.network.Element;
import loomwright.network.Network;
import loomwright.network.NetworkLimits;
import loomwright.network.NetworkSolver;
import loomwright.network.Resistor;
import loomwright.network.Solution;

/**
 * The resistance between two nodes of a network of resistors, by series and parallel steps if it can be done so.
 *
 * @param method how it was found
 * @param totalOhm absent if nothing joins the nodes
 */
public record NetworkReduction(Method method, OptionalDouble totalOhm, List<Reduction.Step> steps) {
    /** Above this many resistors no star-delta step is tried. */
    private static final int TRIED_UP_TO = 200;

    /** How a resistance was found. */
    public enum Method {
        /** Series and parallel steps are enough. */
        SERIES_PARALLEL,
        /** One star-delta step, and series and parallel steps. */
        STAR_DELTA,
        /** Neither is enough: the equations were solved. */
        SOLVED,
        /** Nothing joins the nodes. */
        OPEN
    }

    public NetworkReduction {
        steps = List.copyOf(steps);
    }

    /**
     * Reduces a network seen from two of its nodes.
     *
     * @param network resistors only
     * @param a index of a node
     * @param b index of another node
     * @throws loomwright.answer.RejectedInput NOT_ONE_OF at an element that is not a resistor, UNKNOWN_REFERENCE for a
     *     node that does not exist, CONTRADICTION if both are the same
     */
    public static NetworkReduction between(Network network, int a, int b) {
        check(network, a, b);
        ReductionGraph graph = new ReductionGraph(network, a, b);
        graph.reduce();
        if (graph.open()) {
            return new NetworkReduction(Method.OPEN, OptionalDouble.empty(), graph.steps());
        }
        if (graph.done()) {
            return new NetworkReduction(Method.SERIES_PARALLEL, OptionalDouble.of(graph.totalOhm()), graph.steps());
        }
        if (network.elements().size() <= TRIED_UP_TO) {
            for (int star : graph.stars()) {
                ReductionGraph trial = graph.copy();
                trial.starToDelta(star);
                trial.reduce();
                if (trial.done()) {
                    return new NetworkReduction(Method.STAR_DELTA, OptionalDouble.of(trial.totalOhm()), trial.steps());
                }
            }
        }
        return solve(network, a, b, graph.steps());
    }

    private static void check(Network network, int a, int b) {
        InputErrors faults = new InputErrors();
        int nodes = network.nodes().size();
        Arg highest = arg("highest", nodes - 1);
        faults.check(
                a >= 0 && a < nodes,
                InputError.Code.UNKNOWN_REFERENCE,
                "/between/0",
                a,
                AcceptedElement.NODE_INDEX,
                highest);
        faults.check(
                b >= 0 && b < nodes,
                InputError.Code.UNKNOWN_REFERENCE,
                "/between/1",
                b,
                AcceptedElement.NODE_INDEX,
                highest);
        faults.check(a != b, InputError.Code.CONTRADICTION, "/between", a, AcceptedElement.TWO_NODES);
        for (int i = 0; i < network.elements().size(); i++) {
            Element element = network.elements().get(i);
            faults.check(
                    element instanceof Resistor,
                    InputError.Code.NOT_ONE_OF,
                    "/elements/" + i,
                    element.id(),
                    AcceptedElement.RESISTOR);
        }
        faults.reject();
    }

    /** Sends 1 A through the network: the volts that it needs are the ohms. */
    private static NetworkReduction solve(Network network, int a, int b, List<Reduction.Step> done) {
        List<Element> elements = new ArrayList<>(network.elements());
        elements.add(new CurrentSource(unusedId(network), b, a, 1));
        NetworkLimits limits = new NetworkLimits(Math.max(1, network.nodes().size()), elements.size(), 100);
        Solution solution = new NetworkSolver(limits).solve(new Network(network.nodes(), elements, b));
        double ohm = solution.voltageV(a);
        List<Reduction.Step> steps = new ArrayList<>(done);
        steps.add(ReductionSteps.solved(network.nodes().get(a), network.nodes().get(b), ohm));
        return new NetworkReduction(Method.SOLVED, OptionalDouble.of(ohm), steps);
    }

    private static String unusedId(Network network) {
        StringBuilder id = new StringBuilder("1 A");
        while (network.elements().stream().anyMatch(e -> e.id().contentEquals(id))) {
            id.append('\'');
        }
        return id.toString();
    }
}
