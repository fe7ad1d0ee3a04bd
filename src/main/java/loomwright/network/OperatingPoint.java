package loomwright.network;

import java.util.Arrays;

/**
 * The potentials of the supernodes, and the voltages and currents of the branches that they give.
 *
 * <p>Potentials are unevaluated sums of two numbers: the voltage over a very small resistance is the difference of two
 * nearly equal potentials and must have more digits than one number holds, or Kirchhoff's current law fails there.
 */
final class OperatingPoint {
    /** No current at all: near the smallest numbers there are. */
    private static final double LEAST_A = 1e-60;

    /** Of a potential with the digits of two numbers. */
    private static final double ROUNDING = 1e-28;

    final Contraction contraction;
    private final BranchLaw[] branches;
    /** By branch: the supernodes at its ends. */
    final int[] from;

    final int[] to;
    private final double[] offset;
    private final double[] offsetLost;
    /** The branches that are linear, and those that are neither linear nor ideal. */
    private final int[] linearBranches;

    private final int[] nonlinearBranches;
    /** By branch, if it is linear: its current at a drive of 0. */
    private final double[] source;

    final double[] high;
    private final double[] low;
    /** By branch: its voltage, its drive (voltage plus bias), its current, and the slope of this, NaN if it is ideal. */
    final double[] voltage;

    final double[] drive;
    final double[] current;
    final double[] slope;
    /** By supernode: the current that flows in and not out. */
    final double[] net;

    private Islands islands;
    /** Whether a slope came to be zero, or ceased to be, since the islands were found. */
    private boolean regrouped;

    private boolean slopeChanged = true;
    private double largestA;
    private double floorA;

    /**
     * Takes over potentials of the nodes.
     *
     * @param nodeV as another contraction of the same network gave them
     */
    OperatingPoint(Contraction contraction, double[] nodeV) {
        this.contraction = contraction;
        branches = contraction.branches;
        int count = branches.length;
        from = new int[count];
        to = new int[count];
        offset = new double[count];
        offsetLost = new double[count];
        high = new double[contraction.supernodes];
        low = new double[contraction.supernodes];
        net = new double[contraction.supernodes];
        voltage = new double[count];
        drive = new double[count];
        current = new double[count];
        slope = new double[count];
        source = new double[count];
        int[] kinds = new int[count];
        int linear = 0;
        int last = count;
        for (int b = 0; b < count; b++) {
            placeEnds(b);
            if (branches[b] instanceof BranchLaw.Linear line) {
                slope[b] = line.conductanceS;
                source[b] = line.sourceA;
                kinds[linear++] = b;
            } else if (branches[b] instanceof BranchLaw.Ideal ideal) {
                slope[b] = Double.NaN;
                voltage[b] = ideal.voltageV;
            } else {
                kinds[--last] = b;
            }
        }
        linearBranches = Arrays.copyOf(kinds, linear);
        nonlinearBranches = Arrays.copyOfRange(kinds, last, count);
        for (int node = nodeV.length - 1; node >= 0; node--) {
            high[contraction.superOf[node]] = nodeV[node] - contraction.offsetV[node];
        }
        high[0] = 0;
        evaluate();
        islands = Islands.of(this, slope);
        regrouped = false;
    }

    private void placeEnds(int b) {
        from[b] = contraction.superOf[branches[b].from];
        to[b] = contraction.superOf[branches[b].to];
        double above = contraction.offsetV[branches[b].from];
        double below = -contraction.offsetV[branches[b].to];
        offset[b] = above + below + branches[b].biasV;
        offsetLost[b] = Exact.lost(above, below)
                + Exact.lost(above + below, branches[b].biasV)
                + (contraction.offsetLostV[branches[b].from] - contraction.offsetLostV[branches[b].to]);
    }

    double[] nodeV() {
        double[] nodeV = new double[contraction.superOf.length];
        for (int node = 0; node < nodeV.length; node++) {
            nodeV[node] = high[contraction.superOf[node]] + contraction.offsetV[node];
        }
        return nodeV;
    }

    /** The islands at the present voltages. */
    Islands islands() {
        if (regrouped) {
            islands = Islands.of(this, slope);
            regrouped = false;
        }
        return islands;
    }

    /** Whether a slope has changed since this was asked last. */
    boolean slopeChanged() {
        boolean was = slopeChanged;
        slopeChanged = false;
        return was;
    }

    double largestA() {
        return largestA;
    }

    double largestV() {
        double largest = 0;
        for (double v : high) {
            largest = Math.max(largest, Math.abs(v));
        }
        return largest;
    }

    /** Below this a current is nothing but rounding. */
    double floorA() {
        return floorA;
    }

    /** Whether no current flows: all there is comes of the rounding of voltages that cancel. */
    boolean dead() {
        for (int b = 0; b < branches.length; b++) {
            if (slope[b] == 0 && current[b] != 0) {
                return false;
            }
        }
        return largestA <= 1e10 * floorA;
    }

    /** Largest current error at a supernode as a fraction of the largest current. */
    double residual() {
        double worst = 0;
        for (double a : net) {
            worst = Math.max(worst, Math.abs(a));
        }
        return worst <= floorA ? 0 : worst / largestA;
    }

    /** How fast the co-content falls along a direction. */
    double descent(double[] direction) {
        double sum = 0;
        for (int s = 0; s < net.length; s++) {
            sum += net[s] * direction[s];
        }
        return sum;
    }

    /** A copy of the potentials, to go from. */
    double[][] potentials() {
        return new double[][] {high.clone(), low.clone()};
    }

    /** Goes a share of a direction from where the potentials were. */
    void move(double[][] start, double[] direction, double share) {
        for (int s = 0; s < high.length; s++) {
            double change = start[1][s] + share * direction[s];
            low[s] = Exact.lost(start[0][s], change);
            high[s] = start[0][s] + change;
        }
        evaluate();
    }

    /** Voltages, currents and slopes of the branches, and the net current into each supernode. */
    private void evaluate() {
        Arrays.fill(net, 0);
        largestA = 0;
        floorA = LEAST_A;
        for (int b : linearBranches) {
            place(b);
            current[b] = slope[b] * drive[b] + source[b];
            flow(b);
        }
        for (int b : nonlinearBranches) {
            place(b);
            current[b] = branches[b].currentA(drive[b]);
            bend(b, branches[b].slopeS(drive[b], current[b]));
            flow(b);
        }
    }

    /** Gives a branch its voltage and drive. */
    private void place(int b) {
        double above = high[from[b]];
        double below = high[to[b]];
        double difference = above - below;
        double lost = Exact.lost(above, -below) + Exact.lost(difference, offset[b]) + offsetLost[b];
        drive[b] = difference + offset[b] + (low[from[b]] - low[to[b]] + lost);
        voltage[b] = drive[b] - branches[b].biasV;
    }

    /** Takes a branch's current from the supernode at one end to that at the other. */
    private void flow(int b) {
        int a = from[b];
        int c = to[b];
        double potential = Math.max(Math.abs(high[a]), Math.abs(high[c])) + Math.abs(offset[b]);
        floorA = Math.max(floorA, ROUNDING * potential * Math.abs(slope[b]));
        largestA = Math.max(largestA, Math.abs(current[b]));
        if (a != c) {
            net[a] -= current[b];
            net[c] += current[b];
        }
    }

    private void bend(int b, double newSlope) {
        if (newSlope != slope[b]) {
            regrouped |= newSlope == 0 || slope[b] == 0;
            slopeChanged = true;
            slope[b] = newSlope;
        }
    }
}
