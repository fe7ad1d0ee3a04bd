package loomwright.operation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.circuit.Consumer;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.network.Element;
import loomwright.network.NetworkScan;
import loomwright.network.Resistor;

/**
 * Solves plans that differ from one in a few resistances, far quicker than {@link PlanSolver}: the sound network stands eliminated, and
 * for each change only the nodes that it reaches are eliminated anew. Relays and lamps follow. The figures are the same to about eight
 * digits. Where it cannot tell it says so.
 *
 * <p>It cannot tell if a part changes that has a threshold or is not a resistance, the supply, a connector, or a joint without resistance.
 *
 * <p>Cost on a harness of 60 nodes: tens of microseconds for the steps of one plan. Not thread safe.
 */
public final class ChangeScan {
    /** Nodes so close in voltage show 0 V, whether anything joins them or not. */
    private static final double NOTHING_V = 1e-6;

    private final Wiring wiring;
    private final Plan plan;
    private final Thresholds thresholds;
    private final DecisionCircuits circuits;
    private final List<Consumer> consumers;
    private final PlanChange.Base base;
    private final boolean possible;
    private final Set<Integer> stabilised;

    /** Which nodes may be joined that are not in the plan itself: see {@link #room}. */
    public static final class Room {
        private final List<Resistor> joints;

        private Room(List<Resistor> joints) {
            this.joints = List.copyOf(joints);
        }
    }

    ChangeScan(Wiring wiring, Thresholds thresholds, Room room) {
        this.wiring = wiring;
        this.plan = wiring.plan();
        this.thresholds = thresholds;
        this.consumers = plan.listParts(Consumer.class);
        this.circuits = new DecisionCircuits(wiring, thresholds, List.of(), room.joints, consumers, true);
        this.base = new PlanChange.Base(wiring, thresholds);
        // A fuse without resistance does not say what it carries.
        this.possible = plan.listParts(Fuse.class).stream().allMatch(f -> f.resistanceOhm() > 0);
        this.stabilised = stabilised();
    }

    /**
     * The nodes that depend on the output or the earth of a stabiliser by anything but the chassis: what it has to give depends on them, see
     * {@link StabilisedLoad}.
     */
    private Set<Integer> stabilised() {
        Set<Integer> reached = new HashSet<>();
        Deque<Integer> open = new ArrayDeque<>();
        for (Stabiliser stabiliser : plan.listParts(Stabiliser.class)) {
            open.add(wiring.node(stabiliser, Stabiliser.OUTPUT));
            open.add(wiring.node(stabiliser, Stabiliser.EARTH));
        }
        while (!open.isEmpty()) {
            int node = open.remove();
            if (node == Wiring.CHASSIS_NODE || !reached.add(node)) {
                continue;
            }
            for (Resistor r : wiring.resistors()) {
                if (r.from() == node || r.to() == node) {
                    open.add(r.from() == node ? r.to() : r.from());
                }
            }
            for (String terminal : wiring.terminalsOf(node)) {
                Part part = plan.findPart(TerminalRef.parse(terminal).part()).orElseThrow();
                if (!(part instanceof Stabiliser)) {
                    part.terminals().forEach(name -> open.add(wiring.node(part, name)));
                }
            }
        }
        return reached;
    }

    /** Makes room for plans that are to be solved. */
    public static Room room(Plan plan, Collection<Plan> changed) {
        Wiring wiring = Wiring.of(plan);
        PlanChange.Base base = new PlanChange.Base(wiring, Thresholds.of(plan));
        Map<Set<Integer>, Resistor> joints = new LinkedHashMap<>();
        for (Plan other : changed) {
            PlanChange.between(base, other).ifPresent(change -> {
                for (Step step : Step.values()) {
                    for (Resistor r : change.added(step)) {
                        if (r.from() != r.to()) {
                            joints.putIfAbsent(Set.of(r.from(), r.to()), r);
                        }
                    }
                }
            });
        }
        return new Room(new ArrayList<>(joints.values()));
    }

    /**
     * Solves a plan.
     *
     * @param changed a plan whose parts and wires keep their ids and terminals
     * @param wanted the steps that are read; the others say only what wires and fuses carry
     * @return the steps up to the last of these; empty if it is for {@link PlanSolver} to say
     */
    public Optional<List<Scanned>> solve(Plan changed, Set<Step> wanted) {
        PlanChange change = possible ? PlanChange.between(base, changed).orElse(null) : null;
        if (change == null || !Collections.disjoint(change.nodes(), stabilised)) {
            return Optional.empty();
        }
        List<Scanned> solved = new ArrayList<>();
        BitSet active = new BitSet();
        int[] setting = {0};
        Step last = Collections.max(wanted);
        for (Step step : Step.values()) {
            DecisionCircuit circuit = circuits.get(step);
            if (!circuit.change(change.parts(), change.branches(), change.added(step))) {
                return Optional.empty();
            }
            StableState state = circuit.settle(circuit.choices() == 0 ? new int[0] : setting, active);
            if (state.outcome() == StableState.Outcome.UNDECIDED || state.outcome() == StableState.Outcome.UNSOLVABLE) {
                return Optional.empty();
            }
            active = state.active();
            solved.add(new Scanned(changed, step, change, circuit, active, wanted.contains(step)));
            if (step == last) {
                break;
            }
        }
        return Optional.of(solved);
    }

