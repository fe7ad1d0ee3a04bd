package loomwright.operation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.circuit.Condition;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.VehicleSystem;
import loomwright.network.CurrentSource;
import loomwright.network.Element;
import loomwright.network.Lamp;
import loomwright.network.Network;
import loomwright.network.NetworkLimits;
import loomwright.network.NetworkSolver;
import loomwright.network.PowerLoad;
import loomwright.network.Resistor;
import loomwright.network.Solution;
import loomwright.network.TwoSlopeSource;
import loomwright.network.VoltageSource;
import org.jspecify.annotations.Nullable;

/**
 * A plan as an ohmmeter sees it: both clamps off the battery, the engine stopped, the key where a condition has it.
 *
 * <p>Relays and solenoids are released, lamps have their cold resistance, capacitors are charged by the meter and open.
 * An ohm range tests with a few tenths of a volt and milliamperes (common practice, no source), too little for a diode,
 * for electronics and for loads that work from a least voltage: these read open, as do loads of constant current or
 * power, of which no resistance is known. Resistances that a wire has hot in the plan are taken hot.
 *
 * <p>Ohms follow from 1 A sent through the network. Cost: one linear solution for each reading.
 */
public final class DisconnectedPlan {
    private final Wiring wiring;
    private final List<Element> resistors;
    private final NetworkSolver solver;
    private final int[] islandOf;

    private DisconnectedPlan(Wiring wiring, List<Element> resistors, NetworkLimits limits) {
        this.wiring = wiring;
        this.resistors = resistors;
        this.solver = new NetworkSolver(limits);
        this.islandOf = islands(wiring.nodeNames().size(), resistors);
    }

    /**
     * Disconnects the battery.
     *
     * @throws loomwright.answer.RejectedInput if a conductor size is not known
     */
    public static DisconnectedPlan of(Plan plan, Condition condition, NetworkLimits limits) {
        Wiring wiring = Wiring.of(plan);
        Map<String, Part> parts = plan.partsById();
        Set<String> taking = plan.listParts(Load.class).stream()
                .filter(load -> reads(load, plan.system()))
                .map(Load::id)
                .collect(Collectors.toSet());
        StepNetwork live = StepNetwork.of(wiring, stepOf(condition), taking);
        List<Element> elements = live.network().elements();
        List<Element> resistors = new ArrayList<>();
        for (int i = 0; i < elements.size(); i++) {
            Branch branch = live.branches().get(i);
            Part part = branch.owner() == Branch.Owner.PART ? parts.get(branch.id()) : null;
            Element seen = asSeen(elements.get(i), part, plan.system());
            if (seen != null) {
                resistors.add(seen);
            }
        }
        return new DisconnectedPlan(wiring, resistors, limits);
    }

    private static Step stepOf(Condition condition) {
        return Arrays.stream(Step.values())
                .filter(step -> step.condition() == condition)
                .findFirst()
                .orElseThrow();
    }

    /** Whether a load has a resistance at the few tenths of a volt of an ohm range. */
    private static boolean reads(Load load, VehicleSystem system) {
        return load.resistanceOhm() != null && load.minimumV(system) == 0;
    }

    private static @Nullable Element asSeen(Element element, @Nullable Part part, VehicleSystem system) {
        boolean openAtRest = part instanceof IgnitionModule
                || (part instanceof ContactBreaker b && !b.closedWhenStopped())
                || (part instanceof Load load && !reads(load, system));
        boolean source = element instanceof VoltageSource || element instanceof TwoSlopeSource;
        if (openAtRest || source || element instanceof PowerLoad) {
            return null;
        } else if (element instanceof Lamp lamp) {
            double coldOhm = lamp.coldFraction() * lamp.ratedV() * lamp.ratedV() / lamp.ratedW();
            // A lamp of absurd ratings is less than the least resistance there may be, which no meter shows either.
            return new Resistor(lamp.id(), lamp.from(), lamp.to(), Math.max(coldOhm, Element.MINIMUM_OHM));
        }
        return element instanceof Resistor ? element : null;
    }

    /** A number for each node, the same for nodes that resistors join. */
    private static int[] islands(int nodes, List<Element> resistors) {
        int[] island = new int[nodes];
        Arrays.setAll(island, i -> i);
        for (Element e : resistors) {
            int one = root(island, e.from());
            int other = root(island, e.to());
            island[Math.max(one, other)] = Math.min(one, other);
        }
        for (int i = 0; i < nodes; i++) {
            island[i] = root(island, i);
        }
        return island;
    }

    private static int root(int[] island, int node) {
        int at = node;
        while (island[at] != at) {
            island[at] = island[island[at]];
            at = island[at];
        }
        return at;
    }

    /**
     * Ohms between two points.
     *
     * @return empty where nothing joins them
     */
    public OptionalDouble ohms(Probe probe) {
        int from = wiring.node(probe.from());
        int to = wiring.node(probe.to());
        if (from == to) {
            return OptionalDouble.of(0);
        } else if (islandOf[from] != islandOf[to]) {
            return OptionalDouble.empty();
        }
        List<Element> elements = new ArrayList<>(resistors);
        elements.add(new CurrentSource("meter", to, from, 1));
        Solution solution = solver.solve(new Network(wiring.nodeNames(), elements, to));
        return OptionalDouble.of(solution.voltageV(from));
    }
}
