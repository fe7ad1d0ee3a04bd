package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.VehicleSystem;
import loomwright.network.Element;
import loomwright.network.Network;
import loomwright.network.Resistor;
import loomwright.network.UnidirectionalElement;
import loomwright.network.VoltageSource;

/**
 * The network of a plan in one step, with the parts in given states: elements, and for each the branch it stands for.
 */
final class StepNetwork {
    private final Wiring wiring;
    private final Step step;
    private final Set<String> active;
    private final List<Element> elements;
    private final List<Branch> branches;
    /** By place of a part: its first branch. */
    private final int[] firstBranch;
    /** By place of a part: the first branch that is not one of its own any more. */
    private final int[] endBranch;

    private StepNetwork(
            Wiring wiring, Step step, Set<String> active, List<Element> elements, List<Branch> branches, int parts) {
        this.wiring = wiring;
        this.step = step;
        this.active = active;
        this.elements = elements;
        this.branches = branches;
        this.firstBranch = new int[parts];
        this.endBranch = new int[parts];
    }

    /**
     * Puts the network together.
     *
     * @param active the parts with a {@link Threshold} that are past it
     */
    static StepNetwork of(Wiring wiring, Step step, Set<String> active) {
        int parts = wiring.plan().parts().size();
        StepNetwork network = new StepNetwork(
                wiring, step, active, new ArrayList<>(wiring.resistors()), new ArrayList<>(wiring.branches()), parts);
        for (int place = 0; place < parts; place++) {
            Part part = wiring.partAt(place);
            network.firstBranch[place] = network.branches.size();
            PartElements own = wiring.elementsOf(part, step, active.contains(part.id()));
            network.elements.addAll(own.elements());
            network.branches.addAll(own.branches());
            network.endBranch[place] = network.branches.size();
        }
        return network;
    }

    /** The elements of one part alone, and the branches they stand for. */
    record PartElements(List<Element> elements, List<Branch> branches) {}

    /**
     * What one part is in a step.
     *
     * @param active whether it is past its {@link Threshold}
     */
    static PartElements of(Wiring wiring, Step step, Part part, boolean active) {
        StepNetwork network = new StepNetwork(
                wiring, step, active ? Set.of(part.id()) : Set.of(), new ArrayList<>(2), new ArrayList<>(2), 0);
        PartModels.connect(part, network);
        return new PartElements(network.elements, network.branches);
    }

    Network network() {
        return new Network(wiring.nodeNames(), elements, Wiring.CHASSIS_NODE);
    }

    /** Those that wires and connectors do not have in common in all steps. */
    List<Element> elementsOfParts() {
        return elements.subList(wiring.resistors().size(), elements.size());
    }

    List<Branch> branches() {
        return branches;
    }

    /** Where the branches of a part begin, which stand together. */
    int firstBranchOf(String partId) {
        return firstBranch[wiring.placeOf(partId)];
    }

    /** Where they end: the first that is not one of them. */
    int endBranchOf(String partId) {
        return endBranch[wiring.placeOf(partId)];
    }

    Step step() {
        return step;
    }

    VehicleSystem system() {
        return wiring.plan().system();
    }

    Wiring wiring() {
        return wiring;
    }

    boolean isActive(Part part) {
        return active.contains(part.id());
    }

    void resistor(Part part, String from, String to, double resistanceOhm) {
        add(part, from, to, (a, b) -> new Resistor(part.id(), a, b, resistanceOhm));
    }

    /** A source that raises the voltage from terminal {@code minus} to terminal {@code plus}. */
    void source(Part part, String minus, String plus, double emfV, double resistanceOhm) {
        add(part, minus, plus, (a, b) -> new VoltageSource(part.id(), a, b, emfV, resistanceOhm));
    }

    void oneWay(Part part, String from, String to, double thresholdV, double slopeOhm, double limitA) {
        add(part, from, to, (a, b) -> new UnidirectionalElement(part.id(), a, b, thresholdV, slopeOhm, limitA));
    }

    void add(Part part, String from, String to, ElementBetween element) {
        add(part, end(part, from), end(part, to), element);
    }

    /** Joins a terminal of a part to the chassis. */
    void resistorToChassis(Part part, String from, double resistanceOhm) {
        add(
                part,
                end(part, from),
                new Wiring.End(Wiring.CHASSIS, Wiring.CHASSIS_NODE),
                (a, b) -> new Resistor(part.id(), a, b, resistanceOhm));
    }

    /** Joins a terminal of a joint to the joint's middle. */
    void resistorToMiddle(Joint joint, String from, double resistanceOhm) {
        add(
                joint,
                end(joint, from),
                new Wiring.End(joint.id(), wiring.middleOf(joint)),
                (a, b) -> new Resistor(joint.id(), a, b, resistanceOhm));
    }

    int node(Part part, String terminal) {
        return end(part, terminal).node();
    }

    private Wiring.End end(Part part, String terminal) {
        return wiring.end(part, terminal);
    }

    private void add(Part part, Wiring.End from, Wiring.End to, ElementBetween element) {
        branches.add(new Branch(Branch.Owner.PART, part.id(), from.name(), to.name(), from.node(), to.node()));
        elements.add(element.between(from.node(), to.node()));
    }

    /** Makes an element once its nodes are known. */
    @FunctionalInterface
    interface ElementBetween {
        Element between(int from, int to);
    }
}
