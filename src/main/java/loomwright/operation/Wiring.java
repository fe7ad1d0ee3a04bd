package loomwright.operation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.stream.IntStream;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Connector;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Place;
import loomwright.circuit.Plan;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.network.Resistor;
import org.jspecify.annotations.Nullable;

/**
 * What of a plan is the same in every condition: the node of each terminal, and the branches of wires and connectors.
 *
 * <p>Terminals joined by negligible resistance share a node: those of a sound joint, and all sound earth points with the
 * chassis, which is the reference. Nodes, wires and parts stand in the order of their ids, so that no digit of a solution
 * depends on the order of the plan. A joint or earth point with resistance has a node in its middle, or the chassis.
 */
final class Wiring {
    /** Name of the reference node. */
    static final String CHASSIS = "chassis";

    static final int CHASSIS_NODE = 0;

    private final Plan plan;
    /** The places of the parts in the plan, in the order of their ids. */
    private final int[] partOrder;

    private final List<String> nodeNames;
    private final List<List<String>> terminalsOfNode;
    /** By id of a part. */
    private final Map<String, PartEnds> partEnds;

    private final Map<String, Integer> middleOfJoint;
    private final Map<String, Double> linkOhm;
    private final List<Branch> branches;
    private final List<Resistor> resistors;
    /** By id of a wire. */
    private final Map<String, Run> runs;
    /** By part, as the very object it is, what it is in each step, inactive and active. */
    private final IdentityHashMap<Part, Map<Step, StepNetwork.PartElements[]>> elements;

    /** By id of a stabiliser. */
    private final Map<String, Double> stabilisedA;

    /** Once asked for, the ids of the charge lamps. */
    private final AtomicReference<@Nullable Set<String>> chargeLamps;

    private final Map<SizeInPlace, Double> ohmPerM = new HashMap<>();

    /** A terminal in words, and its node. */
    record End(String name, int node) {}

    /** A wire between its ends, and its branch: -1 if both are one node. */
    record Run(Wire wire, End from, End to, int branch) {}

    /** A part's place in the network, and its terminals in the order in which the part names them. */
    private record PartEnds(int index, List<String> names, List<End> ends) {
        End end(String terminal) {
            int t = names.indexOf(terminal);
            if (t < 0) {
                throw new IllegalArgumentException(terminal + " is no terminal of part " + index);
            }
            return ends.get(t);
        }
    }

    private record SizeInPlace(String size, Place place) {}

    private Wiring(Plan plan) {
        this.plan = plan;
        partOrder = inOrder(plan.parts(), Part::id);
        nodeNames = new ArrayList<>();
        terminalsOfNode = new ArrayList<>();
        partEnds = new HashMap<>();
        middleOfJoint = new HashMap<>();
        linkOhm = new HashMap<>();
        branches = new ArrayList<>();
        resistors = new ArrayList<>();
        runs = new HashMap<>();
        elements = new IdentityHashMap<>();
        stabilisedA = new HashMap<>();
        chargeLamps = new AtomicReference<>();
    }

    /** The wiring of another plan of which all but the branches is the same. */
    private Wiring(Plan plan, Wiring same, List<Branch> branches, List<Resistor> resistors) {
        this.plan = plan;
        partOrder = same.partOrder;
        this.branches = branches;
        this.resistors = resistors;
        nodeNames = same.nodeNames;
        terminalsOfNode = same.terminalsOfNode;
        partEnds = same.partEnds;
        middleOfJoint = same.middleOfJoint;
        linkOhm = same.linkOhm;
        runs = same.runs;
        elements = same.elements;
        stabilisedA = same.stabilisedA;
        chargeLamps = same.chargeLamps;
    }

    /**
     * Gives a plan its nodes.
     *
     * @throws RejectedInput with a fault for each conductor size that is not known
     */
    static Wiring of(Plan plan) {
        Wiring wiring = new Wiring(plan);
        wiring.addNode(CHASSIS);
        wiring.parts().forEach(wiring::addPart);
        InputErrors faults = new InputErrors();
        wiring.addWires(faults);
        wiring.addLinks(faults);
        faults.reject();
        plan.connectors().stream().sorted(Comparator.comparing(Connector::id)).forEach(wiring::addConnector);
        return wiring;
    }

