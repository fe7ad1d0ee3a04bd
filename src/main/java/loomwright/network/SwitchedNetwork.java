package loomwright.network;

import java.util.List;
import java.util.stream.IntStream;

/**
 * A network of which many subsets of the elements are solved, one after the other, as quickly as can be.
 *
 * <p>Nodal analysis; nonlinear elements by Newton's method from where the last solution left them; see {@link
 * StarElimination} for the linear part. It makes two things simpler than {@link NetworkSolver} does: a resistance below
 * 1e-7 ohm counts as 1e-7 ohm, and each node leaks to the reference by 1e-9 S, so that none floats. {@link #solve} says
 * when the result is not to be trusted; then {@code NetworkSolver} has the word.
 *
 * <p>Cost on a harness of 60 nodes: about a microsecond for each Newton step. For one thread at a time.
 */
public final class SwitchedNetwork {
    private static final double LEAST_OHM = 1e-7;
    private static final double LEAK_S = 1e-9;
    private static final int MOST_STEPS = 60;
    /** From this step on chords instead of tangents: slower, but they do not swing to and fro about a kink. */
    private static final int CHORDS_FROM = 12;

    /** From this step on one-way elements change their state one at a time: slower, but it does not go round in circles. */
    private static final int ONE_BY_ONE_FROM = 8;

    private static final double SETTLED = 1e-10;
    /** More than any battery gives: two ideal sources against each other. */
    private static final double ABSURD_A = 1e5;

    private final Branch[] branches;
    private final boolean[] always;
    private final int[] from;
    private final int[] to;
    private final int[] slot;
    private final boolean[] linear;
    private final StarElimination elimination;
    private final double[] fixedS;
    private final double[] fixedA;
    private final double[] conductanceS;
    /** Voltage of each node, the reference, which is 0, first. */
    private final double[] voltage;

    private final int[] indexOf;
    private final double[] drive;
    private final double[] slope;
    private final double[] source;
    private final int[] here;
    private int hereCount;
    private final int[] sources;

    /**
     * Plans the solutions.
     *
     * @param nodes how many there are
     * @param reference the node of 0 V
     * @param elements all that may be there
     * @param always by element, whether it is there in every subset
     */
    public SwitchedNetwork(int nodes, int reference, List<Element> elements, boolean[] always) {
        int count = elements.size();
        this.always = always.clone();
        branches = elements.stream().map(SwitchedNetwork::law).toArray(Branch[]::new);
        indexOf = new int[nodes];
        for (int node = 0; node < nodes; node++) {
            indexOf[node] = node == reference ? 0 : node < reference ? node + 1 : node;
        }
        from = new int[count];
        to = new int[count];
        linear = new boolean[count];
        for (int b = 0; b < count; b++) {
            from[b] = indexOf[branches[b].from];
            to[b] = indexOf[branches[b].to];
            linear[b] = branches[b] instanceof Branch.Linear;
        }
        elimination = new StarElimination(nodes, from, to);
        slot = new int[count];
        for (int b = 0; b < count; b++) {
            slot[b] = elimination.slot(from[b], to[b]);
        }
        conductanceS = new double[elimination.slots()];
        voltage = new double[nodes];
        drive = new double[count];
        slope = new double[count];
        source = new double[count];
        here = new int[count];
        sources = IntStream.range(0, count)
                .filter(b -> linear[b] && branches[b].biasV != 0)
                .toArray();
        for (int node = 1; node < nodes; node++) {
            conductanceS[elimination.slot(0, node)] = LEAK_S;
        }
        stampAlways();
        fixedS = conductanceS.clone();
        fixedA = voltage.clone();
    }

    private static Branch law(Element element) {
        if (element instanceof Resistor r && r.resistanceOhm() < LEAST_OHM) {
            return Branch.of(new Resistor(r.id(), r.from(), r.to(), LEAST_OHM));
        } else if (element instanceof VoltageSource s && s.resistanceOhm() < LEAST_OHM) {
            return Branch.of(new VoltageSource(s.id(), s.from(), s.to(), s.voltageV(), LEAST_OHM));
        } else if (element instanceof OneWay o && o.slopeOhm() < LEAST_OHM) {
            return Branch.of(new OneWay(o.id(), o.from(), o.to(), o.thresholdV(), LEAST_OHM, o.limitA()));
        }
        return Branch.of(element);
    }

    private void stampAlways() {
        for (int b = 0; b < branches.length; b++) {
            if (linear[b]) {
                slope[b] = branches[b].slopeS(0);
                source[b] = branches[b].currentA(branches[b].biasV);
                if (always[b]) {
                    stamp(b);
                }
            }
        }
    }

