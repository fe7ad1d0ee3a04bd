package loomwright.network;

import java.util.Arrays;
import java.util.List;

/**
 * Newton's method on the potentials of the supernodes, with a line search that always descends in co-content. A linear
 * network takes one step, and further ones as iterative refinement with the same factorisation.
 *
 * <p>Potentials are unevaluated sums of two numbers: the voltage over a very small resistance is the difference of two
 * nearly equal potentials and must have more digits than one number holds, or Kirchhoff's current law fails there.
 */
final class NewtonLoop {
    /** Aim for the largest current error at a supernode, as a fraction of the largest current. */
    private static final double AIM = 1e-13;

    private static final double ACCEPTED = 2e-10;
    private static final int IDLE_STEPS = 3;
    /** More than the largest current gives over the largest resistance: a constant-power load drives it ever higher. */
    private static final double UNBOUNDED_V = 1e19;
    /** No current at all: near the smallest numbers there are. */
    private static final double LEAST_A = 1e-60;

    /** Of a potential with the digits of two numbers. */
    private static final double ROUNDING = 1e-28;

    final Contraction contraction;
    private final Branch[] branches;
    private final int[] superFrom;
    private final int[] superTo;
    private final double[] offset;
    private final double[] offsetLost;

    final double[] high;
    private final double[] low;
    /** By branch: its voltage, its drive (voltage plus bias) and its current. */
    final double[] voltage;

    final double[] drive;
    final double[] current;
    private final double[] slope;
    private final double[] net;
    private double largestA;
    private double largestV;
    /** Below this a current is nothing but rounding. */
    private double floorA;

    private Islands islands;
    private double[] factored = {};
    /** Whether the factorisation proved not accurate enough. */
    private boolean careful;

    int iterations;
    /** An island into which a current is driven that cannot return, or −1. */
    int withoutReturn = -1;

    NewtonLoop(Contraction contraction) {
        this.contraction = contraction;
        branches = contraction.branches;
        int count = branches.length;
        superFrom = new int[count];
        superTo = new int[count];
        offset = new double[count];
        offsetLost = new double[count];
        for (int b = 0; b < count; b++) {
            superFrom[b] = contraction.superOf[branches[b].from];
            superTo[b] = contraction.superOf[branches[b].to];
            double from = contraction.offsetV[branches[b].from];
            double to = -contraction.offsetV[branches[b].to];
            offset[b] = from + to + branches[b].biasV;
            offsetLost[b] = Exact.lost(from, to)
                    + Exact.lost(from + to, branches[b].biasV)
                    + (contraction.offsetLostV[branches[b].from] - contraction.offsetLostV[branches[b].to]);
        }
        high = new double[contraction.supernodes];
        low = new double[contraction.supernodes];
        net = new double[contraction.supernodes];
        voltage = new double[count];
        drive = new double[count];
        current = new double[count];
        slope = new double[count];
        Arrays.fill(slope, Double.NaN);
        evaluate();
        islands = islandsNow();
    }

    /** Starts from given potentials of the nodes rather than from zero. */
    void startFrom(double[] nodeV) {
        boolean[] set = new boolean[high.length];
        for (int node = 0; node < nodeV.length; node++) {
            int s = contraction.superOf[node];
            if (!set[s] && s > 0) {
                high[s] = nodeV[node] - contraction.offsetV[node];
                set[s] = true;
            }
        }
        evaluate();
    }

    double[] nodeV() {
        double[] nodeV = new double[contraction.superOf.length];
        for (int node = 0; node < nodeV.length; node++) {
            nodeV[node] = high[contraction.superOf[node]] + contraction.offsetV[node];
        }
        return nodeV;
    }

    /** The islands at the present voltages. */
    Islands islandsNow() {
        return Islands.of(contraction, slope);
    }

    Islands islands() {
        return islands;
    }

