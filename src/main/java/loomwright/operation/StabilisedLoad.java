package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Battery;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Switch;
import loomwright.network.Element;
import loomwright.network.Network;
import loomwright.network.NetworkLimits;
import loomwright.network.NetworkSolver;
import loomwright.network.Resistor;
import loomwright.network.Solution;
import loomwright.network.VoltageSource;

/**
 * What is connected to the output of a stabiliser: the current that its mean volts drive through it, with nothing else live, every contact
 * of a switch and the points closed and relays at rest. The most that it ever has to give, however they are set.
 */
final class StabilisedLoad {
    private StabilisedLoad() {}

    /** That current, A, 0 or more; 0 where the output is joined to nothing, or the earth is lost. */
    static double currentA(Wiring wiring, Stabiliser stabiliser) {
        List<Element> elements = new ArrayList<>(wiring.resistors());
        for (Part part : wiring.parts()) {
            if (part instanceof Switch chosen) {
                closed(wiring, chosen, elements);
            } else if (part instanceof ContactBreaker points) {
                elements.addAll(wiring.elementsOf(points.whenStopped(true), Step.RUN, false)
                        .elements());
            } else if (!(part instanceof Battery || part instanceof Generator || part instanceof Stabiliser)) {
                elements.addAll(wiring.elementsOf(part, Step.RUN, false).elements());
            }
        }
        double feedV = wiring.plan().system().earthPolarity().feedSign()
                * stabiliser.outputV(wiring.plan().system());
        int earth = wiring.node(stabiliser, Stabiliser.EARTH);
        int output = wiring.node(stabiliser, Stabiliser.OUTPUT);
        elements.add(new VoltageSource(stabiliser.id(), earth, output, feedV, Stabiliser.CONTACT_OHM));
        Solution solved = new NetworkSolver(NetworkLimits.defaults())
                .solve(new Network(wiring.nodeNames(), elements, Wiring.CHASSIS_NODE));
        return solved.solved() ? Math.abs(solved.currentA(elements.size() - 1)) : 0;
    }

    private static void closed(Wiring wiring, Switch part, List<Element> elements) {
        for (Switch.Position position : part.positions()) {
            for (Switch.ClosedContact contact : part.closedIn(position)) {
                elements.add(new Resistor(
                        part.id(), wiring.node(part, contact.from()), wiring.node(part, contact.to()), contact.ohm()));
            }
        }
    }
}
