package loomwright.operation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;

/**
 * A second way to the same figures, plain and slow: all node voltages and all branch currents as unknowns of one dense matrix
 * (commons-math3), states of diodes by trial, lamps and constant-power loads by repeated chords, relays by trial too. It
 * shares nothing with the solver but the plan, and is written from {@code docs/physics.md}.
 *
 * <p>Good for resistances within nine decades. What is tied to nothing but blocking diodes has no voltage here.
 */
public final class DenseOracle {
    private final Plan plan;
    private final Map<String, Integer> nodes = new LinkedHashMap<>();
    private final int count;
    private final OracleParts parts;
    private final OracleStates states;

    public DenseOracle(Plan plan) {
        this.plan = plan;
        nodes.put(OracleElement.CHASSIS, 0);
        int next = 1;
        for (Part part : plan.parts()) {
            boolean onChassis = part instanceof EarthPoint earth && earth.resistanceOhm() == 0;
            boolean joined = part instanceof Joint joint && joint.resistanceOhm() == 0;
            int shared = onChassis ? 0 : joined ? next++ : -1;
            for (String terminal : part.terminals()) {
                nodes.put(part.id() + "." + terminal, shared >= 0 ? shared : next++);
            }
            if (part instanceof Joint && !joined) {
                nodes.put(part.id(), next++);
            }
        }
        count = next;
        parts = new OracleParts(plan, nodes, count);
        states = new OracleStates(plan, parts);
    }

    /** How the branch between two terminals of an owner is called, whichever way it is drawn. */
    static String key(String owner, String from, String to) {
        return OracleElement.key(owner, from, to);
    }

    /** Whether {@link #key} keeps the direction. */
    static int sign(String from, String to) {
        return OracleElement.sign(from, to);
    }

    /** All figures of a step, with the parts that are active given. */
    public OracleFigures solve(Step step, Set<String> active) {
        List<OracleElement> elements = new ArrayList<>();
        parts.addWiring(elements);
        for (Part part : plan.parts()) {
            parts.addPart(elements, part, step, active.contains(part.id()));
        }
        return new OracleEquations(elements, nodes, count).solve();
    }

    /** The parts that have states. */
    public List<Part> stateful() {
        return states.stateful();
    }

    /** How far a part is from changing its state, as a share of its limit: positive if it is content. */
    public double contentment(Part part, OracleFigures figures, boolean active) {
        return states.contentment(part, figures, active);
    }

    /**
     * The states in which a step may come to rest.
     *
     * @param rests every one that is reached, whichever relay or solenoid is quicker
     * @param complete whether all ways were followed
     * @param raced whether relays or solenoids wanted to change together with each other or with what follows them
     * @param closest how close any part came to its limit, as a share of it: beside a millionth a verdict means little
     */
    public record Rests(Set<Set<String>> rests, boolean complete, boolean raced, double closest) {
        /** The only one. */
        public Set<String> only() {
            if (rests.size() != 1) {
                throw new AssertionError("not one state of rest: " + rests);
            }
            return rests.iterator().next();
        }
    }

    /** Follows every order in which relays and solenoids may change, with what follows them at once or later. */
    public Rests rests(Step step, Set<String> before, int mostStates) {
        Set<Set<String>> rests = new LinkedHashSet<>();
        Set<Set<String>> seen = new LinkedHashSet<>();
        Deque<Set<String>> open = new ArrayDeque<>();
        open.add(new TreeSet<>(before));
        boolean raced = false;
        double closest = Double.POSITIVE_INFINITY;
        while (!open.isEmpty() && seen.size() < mostStates) {
            Set<String> state = open.remove();
            if (!seen.add(state)) {
                continue;
            }
            OracleFigures figures = solve(step, state);
            List<Part> oscillatingParts = new ArrayList<>();
            for (Part part : states.stateful()) {
                if (!states.senses(part, figures)) {
                    closest = 0;
                }
                double content = states.contentment(part, figures, state.contains(part.id()));
                closest = Math.min(closest, Math.abs(content));
                if (content < 0) {
                    oscillatingParts.add(part);
                }
            }
            if (oscillatingParts.isEmpty()) {
                rests.add(state);
                continue;
            }
            List<Part> switching =
                    oscillatingParts.stream().filter(OracleStates::isSwitching).toList();
            raced |= !switching.isEmpty() && oscillatingParts.size() > 1;
            open.add(changed(state, oscillatingParts));
            if (!switching.isEmpty() && oscillatingParts.size() > switching.size()) {
                open.add(changed(
                        state,
                        oscillatingParts.stream()
                                .filter(p -> !OracleStates.isSwitching(p))
                                .toList()));
            }
            switching.forEach(part -> open.add(changed(state, List.of(part))));
        }
        return new Rests(rests, open.isEmpty(), raced, closest);
    }

    private static Set<String> changed(Set<String> state, List<Part> parts) {
        Set<String> next = new TreeSet<>(state);
        for (Part part : parts) {
            if (!next.remove(part.id())) {
                next.add(part.id());
            }
        }
        return next;
    }
}
