package loomwright.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import loomwright.answer.Progress;

/**
 * Where the parts of a network stand that are joined by nothing but one-way elements that carry no current, or all they can: each
 * node leaks to the reference by the same conductance, however small, and the least leak draws such an island along until an
 * element at its border is about to change its state; that ties it to what is beyond.
 *
 * <p>How far the islands move are the potentials of a network of its own, in which each island is one node. Its co-content
 * is strictly convex, so it has one solution, whatever the order of its elements.
 */
final class FloatingNodePlacement {
    /** An idle element that carries less of what is driven into an island is idle indeed. */
    private static final double SHARE = 1e-3;

    private static final int SPARE_STEPS = 100;

    /** By node, its voltage. */
    final double[] nodeV;
    /** By branch, the voltage over it. */
    final double[] branchV;
    /** By node, with what it is tied together: 0 is the island of the reference, the others follow by their first nodes. */
    final int[] islandOf;
    /** Elements that cannot be in their states, wherever the islands stand: blocking ones that must conduct, and the like. */
    final List<Integer> violated = new ArrayList<>();

    int iterations;

    /**
     * Moves the islands of a settled point.
     *
     * @param outcome of that point
     * @param scaleV of its voltages
     * @param scaleA of its currents
     * @throws NoConvergence if the leaks do not settle
     */
    FloatingNodePlacement(
            Network network,
            OperatingPoint point,
            OneWayStates states,
            Outcome outcome,
            double scaleV,
            double scaleA,
            Eliminations eliminations,
            Progress progress) {
        BranchLaw[] branches = point.contraction.branches;
        nodeV = point.nodeV();
        branchV = point.voltage.clone();
        NodeSets joined = joined(point, states, outcome.currentA, scaleV, scaleA);
        int[] loose = joined.numbered(network.reference());
        List<Integer> borders = new ArrayList<>();
        for (int b = 0; b < branches.length; b++) {
            if (states.isOneWay(b) && loose[branches[b].from] != loose[branches[b].to]) {
                borders.add(b);
            }
        }
        if (borders.isEmpty()) {
            islandOf = loose;
            return;
        }
        List<BranchLaw> leaking = leaks(loose);
        int first = leaking.size();
        for (int b : borders) {
            leaking.add(states.border(b, loose[branches[b].from], loose[branches[b].to], branchV[b]));
        }
        double[] shiftV = settle(leaking, first + SPARE_STEPS + borders.size(), eliminations, progress);
        for (int k = 0; k < borders.size(); k++) {
            int b = borders.get(k);
            BranchLaw border = leaking.get(first + k);
            double beyondV = border.biasV + shiftV[border.from] - shiftV[border.to];
            if (beyondV > OneWayStates.TOLERANCE * scaleV && !states.isConducting(b)) {
                violated.add(b);
            }
            if (beyondV >= -OneWayStates.TOLERANCE * scaleV) {
                joined.join(branches[b].from, branches[b].to);
            }
        }
        for (int node = 0; node < nodeV.length; node++) {
            nodeV[node] += shiftV[loose[node]];
        }
        for (int b = 0; b < branches.length; b++) {
            branchV[b] += shiftV[loose[branches[b].from]] - shiftV[loose[branches[b].to]];
        }
        islandOf = joined.numbered(network.reference());
    }

    /** Nodes joined by whatever conducts, but for one-way elements that conduct no current. */
    private static NodeSets joined(
            OperatingPoint point, OneWayStates states, double[] currentA, double scaleV, double scaleA) {
        BranchLaw[] branches = point.contraction.branches;
        NodeSets joined = new NodeSets(point.contraction.superOf.length);
        List<Integer> idle = new ArrayList<>();
        List<Integer> driven = new ArrayList<>();
        for (int b = 0; b < branches.length; b++) {
            if (states.isIdle(b, currentA[b], point.voltage[b], scaleA, scaleV)) {
                idle.add(b);
            } else if (point.slope[b] != 0) {
                joined.join(branches[b].from, branches[b].to);
            } else if (currentA[b] != 0) {
                driven.add(b);
            }
        }
        boolean again = !driven.isEmpty();
        while (again) {
            again = joinWhatLeadsAway(joined, branches, currentA, driven, idle);
        }
        return joined;
    }

