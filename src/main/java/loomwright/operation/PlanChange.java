package loomwright.operation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.network.Element;
import loomwright.network.NetworkScan;
import loomwright.network.Resistor;

/** In which resistances a plan differs from another, if in nothing else, by the nodes of that other plan. */
final class PlanChange {
    private final Wiring wiring;
    private final List<Integer> branches = new ArrayList<>();
    private final List<Resistor> wires = new ArrayList<>();
    private final Map<String, Resistor> newWires = new HashMap<>();
    private final Map<String, Map<Step, List<Resistor>>> parts = new LinkedHashMap<>();
    private final Set<String> loose = new HashSet<>();
    private final Set<String> metal = new HashSet<>();

    private PlanChange(Wiring wiring) {
        this.wiring = wiring;
    }

    /** The plan that others are compared with. */
    static final class Base {
        private final Wiring wiring;
        private final Thresholds thresholds;
        private final Map<String, Part> parts;
        private final Map<String, Wire> wires = new HashMap<>();

        Base(Wiring wiring, Thresholds thresholds) {
            this.wiring = wiring;
            this.thresholds = thresholds;
            this.parts = wiring.plan().partsById();
            wiring.plan().wires().forEach(w -> wires.put(w.id(), w));
        }
    }

    /**
     * Compares.
     *
     * @return empty if they differ in more
     */
    static Optional<PlanChange> between(Base base, Plan changed) {
        Plan plan = base.wiring.plan();
        if (!changed.conditions().equals(plan.conditions())
                || !changed.connectors().equals(plan.connectors())) {
            return Optional.empty();
        }
        PlanChange change = new PlanChange(base.wiring);
        for (Part part : changed.parts()) {
            Part sound = base.parts.get(part.id());
            if (sound == part) {
                continue;
            }
            boolean told = sound == null ? change.addNew(part) : change.replace(base.thresholds, sound, part);
            if (!told) {
                return Optional.empty();
            }
        }
        for (Wire wire : changed.wires()) {
            Wire sound = base.wires.get(wire.id());
            if (!wire.equals(sound)) {
                change.addWire(sound != null, wire);
            }
        }
        return Optional.of(change);
    }

    /** A loose end, which leads nowhere, or the chassis itself. */
    private boolean addNew(Part part) {
        if (part instanceof Joint joint && joint.terminals().size() == 1) {
            return loose.add(part.id());
        }
        return part instanceof EarthPoint earth && earth.resistanceOhm() == 0 && metal.add(part.id());
    }

    private boolean replace(Thresholds thresholds, Part sound, Part part) {
        boolean nodes = sound instanceof Joint
                || part instanceof Joint
                || (sound instanceof EarthPoint s
                        && part instanceof EarthPoint p
                        && (s.resistanceOhm() == 0) != (p.resistanceOhm() == 0));
        if (nodes
                || thresholds.bitOf(sound.id()) >= 0
                || Threshold.find(part, wiring.plan().system()).isPresent()) {
            return false;
        }
        Map<Step, List<Resistor>> now = new EnumMap<>(Step.class);
        for (Step step : Step.values()) {
            List<Element> elements = StepNetwork.of(wiring, step, part, false).elements();
            if (!elements.stream().allMatch(Resistor.class::isInstance)) {
                return false;
            }
            now.put(step, elements.stream().map(Resistor.class::cast).toList());
        }
        parts.put(part.id(), now);
        return true;
    }

    private void addWire(boolean known, Wire wire) {
        if (known && wiring.run(wire.id()).branch() >= 0) {
            branches.add(wiring.run(wire.id()).branch());
        }
        int from = node(wire.from());
        int to = node(wire.to());
        if (from >= 0 && to >= 0) {
            Resistor resistor = new Resistor(wire.id(), from, to, wiring.resistanceOhm(wire));
            newWires.put(wire.id(), resistor);
            wires.add(resistor);
        } else {
            newWires.put(wire.id(), new Resistor(wire.id(), Wiring.CHASSIS_NODE, Wiring.CHASSIS_NODE, 1));
        }
    }

    /** −1 for a loose end. */
    private int node(TerminalRef terminal) {
        if (loose.contains(terminal.part())) {
            return -1;
        }
        return metal.contains(terminal.part()) ? Wiring.CHASSIS_NODE : wiring.node(terminal);
    }

    /** The parts that are not what they were. */
    List<String> parts() {
        return List.copyOf(parts.keySet());
    }

    /** The branches of wires that are not what they were. */
    List<Integer> branches() {
        return branches;
    }

    /** The nodes of all that is there no more, or instead. */
    Set<Integer> nodes() {
        Set<Integer> nodes = new HashSet<>();
        for (int branch : branches) {
            nodes.add(wiring.resistors().get(branch).from());
            nodes.add(wiring.resistors().get(branch).to());
        }
        for (Resistor r : wires) {
            nodes.add(r.from());
            nodes.add(r.to());
        }
        for (String id : parts.keySet()) {
            Part part = wiring.plan().findPart(id).orElseThrow();
            part.terminals().forEach(name -> nodes.add(wiring.node(part, name)));
        }
        return nodes;
    }

    /** What is there instead, of parts and wires. */
    List<Resistor> added(Step step) {
        List<Resistor> all = new ArrayList<>(wires);
        parts.values().forEach(steps -> all.addAll(steps.getOrDefault(step, List.of())));
        return all;
    }

    /** What is there instead of one part. */
    List<Resistor> added(Step step, String part) {
        return parts.getOrDefault(part, Map.of()).getOrDefault(step, List.of());
    }

    boolean isNew(Wire wire) {
        return newWires.containsKey(wire.id());
    }

    /** Current of a wire that is not what it was, A; 0 in any other, which joins one node to itself. */
    double currentA(Wire wire, double[] voltageV) {
        Resistor r = newWires.get(wire.id());
        return r == null
                ? 0
                : (voltageV[r.from()] - voltageV[r.to()]) / Math.max(NetworkScan.LEAST_OHM, r.resistanceOhm());
    }
}
