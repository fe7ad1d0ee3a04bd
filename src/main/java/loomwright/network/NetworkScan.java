package loomwright.network;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A network of which many subsets of the elements are solved, one after the other, well enough to decide whether a
 * threshold is passed: the nodal equations and the laws of {@link NetworkSolver} ({@link BranchLaw}) in plain doubles, each
 * solution starting where the last one ended.
 *
 * <p>What is always there and ideal joins its nodes to one; elsewhere a resistance below 1e-6 ohm counts as 1e-6 ohm. Each
 * node leaks to the reference by 1e-15 S, so that none floats; elimination without subtraction ({@link StarElimination})
 * loses no digit by it. Nonlinear elements by Newton's method ({@link LinearisedBranches}). {@link #solve} says when the
 * result is not to be trusted; then {@code NetworkSolver} has the word.
 *
 * <p>Accuracy: currents to 1e-8 of the largest, apart from those of joints between what is always there, which are not to be
 * read. Cost on a harness of 60 nodes: about a microsecond for each Newton step. For one thread at a time.
 */
public final class NetworkScan {
    /** A resistance of less counts as so much, where it does not join its nodes to one. */
    public static final double LEAST_OHM = 1e-6;

    private static final double LEAK_S = 1e-15;
    private static final int MOST_STEPS = 60;
    /** From this step on chords instead of tangents: slower, but they do not swing to and fro about a kink. */
    private static final int CHORDS_FROM = 12;

    /** From this step on each line has the slope of its law; before, that of a voltage nearby will do, see {@link LinearisedBranches}. */
    private static final int TANGENTS_FROM = 4;

    /** From this step on one-way elements change their state one at a time: slower, but it does not go round in circles. */
    private static final int ONE_BY_ONE_FROM = 8;

    /** More than any battery gives: two ideal sources against each other. */
    private static final double ABSURD_A = 1e5;

    /** Of an element with both ends at one node, which drives nothing. */
    private static final int NO_SLOT = -1;

    private static final double HELD_V = 1e-10;
    private static final int MOST_ROUNDS = 20;

    private final LinearisedBranches lines;
    /** By element, if it is one. */
    private final @Nullable SensedSource[] sensed;

    private final boolean[] always;
    /** Ends of each element as nodes, those that are always joined as one. */
    private final int[] from;

    private final int[] to;
    private final int[] indexOf;
    /** Whether every node is kept, so that {@link #change} can say what comes of it. */
    private final boolean whole;
    /** What is always there and linear, but for the nodes at which something may change. */
    private final KronReduction reduction;
    /** Ends of each element as nodes of the elimination; −1 of one that is gone. */
    private final int[] keptFrom;

    private final int[] keptTo;
    private final int[] slot;
    private final StarElimination elimination;
    /** What is always there, as a start for each step. */
    private final double[] fixedS;

    private final double[] fixedA;
    private final double[] conductanceS;
    /** Voltage of each node of the elimination; the reference, which is 0, first. */
    private final double[] keptV;
    /** Voltage of each node, likewise. */
    private final double[] voltage;

    /** The elements of the subset that are not linear and always there. */
    private final int[] here;

    private int hereCount;
    private final int[] fixedSources;
    /** By element: whether a change takes it away. */
    private final boolean[] away;
    /** By slot: the conductance of what is always there, and of what a change adds, where that differs from the usual. */
    private int[] changedSlots = {};

    private double[] changedS = {};
    private List<Resistor> added = List.of();