    /** The parts in the order in which the network has them, which is that of their ids. */
    List<Part> parts() {
        return IntStream.range(0, partOrder.length).mapToObj(this::partAt).toList();
    }

    /** The part that has a place in the network. */
    Part partAt(int place) {
        return plan.parts().get(partOrder[place]);
    }

    /** The same wiring of a plan that differs in nothing but how switches and contacts are set. */
    Wiring with(Plan set) {
        return new Wiring(set, this, branches, resistors);
    }

    /** With one more wire at the end of the list, from a terminal to the chassis. */
    Wiring withWireToChassis(TerminalRef terminal, String id, double ohm) {
        End end = end(terminal);
        if (end.node() == CHASSIS_NODE) {
            return this;
        }
        int place = (int)
                branches.stream().filter(b -> b.owner() == Branch.Owner.WIRE).count();
        List<Branch> moreBranches = new ArrayList<>(branches);
        List<Resistor> moreResistors = new ArrayList<>(resistors);
        moreBranches.add(place, new Branch(Branch.Owner.WIRE, id, end.name(), CHASSIS, end.node(), CHASSIS_NODE));
        moreResistors.add(place, new Resistor(id, end.node(), CHASSIS_NODE, ohm));
        return new Wiring(plan, this, moreBranches, moreResistors);
    }