    /**
     * A current that is driven into an island, however small, is led away: the idle elements there that carry a share of it
     * are not idle, or, if none can be told from rounding, all of them.
     *
     * @return whether there were any
     */
    private static boolean joinWhatLeadsAway(
            NodeSets joined, BranchLaw[] branches, double[] currentA, List<Integer> driven, List<Integer> idle) {
        int nodes = joined.count();
        double[] surplusA = new double[nodes];
        double[] amountA = new double[nodes];
        for (int b : driven) {
            int from = joined.find(branches[b].from);
            int to = joined.find(branches[b].to);
            if (from != to) {
                surplusA[from] -= currentA[b];
                surplusA[to] += currentA[b];
                amountA[from] += Math.abs(currentA[b]);
                amountA[to] += Math.abs(currentA[b]);
            }
        }
        boolean[] mustLead = new boolean[nodes];
        for (int node = 0; node < nodes; node++) {
            mustLead[node] = Math.abs(surplusA[node]) > OneWayStates.ROUNDING * amountA[node];
        }
        boolean[] led = new boolean[nodes];
        List<Integer> leading = new ArrayList<>();
        for (int b : idle) {
            int from = joined.find(branches[b].from);
            int to = joined.find(branches[b].to);
            boolean leadsFrom = mustLead[from] && Math.abs(currentA[b]) > SHARE * Math.abs(surplusA[from]);
            boolean leadsTo = mustLead[to] && Math.abs(currentA[b]) > SHARE * Math.abs(surplusA[to]);
            if (leadsFrom || leadsTo) {
                leading.add(b);
                led[from] |= leadsFrom;
                led[to] |= leadsTo;
            }
        }
        for (int b : idle) {
            int from = joined.find(branches[b].from);
            int to = joined.find(branches[b].to);
            if (((mustLead[from] && !led[from]) || (mustLead[to] && !led[to])) && !leading.contains(b)) {
                leading.add(b);
            }
        }
        idle.removeAll(leading);
        leading.forEach(b -> joined.join(branches[b].from, branches[b].to));
        return !leading.isEmpty();
    }

    /** One for each island but that of the reference, by its number; together 1 S. */
    private List<BranchLaw> leaks(int[] loose) {
        int islands = 1 + Arrays.stream(loose).max().orElse(0);
        double[] meanV = new double[islands];
        int[] nodes = new int[islands];
        for (int node = 0; node < loose.length; node++) {
            int island = loose[node];
            nodes[island]++;
            meanV[island] += (nodeV[node] - meanV[island]) / nodes[island];
        }
        List<BranchLaw> leaks = new ArrayList<>();
        for (int k = 1; k < islands; k++) {
            leaks.add(new BranchLaw.Linear(k, 0, meanV[k], (double) nodes[k] / loose.length, 0));
        }
        return leaks;
    }

    private double[] settle(List<BranchLaw> leaking, int mostSteps, Eliminations eliminations, Progress progress) {
        int islands =
                1 + leaking.stream().mapToInt(b -> Math.max(b.from, b.to)).max().orElse(0);
        Contraction alone = new Contraction(islands, 0, leaking.toArray(new BranchLaw[0]));
        NewtonLoop loop = new NewtonLoop(new OperatingPoint(alone, new double[islands]), eliminations);
        loop.run(mostSteps, progress);
        iterations = loop.iterations;
        if (!loop.settled) {
            throw new NoConvergence(iterations, loop.point.residual(), List.of());
        }
        return loop.point.nodeV();
    }
}
