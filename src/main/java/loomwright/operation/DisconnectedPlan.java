package loomwright.operation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loomwright.circuit.Condition;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.tolerance.Tolerances;
import loomwright.network.CurrentSource;
import loomwright.network.Element;
import loomwright.network.Lamp;
import loomwright.network.NetworkScan;
import loomwright.network.PowerLoad;
import loomwright.network.Resistor;
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
 * <p>Ohms follow from 1 A sent through the network. Cost: one elimination, and a substitution for each reading. Not thread safe.
 */
public final class DisconnectedPlan {
    private final Wiring wiring;
    /** Standing still a motor has as little as this share of its resistance at work (common practice, no source). */
    public static final double STANDING_MOTOR = 0.1;

    private final List<Element> resistors;
    private final List<Double> fractions;
    private @Nullable NetworkScan scan;
    private final int[] islandOf;

    private DisconnectedPlan(Wiring wiring, List<Element> resistors, List<Double> fractions) {
        this.wiring = wiring;
        this.resistors = resistors;
        this.fractions = fractions;
        this.islandOf = islands(wiring.nodeNames().size(), resistors);
    }

    /**
     * Disconnects the battery.
     *
     * @throws loomwright.answer.RejectedInput if a conductor size is not known
     */
    public static DisconnectedPlan of(Plan plan, Condition condition) {
        Wiring wiring = Wiring.of(plan);
        Map<String, Part> parts = plan.partsById();
        Set<String> taking = plan.listParts(Load.class).stream()
                .filter(load -> reads(load, plan.system()))
                .map(Load::id)
                .collect(Collectors.toSet());
        StepNetwork live = StepNetwork.of(wiring, stepOf(condition), taking);
        List<Element> elements = live.network().elements();
        List<Element> resistors = new ArrayList<>();
        List<Double> fractions = new ArrayList<>();
        for (int i = 0; i < elements.size(); i++) {
            Branch branch = live.branches().get(i);
            Part part = branch.owner() == Branch.Owner.PART ? parts.get(branch.id()) : null;
            Element seen = asSeen(elements.get(i), part, plan.system());
            if (seen != null) {
                resistors.add(seen);
                fractions.add(fraction(branch, part));
            }
        }
        return new DisconnectedPlan(wiring, resistors, fractions);
    }

    /** A motor's stated resistance is that at work, a lamp's cold one is known less well than its watts. */
    private static double fraction(Branch branch, @Nullable Part part) {
        if (part instanceof Motor) {
            return 1 - STANDING_MOTOR;
        }
        return part instanceof FilamentLamp
                ? Tolerances.LAMP_POWER + Tolerances.LAMP_COLD
                : BranchTolerance.fraction(branch, part);
    }

    private static Step stepOf(Condition condition) {
        return Arrays.stream(Step.values())
                .filter(step -> step.condition() == condition)
                .findFirst()
                .orElseThrow();
    }

    /** Whether a load has a resistance at the few tenths of a volt of an ohm range. */
    private static boolean reads(Load load, VehicleSystem system) {
        return load.draw().resistanceOhm() != null && load.minimumV(system) == 0;
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
        Ohms found = ohmsWithin(probe);
        return found == null ? OptionalDouble.empty() : OptionalDouble.of(found.ohm());
    }

    /**
     * Ohms between two points.
     *
     * @param ohm with everything at its stated figure
     * @param spreadOhm root of the sum of the squares of what each resistance moves it by when it is off by its tolerance
     */
    public record Ohms(double ohm, double spreadOhm) {}

    /** As {@link #ohms}, with how far it may be off; null where nothing joins the points. */
    public @Nullable Ohms ohmsWithin(Probe probe) {
        int from = wiring.node(probe.from());
        int to = wiring.node(probe.to());
        if (from == to) {
            return new Ohms(0, 0);
        } else if (islandOf[from] != islandOf[to]) {
            return null;
        }
        NetworkScan network = scan();
        network.clear();
        // 1 A in at one point and out at the other; the chassis takes and gives what it must.
        network.add(IntStream.of(source(from, false), source(to, true))
                .filter(source -> source >= 0)
                .toArray());
        if (!network.solve()) {
            throw new IllegalStateException("no ohms " + probe);
        }
        double squares = 0;
        for (int i = 0; i < resistors.size(); i++) {
            // dR = I² dr for 1 A sent through (Cohn's theorem, from memory).
            double currentA = network.currentA(i);
            double ohm = resistors.get(i) instanceof Resistor r ? r.resistanceOhm() : 0;
            double moved = currentA * currentA * ohm * fractions.get(i);
            squares += moved * moved;
        }
        return new Ohms(network.acrossV(from, to), Math.sqrt(squares));
    }

    /** The source of 1 A into a node, or out of it; −1 for the chassis. */
    private int source(int node, boolean out) {
        return node == Wiring.CHASSIS_NODE ? -1 : resistors.size() + 2 * (node - 1) + (out ? 1 : 0);
    }

    /** The resistances, and for each node 1 A from the chassis into it and 1 A out of it. */
    private NetworkScan scan() {
        NetworkScan known = scan;
        if (known == null) {
            List<Element> elements = new ArrayList<>(resistors);
            int nodes = wiring.nodeNames().size();
            for (int node = Wiring.CHASSIS_NODE + 1; node < nodes; node++) {
                elements.add(new CurrentSource("in", Wiring.CHASSIS_NODE, node, 1));
                elements.add(new CurrentSource("out", node, Wiring.CHASSIS_NODE, 1));
            }
            boolean[] always = new boolean[elements.size()];
            Arrays.fill(always, 0, resistors.size(), true);
            known = new NetworkScan(nodes, Wiring.CHASSIS_NODE, elements, always, true);
            scan = known;
        }
        return known;
    }
}