    /** The places of things in their list, in the order of their ids. */
    private static <T> int[] inOrder(List<T> things, Function<T, String> id) {
        return IntStream.range(0, things.size())
                .boxed()
                .sorted(Comparator.comparing(i -> id.apply(things.get(i))))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private int addNode(String name) {
        nodeNames.add(name);
        terminalsOfNode.add(new ArrayList<>());
        return nodeNames.size() - 1;
    }

    private void addPart(Part part) {
        List<String> names = part.terminals();
        List<End> ends = new ArrayList<>(names.size());
        partEnds.put(part.id(), new PartEnds(partEnds.size(), names, ends));
        boolean oneNode = part instanceof Joint joint && joint.resistanceOhm() == 0;
        boolean onChassis = part instanceof EarthPoint earth && earth.resistanceOhm() == 0;
        int shared = onChassis ? CHASSIS_NODE : -1;
        for (String terminal : names) {
            String name = part.terminal(terminal).toString();
            int node = shared >= 0 ? shared : addNode(name);
            ends.add(new End(name, node));
            terminalsOfNode.get(node).add(name);
            if (oneNode) {
                shared = node;
            }
        }
        if (part instanceof Joint && !oneNode) {
            middleOfJoint.put(part.id(), addNode(part.id()));
        }
    }

    private void addWires(InputErrors faults) {
        for (int i : inOrder(plan.wires(), Wire::id)) {
            Wire wire = plan.wires().get(i);
            double ohm = resistanceOhm(wire, i, faults);
            End from = end(wire.from());
            End to = end(wire.to());
            runs.put(wire.id(), new Run(wire, from, to, addResistor(Branch.Owner.WIRE, wire.id(), from, to, ohm)));
        }
    }

    private double resistanceOhm(Wire wire, int at, InputErrors faults) {
        double ohm = wire.joints().fromJointResistanceOhm() + wire.joints().toJointResistanceOhm();
        Double given = wire.conductor().resistanceOhm();
        String size = wire.conductor().size();
        Double metres = wire.metres();
        if (given != null) {
            ohm += given;
        } else if (size != null && metres != null) {
            ohm += conductorOhm("/wires/", at, size, metres, wire.laid().place(), faults);
        }
        return ohm;
    }

    /**
     * Of a wire that is not in the plan.
     *
     * @throws RejectedInput if its size is not known
     */
    double resistanceOhm(Wire wire) {
        InputErrors faults = new InputErrors();
        double ohm = resistanceOhm(wire, 0, faults);
        faults.reject();
        return ohm;
    }

    private void addLinks(InputErrors faults) {
        for (int i = 0; i < plan.parts().size(); i++) {
            if (plan.parts().get(i) instanceof FusibleLink link) {
                double ohm = conductorOhm("/parts/", i, link.size(), link.lengthM(), Place.ENGINE_BAY, faults);
                linkOhm.put(link.id(), ohm);
            }
        }
    }

    private double conductorOhm(String list, int at, String size, double lengthM, Place place, InputErrors faults) {
        try {
            return lengthM * ohmPerM.computeIfAbsent(new SizeInPlace(size, place), this::resistanceOhmPerM);
        } catch (RejectedInput rejected) {
            for (InputError fault : rejected.faults()) {
                faults.add(fault.under(list + at + "/size"));
            }
            return 1;
        }
    }

    private double resistanceOhmPerM(SizeInPlace conductor) {
        double temperatureC = plan.system().temperatureC(conductor.place());
        return ConductorSize.parse(conductor.size()).wireOhmPerM(temperatureC);
    }

    private void addConnector(Connector connector) {
        Part one = plan.findPart(connector.halves().get(0)).orElseThrow();
        Part other = plan.findPart(connector.halves().get(1)).orElseThrow();
        for (String way : one.terminals()) {
            if (other.terminals().contains(way)) {
                addResistor(
                        Branch.Owner.CONNECTOR,
                        connector.id(),
                        end(one, way),
                        end(other, way),
                        connector.contactResistanceOhm());
            }
        }
    }

    private int addResistor(Branch.Owner owner, String id, End from, End to, double ohm) {
        if (from.node() == to.node()) {
            // Both ends on one joint or on the chassis: nothing can flow in it.
            return -1;
        }
        branches.add(new Branch(owner, id, from.name(), to.name(), from.node(), to.node()));
        resistors.add(new Resistor(id, from.node(), to.node(), ohm));
        return branches.size() - 1;
    }

    /** What one part is in a step, see {@link StepNetwork#of(Wiring, Step, Part, boolean)}. */
    StepNetwork.PartElements elementsOf(Part part, Step step, boolean active) {
        boolean lasting = PartModels.isLasting(part);
        Step at = lasting ? Step.OFF : step;
        int state = active && !lasting ? 1 : 0;
        StepNetwork.PartElements[] known = elements.computeIfAbsent(part, p -> new EnumMap<>(Step.class))
                .computeIfAbsent(at, s -> new StepNetwork.PartElements[2]);
        if (known[state] == null) {
            known[state] = StepNetwork.of(this, at, part, state == 1);
        }
        return known[state];
    }

    /** What the output of a stabiliser has to give, see {@link StabilisedLoad}, A. */
    double stabilisedA(Stabiliser stabiliser) {
        Double known = stabilisedA.get(stabiliser.id());
        if (known == null) {
            known = StabilisedLoad.currentA(this, stabiliser);
            stabilisedA.put(stabiliser.id(), known);
        }
        return known;
    }

    /** See {@link UsualIntent#chargeLamps}. */
    Set<String> chargeLamps() {
        return chargeLamps.updateAndGet(known -> known == null ? UsualIntent.chargeLamps(plan) : known);
    }

    Plan plan() {
        return plan;
    }

    End end(TerminalRef terminal) {
        return known(partEnds, terminal.part()).end(terminal.terminal());
    }

    End end(Part part, String terminal) {
        return known(partEnds, part.id()).end(terminal);
    }

    int node(Part part, String terminal) {
        return end(part, terminal).node();
    }

    int node(TerminalRef terminal) {
        return end(terminal).node();
    }

    Run run(String wireId) {
        return known(runs, wireId);
    }

    /** The place of a part in the network, see {@link #partAt}. */
    int placeOf(String partId) {
        return known(partEnds, partId).index();
    }

    int node(Point point) {
        TerminalRef terminal = point.terminal();
        return terminal == null ? CHASSIS_NODE : node(terminal);
    }

    int middleOf(Joint joint) {
        return known(middleOfJoint, joint.id());
    }

    double resistanceOhm(FusibleLink link) {
        return known(linkOhm, link.id());
    }

    private static <K, V> V known(Map<K, V> map, K key) {
        V value = map.get(key);
        if (value == null) {
            throw new IllegalArgumentException(key + " is not of this plan");
        }
        return value;
    }

    List<String> nodeNames() {
        return nodeNames;
    }

    List<String> terminalsOf(int node) {
        return terminalsOfNode.get(node);
    }

    List<Branch> branches() {
        return branches;
    }

    List<Resistor> resistors() {
        return resistors;
    }
}