    /** Whether no current flows: all there is comes of the rounding of voltages that cancel. */
    boolean dead() {
        for (Branch branch : branches) {
            if (branch instanceof Branch.Linear linear && linear.sourceA != 0) {
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

    /**
     * Runs until Kirchhoff's current law holds, or {@link #withoutReturn} is set.
     *
     * @return whether it holds
     */
    boolean run(Factorisations factorisation, int maxIterations) {
        double best = Double.POSITIVE_INFINITY;
        int idle = 0;
        factored = new double[0];
        islands = islandsNow();
        for (int step = 0; step < maxIterations; step++) {
            double residual = residual();
            if (largestV > UNBOUNDED_V) {
                nameUnbounded();
                return false;
            }
            if (residual <= AIM || (residual <= ACCEPTED && idle >= IDLE_STEPS)) {
                islands = islandsNow();
                return true;
            }
            idle = residual < 0.5 * best ? 0 : idle + 1;
            best = Math.min(best, residual);
            if (idle > 2 * IDLE_STEPS && !careful) {
                careful = true;
                factored = new double[0];
            }
            iterations++;
            double[] direction = direction(factorisation);
            if (withoutReturn >= 0) {
                return false;
            }
            advance(direction);
        }
        islands = islandsNow();
        return residual() <= ACCEPTED;
    }

    private double[] direction(Factorisations factorisation) {
        if (!Arrays.equals(slope, factored)) {
            islands = islandsNow();
            if (!factorisation.factor(new ConductanceMatrix(contraction, islands, slope), careful)) {
                stiffen(factorisation);
            }
            factored = slope.clone();
        }
        double[] unknown = new double[islands.unknowns];
        for (int s = 0; s < high.length; s++) {
            if (islands.unknownOf[s] >= 0) {
                unknown[islands.unknownOf[s]] = net[s];
            }
        }
        factorisation.solve(unknown);
        double[] shift = islandShifts();
        double[] direction = new double[high.length];
        for (int s = 0; s < high.length; s++) {
            direction[s] = shift[islands.islandOf[s]] + (islands.unknownOf[s] >= 0 ? unknown[islands.unknownOf[s]] : 0);
        }
        return direction;
    }

    /** Constant-power loads have falling slopes; where these prevail, their amounts still give a descent. */
    private void stiffen(Factorisations factorisation) {
        double[] amount = slope.clone();
        for (int b = 0; b < amount.length; b++) {
            amount[b] = Math.abs(amount[b]);
        }
        if (!factorisation.factor(new ConductanceMatrix(contraction, islands, amount), careful)) {
            throw new NoConvergence(iterations, residual(), List.of());
        }
    }

    /**
     * How far to move islands that take in more current than they give, or less: past the nearest kink of a one-way
     * element at their border. Sets {@link #withoutReturn} where there is none.
     */
    private double[] islandShifts() {
        double[] shift = new double[islands.count];
        if (islands.count == 1) {
            return shift;
        }
        double[] surplus = new double[islands.count];
        for (int s = 0; s < high.length; s++) {
            surplus[islands.islandOf[s]] += net[s];
        }
        double[] reach = new double[islands.count];
        Arrays.fill(reach, Double.POSITIVE_INFINITY);
        for (int b = 0; b < branches.length; b++) {
            int from = islands.islandOf[superFrom[b]];
            int to = islands.islandOf[superTo[b]];
            if (from != to) {
                reach[from] = Math.min(reach[from], kink(b, surplus[from] > 0));
                reach[to] = Math.min(reach[to], kink(b, surplus[to] < 0));
            }
        }
        for (int k = 1; k < islands.count; k++) {
            if (Math.abs(surplus[k]) > 1e-9 * largestA + floorA) {
                if (Double.isInfinite(reach[k])) {
                    withoutReturn = k;
                    return shift;
                }
                shift[k] = Math.copySign(2 * reach[k] + 1, surplus[k]);
            }
        }
        return shift;
    }

    /** A constant-power load takes the less current the more volts it has: it is no return for the island that fled. */
    private void nameUnbounded() {
        double[] rising = slope.clone();
        for (int b = 0; b < rising.length; b++) {
            rising[b] = rising[b] < 0 ? 0 : rising[b];
        }
        islands = Islands.of(contraction, rising);
        double highest = 0;
        for (int s = 0; s < high.length; s++) {
            if (islands.islandOf[s] > 0 && Math.abs(high[s]) > highest) {
                highest = Math.abs(high[s]);
                withoutReturn = islands.islandOf[s];
            }
        }
    }

    private double kink(int b, boolean rising) {
        return rising ? branches[b].riseToKinkV(drive[b]) : branches[b].fallToKinkV(drive[b]);
    }

    /** Goes the full step, or, if the descent ends before, to where it ends. */
    private void advance(double[] direction) {
        double[] startHigh = high.clone();
        double[] startLow = low.clone();
        double first = descent(direction);
        move(startHigh, startLow, direction, 1);
        double end = descent(direction);
        if (first <= 0 || end >= -0.1 * first) {
            return;
        }
        double before = 0;
        double after = 1;
        double descentBefore = first;
        double descentAfter = end;
        for (int k = 0; k < 100; k++) {
            double guess = before + (after - before) * descentBefore / (descentBefore - descentAfter);
            double t = k % 3 == 2 ? 0.5 * (before + after) : guess;
            move(startHigh, startLow, direction, t);
            double descent = descent(direction);
            if (Math.abs(descent) <= 1e-3 * first) {
                return;
            }
            if (descent > 0) {
                before = t;
                descentBefore = descent;
            } else {
                after = t;
                descentAfter = descent;
            }
        }
    }

    /** How fast the co-content falls along a direction. */
    private double descent(double[] direction) {
        double sum = 0;
        for (int s = 0; s < net.length; s++) {
            sum += net[s] * direction[s];
        }
        return sum;
    }

    private void move(double[] startHigh, double[] startLow, double[] direction, double t) {
        for (int s = 0; s < high.length; s++) {
            double change = startLow[s] + t * direction[s];
            low[s] = Exact.lost(startHigh[s], change);
            high[s] = startHigh[s] + change;
        }
        evaluate();
    }

    /** Voltages, currents and slopes of the branches, and the net current into each supernode. */
    private void evaluate() {
        Arrays.fill(net, 0);
        largestA = 0;
        floorA = LEAST_A;
        largestV = 0;
        for (int b = 0; b < branches.length; b++) {
            Branch branch = branches[b];
            if (branch instanceof Branch.Ideal ideal) {
                voltage[b] = ideal.voltageV;
                continue;
            }
            int from = superFrom[b];
            int to = superTo[b];
            double difference = high[from] - high[to];
            double lost = Exact.lost(high[from], -high[to]) + Exact.lost(difference, offset[b]) + offsetLost[b];
            drive[b] = difference + offset[b] + (low[from] - low[to] + lost);
            voltage[b] = drive[b] - branch.biasV;
            current[b] = branch.currentA(drive[b]);
            slope[b] = branch.slopeS(drive[b]);
            double potential = Math.max(Math.abs(high[from]), Math.abs(high[to])) + Math.abs(offset[b]);
            largestV = Math.max(largestV, potential);
            floorA = Math.max(floorA, ROUNDING * potential * Math.abs(slope[b]));
            largestA = Math.max(largestA, Math.abs(current[b]));
            if (from != to) {
                net[from] -= current[b];
                net[to] += current[b];
            }
        }
    }
}