    /**
     * Plans the solutions.
     *
     * @param nodes how many there are
     * @param reference the node of 0 V
     * @param elements all that may be there
     * @param always by element, whether it is there in every subset
     * @param whole whether {@link #change} is to be asked, for which no node can be spared
     */
    public NetworkScan(int nodes, int reference, List<Element> elements, boolean[] always, boolean whole) {
        this.whole = whole;
        this.always = always.clone();
        lines = new LinearisedBranches(elements);
        sensed = elements.stream()
                .map(element -> element instanceof SensedSource source ? source : null)
                .toArray(SensedSource[]::new);
        int count = lines.count();
        indexOf = joined(nodes, reference, elements, always);
        int supernodes = 1 + IntStream.of(indexOf).max().orElse(0);
        from = IntStream.range(0, count).map(b -> indexOf[lines.branch(b).from]).toArray();
        to = IntStream.range(0, count).map(b -> indexOf[lines.branch(b).to]).toArray();
        voltage = new double[supernodes];
        here = new int[count];
        away = new boolean[count];
        fixedSources = IntStream.range(0, count)
                .filter(b -> isFixed(b) && lines.branch(b).biasV != 0)
                .toArray();
        reduction = reduced(supernodes);
        keptFrom = kept(from);
        keptTo = kept(to);
        IntStream.Builder ends = IntStream.builder();
        IntStream.Builder otherEnds = IntStream.builder();
        reduction.forEachBranch((number, other, conductance) -> {
            ends.add(number);
            otherEnds.add(other);
        });
        IntStream.range(0, count).filter(b -> !isFixed(b)).forEach(b -> {
            ends.add(keptFrom[b]);
            otherEnds.add(keptTo[b]);
        });
        elimination = new StarElimination(
                reduction.kept(), ends.build().toArray(), otherEnds.build().toArray());
        slot = IntStream.range(0, count).map(this::findSlot).toArray();
        conductanceS = new double[elimination.slots()];
        reduction.forEachBranch(
                (number, other, conductance) -> conductanceS[elimination.slot(number, other)] += conductance);
        fixedS = conductanceS.clone();
        fixedA = reduction.drivenA();
        keptV = new double[reduction.kept()];
    }

    /** Whether an element is the same in every subset and has a straight line for a law. */
    private boolean isFixed(int b) {
        return always[b] && lines.isLinear(b);
    }

    private KronReduction reduced(int supernodes) {
        boolean[] changing = new boolean[supernodes];
        Arrays.fill(changing, whole);
        double[] drivenA = new double[supernodes];
        int[] fixed = IntStream.range(0, always.length).filter(this::isFixed).toArray();
        for (int b = 0; b < always.length; b++) {
            if (!isFixed(b)) {
                changing[from[b]] = true;
                changing[to[b]] = true;
            } else if (from[b] != to[b]) {
                drivenA[from[b]] -= lines.sourceA(b);
                drivenA[to[b]] += lines.sourceA(b);
            }
        }
        return new KronReduction(
                changing,
                IntStream.of(fixed).map(b -> from[b]).toArray(),
                IntStream.of(fixed).map(b -> to[b]).toArray(),
                IntStream.of(fixed).mapToDouble(lines::slopeS).toArray(),
                LEAK_S,
                drivenA);
    }

    private int[] kept(int[] ends) {
        return IntStream.of(ends).map(reduction::keptNumber).toArray();
    }

    private int findSlot(int b) {
        boolean there = from[b] != to[b] && keptFrom[b] >= 0 && keptTo[b] >= 0;
        return there ? elimination.slot(keptFrom[b], keptTo[b]) : NO_SLOT;
    }

    /** Numbers for the nodes, that of the reference 0, the same for nodes that are always joined without resistance. */
    private static int[] joined(int nodes, int reference, List<Element> elements, boolean[] always) {
        NodeSets sets = new NodeSets(nodes);
        for (int b = 0; b < always.length; b++) {
            if (always[b] && elements.get(b) instanceof Resistor r && r.resistanceOhm() == 0) {
                sets.join(r.from(), r.to());
            }
        }
        return sets.numbered(reference);
    }

    /** Adds the line of an element. */
    private void stamp(int b) {
        if (slot[b] != NO_SLOT) {
            conductanceS[slot[b]] += lines.slopeS(b);
            keptV[keptFrom[b]] -= lines.sourceA(b);
            keptV[keptTo[b]] += lines.sourceA(b);
        }
    }