    /** Adds a branch that carries {@code source + slope·v}. */
    private void stamp(int b) {
        conductanceS[slot[b]] += slope[b];
        voltage[from[b]] -= source[b];
        voltage[to[b]] += source[b];
    }

    /** Forgets the last subset: what is always there is there. */
    public void clear() {
        hereCount = 0;
        for (int b = 0; b < branches.length; b++) {
            if (always[b] && !linear[b]) {
                here[hereCount++] = b;
            }
        }
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
        for (int k = 0; k < hereCount; k++) {
            if (branches[here[k]] instanceof Branch.ConstantPower) {
                // Of two solutions the one of higher voltage: begin with next to no load.
                drive[here[k]] = Double.NaN;
            }
        }
        boolean chords = false;
        for (int step = 0; step < MOST_STEPS; step++) {
            System.arraycopy(fixedS, 0, conductanceS, 0, conductanceS.length);
            System.arraycopy(fixedA, 0, voltage, 0, voltage.length);
            for (int k = 0; k < hereCount; k++) {
                if (!linear[here[k]]) {
                    linearise(here[k], chords || step >= CHORDS_FROM);
                }
                stamp(here[k]);
            }
            boolean positive = elimination.factor(conductanceS) == voltage.length - 1;
            elimination.solve(voltage);
            if (settled(step >= ONE_BY_ONE_FROM) && positive) {
                return plausible();
            }
            chords |= !positive;
        }
        return false;
    }

    private void linearise(int b, boolean chord) {
        Branch branch = branches[b];
        double at = drive[b];
        if (Double.isNaN(at) && branch instanceof Branch.ConstantPower load) {
            slope[b] = load.idle().conductanceS;
            source[b] = 0;
            return;
        }
        boolean curved = !(branch instanceof Branch.OneWayBranch);
        slope[b] = chord && curved && at != 0 ? branch.currentA(at) / at : branch.slopeS(at);
        source[b] = branch.currentA(at) - slope[b] * (at - branch.biasV);
    }

    /** Whether the laws hold at the new voltages, to which the drives are then moved. */
    private boolean settled(boolean oneAtATime) {
        boolean settled = true;
        boolean changed = false;
        for (int k = 0; k < hereCount; k++) {
            int b = here[k];
            if (!linear[b]) {
                double across = across(b);
                double at = across + branches[b].biasV;
                double wantedA = branches[b].currentA(at);
                double hadA = source[b] + slope[b] * across;
                // The rounding of the two large terms of a steep branch is no error of its own.
                double scale = Math.abs(wantedA) + 1e-5 * Math.abs(source[b]) + 1e-3;
                settled &= Math.abs(wantedA - hadA) <= SETTLED * scale && !Double.isNaN(drive[b]);
                if (branches[b] instanceof Branch.OneWayBranch oneWay) {
                    boolean hold = changed && oneAtATime;
                    double before = drive[b];
                    drive[b] = hold ? before : neighbouring(oneWay, before, at);
                    changed |= oneWay.slopeS(before) != oneWay.slopeS(drive[b]);
                } else {
                    // The steep foot of a lamp's law throws Newton's method to and fro about 0.
                    drive[b] = drive[b] * at < 0 ? 0 : at;
                }
            }
        }
        return settled;
    }

    /** A one-way element goes from blocking to its limit, and back, by way of conducting only. */
    private static double neighbouring(Branch.OneWayBranch oneWay, double before, double at) {
        double limitV = oneWay.slopeOhm * oneWay.limitA;
        boolean leap = (before <= 0 && at >= limitV) || (before >= limitV && at <= 0);
        return leap ? 0.5 * limitV : at;
    }

    private boolean plausible() {
        for (int b : sources) {
            if (always[b] && Math.abs(source[b] + slope[b] * across(b)) > ABSURD_A) {
                return false;
            }
        }
        for (int k = 0; k < hereCount; k++) {
            double currentA = currentA(here[k]);
            if (!(Math.abs(currentA) <= ABSURD_A)) {
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

    /** Current of an element that is there, A. */
    public double currentA(int element) {
        return source[element] + slope[element] * across(element);
    }

    /** Whether two nodes are joined by elements that conduct, the open end of a diode to what is behind it too. */
    public boolean joined(int node, int other) {
        NodeSets sets = new NodeSets(voltage.length);
        for (int b = 0; b < branches.length; b++) {
            if (always[b] && linear[b]) {
                join(sets, b);
            }
        }
        for (int k = 0; k < hereCount; k++) {
            join(sets, here[k]);
        }
        return !sets.join(indexOf[node], indexOf[other]);
    }

    private void join(NodeSets sets, int b) {
        if (slope[b] != 0) {
            sets.join(from[b], to[b]);
        }
    }
}