    /** A step so solved. */
    public final class Scanned implements StepFigures {
        private final Plan changed;
        private final Step step;
        private final PlanChange change;
        private final BitSet active;
        private final double[] voltageV;
        private final int[] islandOf;
        private final int[] widerIslandOf;
        private final Map<String, Double> consumerA = new HashMap<>();

        private Scanned(
                Plan changed, Step step, PlanChange change, DecisionCircuit circuit, BitSet active, boolean wanted) {
            this.changed = changed;
            this.step = step;
            this.change = change;
            this.active = active;
            int nodes = wiring.nodeNames().size();
            this.voltageV = new double[nodes];
            for (int node = 0; node < nodes; node++) {
                voltageV[node] = circuit.acrossV(node, Wiring.CHASSIS_NODE);
            }
            this.islandOf = wanted ? circuit.islands(false) : new int[0];
            this.widerIslandOf = wanted ? circuit.islands(true) : islandOf;
            for (int c = 0; wanted && c < consumers.size(); c++) {
                consumerA.put(consumers.get(c).id(), circuit.consumerA(c, active));
            }
        }

        @Override
        public Step step() {
            return step;
        }

        @Override
        public Plan plan() {
            return changed;
        }

        @Override
        public boolean solved() {
            return true;
        }

        /** Whether it can say what a meter shows. */
        public boolean tells(Probe probe) {
            return tells(wiring.node(probe.from()), wiring.node(probe.to()));
        }

        /** Whether it can say how a part is fed. */
        public boolean tells(String part) {
            return !change.parts().contains(part)
                    && plan.findPart(part).orElse(null) instanceof Consumer consumer
                    && tells(
                            wiring.node(consumer, consumer.feedTerminal()),
                            wiring.node(consumer, consumer.returnTerminal()));
        }

        private boolean tells(int node, int other) {
            return islandOf[node] == islandOf[other]
                    || widerIslandOf[node] != widerIslandOf[other]
                    || Math.abs(voltageV[node] - voltageV[other]) < NOTHING_V;
        }

        private double acrossV(int node, int other) {
            return islandOf[node] == islandOf[other] ? voltageV[node] - voltageV[other] : 0;
        }

        @Override
        public OptionalDouble volts(Probe probe) {
            int from = wiring.node(probe.from());
            int to = wiring.node(probe.to());
            return islandOf[from] == islandOf[to] ? OptionalDouble.of(acrossV(from, to)) : OptionalDouble.empty();
        }

        private boolean isActive(Part part) {
            int bit = thresholds.bitOf(part.id());
            return bit >= 0 && active.get(bit);
        }

        @Override
        public boolean isOff(Consumer consumer) {
            return consumer instanceof Load load && load.switches(plan.system()) && !isActive(load);
        }

        @Override
        public double effectiveV(Consumer consumer) {
            return Threshold.senseOf(consumer)
                    .effectiveV(
                            (terminal, other) -> acrossV(wiring.node(consumer, terminal), wiring.node(consumer, other)),
                            isActive(consumer));
        }

        @Override
        public FeedStrength activity(Consumer consumer) {
            return FeedStrength.of(
                    consumer, plan.system(), effectiveV(consumer), consumerA.getOrDefault(consumer.id(), 0.0));
        }

        @Override
        public double currentA(Wire wire) {
            int branch = change.isNew(wire) ? -1 : wiring.run(wire.id()).branch();
            return branch < 0
                    ? change.currentA(wire, voltageV)
                    : currentA(wiring.resistors().get(branch));
        }

        private double currentA(Resistor r) {
            return (voltageV[r.from()] - voltageV[r.to()]) / Math.max(NetworkScan.LEAST_OHM, r.resistanceOhm());
        }

        /** Of a fuse or fusible link. */
        @Override
        public double mostA(Part part) {
            if (!(part instanceof Fuse || part instanceof FusibleLink)) {
                return 0;
            }
            List<Element> elements = change.parts().contains(part.id())
                    ? new ArrayList<>(change.added(step, part.id()))
                    : wiring.elementsOf(part, step, false).elements();
            return elements.stream()
                    .mapToDouble(e -> Math.abs(currentA((Resistor) e)))
                    .max()
                    .orElse(0);
        }
    }
}