    /**
     * Takes elements away that are always there, and adds resistances, in place of the change before. The elimination is renewed
     * for the nodes that this reaches only.
     *
     * @param taken elements of the list
     * @param more between nodes that elements of the list have between them, or between a node and the reference
     * @return whether this network can say what comes of it; if not, nothing is changed
     */
    public boolean change(int[] taken, List<Resistor> more) {
        Arrays.fill(away, false);
        changedSlots = new int[0];
        added = List.of();
        if (!whole) {
            return taken.length == 0 && more.isEmpty();
        }
        Set<Integer> slots = new TreeSet<>();
        for (int b : taken) {
            boolean source = lines.isLinear(b) && lines.sourceA(b) != 0;
            if (!always[b] || slot[b] == NO_SLOT || source) {
                return false;
            } else if (lines.isLinear(b)) {
                slots.add(slot[b]);
            }
        }
        int[] slotOf = new int[more.size()];
        for (int k = 0; k < slotOf.length; k++) {
            int one = indexOf[more.get(k).from()];
            int other = indexOf[more.get(k).to()];
            slotOf[k] =
                    one == other ? NO_SLOT : elimination.slot(reduction.keptNumber(one), reduction.keptNumber(other));
            if (slotOf[k] == StarElimination.NONE) {
                return false;
            } else if (one != other) {
                slots.add(slotOf[k]);
            }
        }
        for (int b : taken) {
            away[b] = true;
        }
        added = List.copyOf(more);
        changedSlots = slots.stream().mapToInt(Integer::intValue).toArray();
        changedS = new double[changedSlots.length];
        for (int c = 0; c < changedSlots.length; c++) {
            changedS[c] = fixedWithout(changedSlots[c]);
            for (int k = 0; k < slotOf.length; k++) {
                if (slotOf[k] == changedSlots[c]) {
                    changedS[c] += 1 / Math.max(LEAST_OHM, more.get(k).resistanceOhm());
                }
            }
        }
        return true;
    }

    /** What of the elements that are always there is left between two nodes. */
    private double fixedWithout(int between) {
        double sum = elimination.isToEarth(between) ? LEAK_S : 0;
        for (int b = 0; b < always.length; b++) {
            if (slot[b] == between && always[b] && !away[b] && lines.isLinear(b)) {
                sum += lines.slopeS(b);
            }
        }
        return sum;
    }

    /** Forgets the last subset: what is always there is there, but for what {@link #change} takes away. */
    public void clear() {
        hereCount = 0;
        for (int b = 0; b < always.length; b++) {
            if (always[b] && !lines.isLinear(b) && !away[b]) {
                here[hereCount++] = b;
            }
        }
    }

    /** Forgets the solutions before: no digit of the next depends on them. */
    public void forget() {
        lines.forget();
    }

    /** Puts elements into the subset to be solved. */
    public void add(int[] elements) {
        for (int b : elements) {
            here[hereCount++] = b;
        }
    }

    /**
     * Solves the subset put together by {@link #clear} and {@link #add}.
     *
     * @return whether the figures can be relied on to about eight digits
     */
    public boolean solve() {
        for (int round = 0; round < MOST_ROUNDS; round++) {
            if (!solveOnce()) {
                return false;
            }
            boolean held = true;
            for (int k = 0; k < hereCount; k++) {
                SensedSource source = sensed[here[k]];
                if (source != null && Math.abs(missingV(source, here[k])) > HELD_V) {
                    held = false;
                    if (!hold(source, here[k])) {
                        return false;
                    }
                }
            }
            if (held) {
                return true;
            }
        }
        return false;
    }

    private double missingV(SensedSource source, int b) {
        return source.wantedRaiseV(acrossV(source.above(), source.below())) - lines.raiseV(b);
    }

