package loomwright.expression;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loomwright.expression.ReductionSteps.Named;
import loomwright.network.Element;
import loomwright.network.Network;
import loomwright.network.NodeSets;
import loomwright.network.Resistor;

/**
 * Resistors between nodes, at most one between two, with the steps that took them together. A node between two
 * resistors is a series step, a second resistor between the same nodes a parallel step, and a dead end is left out, as
 * long as one of these is found. Cost: near-linear.
 */
final class ReductionGraph {
    private final int a;
    private final int b;
    private final List<String> names;
    /** Ids of the resistors, which no result may have. */
    private final Set<String> given;

    private final List<TreeMap<Integer, Named>> at = new ArrayList<>();
    private final List<Reduction.Step> steps;
    private final Deque<Integer> changed = new ArrayDeque<>();
    private int taken;

    ReductionGraph(Network network, int a, int b) {
        names = network.nodes();
        given = network.elements().stream().map(Element::id).collect(Collectors.toSet());
        steps = new ArrayList<>();
        NodeSets joined = new NodeSets(names.size());
        for (Element element : network.elements()) {
            if (((Resistor) element).resistanceOhm() == 0) {
                joined.join(element.from(), element.to());
            }
        }
        this.a = joined.find(a);
        this.b = joined.find(b);
        for (int node = 0; node < names.size(); node++) {
            at.add(new TreeMap<>());
        }
        for (Element element : network.elements()) {
            Resistor resistor = (Resistor) element;
            if (resistor.resistanceOhm() > 0) {
                Named named = new Named(resistor.id(), resistor.resistanceOhm());
                add(joined.find(resistor.from()), joined.find(resistor.to()), named);
            }
        }
    }

    private ReductionGraph(ReductionGraph other) {
        a = other.a;
        b = other.b;
        names = other.names;
        given = other.given;
        steps = new ArrayList<>(other.steps);
        taken = other.taken;
        other.at.forEach(edges -> at.add(new TreeMap<>(edges)));
    }

    ReductionGraph copy() {
        return new ReductionGraph(this);
    }

    List<Reduction.Step> steps() {
        return steps;
    }

    void reduce() {
        while (!changed.isEmpty()) {
            int node = changed.pop();
            if (node == a || node == b) {
                continue;
            }
            TreeMap<Integer, Named> edges = at.get(node);
            if (edges.size() == 1) {
                int other = edges.firstKey();
                steps.add(ReductionSteps.deadEnd(remove(node, other), names.get(node)));
                changed.push(other);
            } else if (edges.size() == 2) {
                int first = edges.firstKey();
                int second = edges.lastKey();
                List<Named> parts = List.of(remove(node, first), remove(node, second));
                Named whole =
                        new Named(nextName(), parts.get(0).ohm() + parts.get(1).ohm());
                steps.add(ReductionSteps.series(parts, whole));
                add(first, second, whole);
            }
        }
    }

    private void add(int from, int to, Named resistor) {
        if (from == to) {
            steps.add(ReductionSteps.bothEndsAtOneNode(resistor));
            return;
        }
        Named there = at.get(from).get(to);
        Named placed = resistor;
        if (there != null) {
            placed = new Named(nextName(), 1 / (1 / there.ohm() + 1 / resistor.ohm()));
            steps.add(ReductionSteps.parallel(List.of(there, resistor), placed));
        }
        at.get(from).put(to, placed);
        at.get(to).put(from, placed);
        changed.push(from);
        changed.push(to);
    }

    private Named remove(int from, int to) {
        Named edge = at.get(from).remove(to);
        at.get(to).remove(from);
        if (edge == null) {
            throw new IllegalArgumentException("no resistor between " + from + " and " + to);
        }
        return edge;
    }

    private String nextName() {
        String name;
        do {
            taken++;
            name = "T" + taken;
        } while (given.contains(name));
        return name;
    }

    boolean done() {
        return a == b
                || (at.get(a).size() == 1 && at.get(b).size() == 1 && at.get(a).containsKey(b));
    }

    /** Whether nothing leads from one end to the other. */
    boolean open() {
        if (a == b) {
            return false;
        }
        boolean[] reached = new boolean[at.size()];
        Deque<Integer> open = new ArrayDeque<>(List.of(a));
        reached[a] = true;
        while (!open.isEmpty()) {
            for (int next : at.get(open.pop()).keySet()) {
                if (!reached[next]) {
                    reached[next] = true;
                    open.push(next);
                }
            }
        }
        return !reached[b];
    }

    double totalOhm() {
        if (a == b) {
            return 0;
        }
        Named whole = at.get(a).get(b);
        if (whole == null) {
            throw new IllegalArgumentException("not reduced to one resistor");
        }
        return whole.ohm();
    }

    /** Nodes between three resistors. */
    List<Integer> stars() {
        List<Integer> stars = new ArrayList<>();
        for (int node = 0; node < at.size(); node++) {
            if (node != a && node != b && at.get(node).size() == 3) {
                stars.add(node);
            }
        }
        return stars;
    }

    /** Three resistors from a node replaced by three between its neighbours: R12 = (R1R2 + R2R3 + R3R1)/R3. */
    void starToDelta(int star) {
        List<Integer> ends = List.copyOf(at.get(star).keySet());
        Named r1 = remove(star, ends.get(0));
        Named r2 = remove(star, ends.get(1));
        Named r3 = remove(star, ends.get(2));
        double sum = r1.ohm() * r2.ohm() + r2.ohm() * r3.ohm() + r3.ohm() * r1.ohm();
        Named d12 = new Named(nextName(), sum / r3.ohm());
        Named d23 = new Named(nextName(), sum / r1.ohm());
        Named d31 = new Named(nextName(), sum / r2.ohm());
        String first = names.get(ends.get(0));
        String second = names.get(ends.get(1));
        String third = names.get(ends.get(2));
        steps.add(ReductionSteps.starDelta(
                names.get(star),
                List.of(r1, r2, r3),
                d12.ohm(),
                List.of(
                        ReductionSteps.side(d12, first, second),
                        ReductionSteps.side(d23, second, third),
                        ReductionSteps.side(d31, third, first))));
        add(ends.get(0), ends.get(1), d12);
        add(ends.get(1), ends.get(2), d23);
        add(ends.get(2), ends.get(0), d31);
    }
}
