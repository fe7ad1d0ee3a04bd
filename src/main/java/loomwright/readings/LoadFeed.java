package loomwright.readings;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.circuit.Ballast;
import loomwright.circuit.Consumer;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.TerminalRef;
import loomwright.operation.Branch;
import loomwright.operation.CurrentPaths;
import loomwright.operation.SolvedStep;

/** The way by which most current reaches a load: where it can be halved, and the resistors that should be in it. */
record LoadFeed(SolvedStep solved, TerminalRef start, List<Leg> legs) {

    /** One branch, with the terminals at which the current enters and leaves it. */
    record Leg(Branch branch, String in, String out, int outNode) {}

    /** Empty legs if no current takes such a way. */
    static LoadFeed of(SolvedStep solved, TerminalRef start, TerminalRef feed) {
        CurrentPaths paths = new CurrentPaths(solved);
        List<Leg> legs = new ArrayList<>();
        for (int i : paths.widest(solved.node(start), solved.node(feed))) {
            Branch b = solved.branches().get(i);
            boolean forward = paths.head(i) == b.toNode();
            legs.add(new Leg(b, forward ? b.from() : b.to(), forward ? b.to() : b.from(), paths.head(i)));
        }
        return new LoadFeed(solved, start, legs);
    }

    /** The ends of parts and connectors on the way, middle first, then the middles of what that leaves. */
    List<String> halfSplit() {
        List<String> ends = new ArrayList<>();
        Set<Integer> seen = new HashSet<>();
        seen.add(solved.node(start));
        if (!legs.isEmpty()) {
            seen.add(legs.get(legs.size() - 1).outNode());
        }
        for (Leg leg : legs) {
            if (leg.branch().owner() != Branch.Owner.WIRE && leg.out().contains(".") && seen.add(leg.outNode())) {
                ends.add(leg.out());
            }
        }
        List<String> order = new ArrayList<>();
        Deque<int[]> open = new ArrayDeque<>();
        open.add(new int[] {0, ends.size()});
        while (!open.isEmpty()) {
            int[] stretch = open.removeFirst();
            if (stretch[0] < stretch[1]) {
                int middle = (stretch[0] + stretch[1]) / 2;
                order.add(ends.get(middle));
                open.add(new int[] {stretch[0], middle});
                open.add(new int[] {middle + 1, stretch[1]});
            }
        }
        return order;
    }

    /** Whether a current takes this way and finds nothing in it but wires, contacts and earths. */
    boolean plain() {
        return !legs.isEmpty()
                && legs.stream()
                        .filter(leg -> leg.branch().owner() == Branch.Owner.PART)
                        .map(leg -> solved.plan().findPart(leg.branch().id()).orElseThrow())
                        .noneMatch(p -> p instanceof Consumer
                                || p instanceof Generator
                                || p instanceof Ballast
                                || p instanceof FixedResistor);
    }

    /** The legs through resistors that are meant to lose volts, in the order of the current. */
    List<Leg> resistors() {
        return legs.stream()
                .filter(leg -> leg.branch().owner() == Branch.Owner.PART)
                .filter(leg -> {
                    Part part = solved.plan().findPart(leg.branch().id()).orElseThrow();
                    return part instanceof Ballast || part instanceof FixedResistor;
                })
                .toList();
    }
}