    /** Raises a source, and what has the same regulator, until that holds. */
    private boolean hold(SensedSource source, int b) {
        RaiseSearch search = new RaiseSearch(source);
        for (int step = 0; step < RaiseSearch.MOST_STEPS; step++) {
            double missingV = missingV(source, b);
            if (Math.abs(missingV) <= HELD_V) {
                return true;
            }
            double raiseV = search.next(lines.raiseV(b), missingV);
            for (int k = 0; k < hereCount; k++) {
                SensedSource other = sensed[here[k]];
                if (other != null && other.hasRegulatorOf(source)) {
                    lines.raise(here[k], raiseV);
                }
            }
            if (!solveOnce()) {
                return false;
            }
        }
        return false;
    }

    private boolean solveOnce() {
        for (int k = 0; k < hereCount; k++) {
            lines.begin(here[k]);
        }
        boolean chords = false;
        for (int step = 0; step < MOST_STEPS; step++) {
            System.arraycopy(fixedS, 0, conductanceS, 0, conductanceS.length);
            System.arraycopy(fixedA, 0, keptV, 0, keptV.length);
            for (int c = 0; c < changedSlots.length; c++) {
                conductanceS[changedSlots[c]] = changedS[c];
            }
            for (int k = 0; k < hereCount; k++) {
                if (!lines.isLinear(here[k])) {
                    lines.linearise(here[k], chords || step >= CHORDS_FROM, step < TANGENTS_FROM);
                }
                stamp(here[k]);
            }
            boolean positive = elimination.refactor(conductanceS) == keptV.length - 1;
            elimination.solve(keptV);
            if (settled(step >= ONE_BY_ONE_FROM) && positive) {
                reduction.complete(keptV, voltage);
                return plausible();
            }
            chords |= !positive;
        }
        return false;
    }

    /** Whether the laws hold at the new voltages, to which the drives are then moved. */
    private boolean settled(boolean oneAtATime) {
        boolean settled = true;
        boolean changed = false;
        for (int k = 0; k < hereCount; k++) {
            int b = here[k];
            if (!lines.isLinear(b)) {
                // What changes stands between nodes that are kept.
                double acrossV = slot[b] == NO_SLOT ? 0 : keptV[keptFrom[b]] - keptV[keptTo[b]];
                settled &= lines.isSettled(b, acrossV);
                changed |= lines.move(b, acrossV, changed && oneAtATime);
            }
        }
        return settled;
    }

    private boolean plausible() {
        for (int b : fixedSources) {
            if (Math.abs(currentA(b)) > ABSURD_A) {
                return false;
            }
        }
        for (int k = 0; k < hereCount; k++) {
            if (!(Math.abs(currentA(here[k])) <= ABSURD_A)) {
                return false;
            }
        }
        return true;
    }

    private double across(int b) {
        return voltage[from[b]] - voltage[to[b]];
    }

    /** Voltage of one node against another in the solution, V. */
    public double acrossV(int node, int other) {
        return voltage[indexOf[node]] - voltage[indexOf[other]];
    }

    /**
     * Which nodes are connected in the solution.
     *
     * @param oneWays whether what conducts in one direction only joins its ends, or what takes a constant power
     * @return by node, the same for nodes that are connected
     */
    public int[] islands(boolean oneWays) {
        NodeSets sets = new NodeSets(voltage.length);
        for (int b = 0; b < always.length; b++) {
            if (always[b] && lines.isLinear(b) && !away[b] && lines.slopeS(b) > 0) {
                sets.join(from[b], to[b]);
            }
        }
        added.forEach(r -> sets.join(indexOf[r.from()], indexOf[r.to()]));
        for (int k = 0; k < hereCount; k++) {
            BranchLaw law = lines.branch(here[k]);
            boolean doubtful = law instanceof BranchLaw.OneWayBranch || law instanceof BranchLaw.ConstantPower;
            if (doubtful ? oneWays : lines.slopeS(here[k]) > 0) {
                sets.join(from[here[k]], to[here[k]]);
            }
        }
        return Arrays.stream(indexOf).map(sets::find).toArray();
    }

    /** Current of an element that is there, A; 0 of one whose ends are always joined without resistance. */
    public double currentA(int element) {
        return from[element] == to[element] ? 0 : lines.currentA(element, across(element));
    }
}
