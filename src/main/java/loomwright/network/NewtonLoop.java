package loomwright.network;

import java.util.Arrays;
import java.util.List;
import loomwright.answer.Progress;

/**
 * Newton's method on the potentials of the supernodes, with a line search that always descends in co-content. A linear
 * network takes one step, and further ones as iterative refinement with the same factorisation.
 */
final class NewtonLoop {
    /** Aim for the largest current error at a supernode, as a fraction of the largest current. */
    private static final double AIM = 1e-13;

    private static final double ACCEPTED = 2e-10;
    private static final int IDLE_STEPS = 3;
    /** More than the largest current gives over the largest resistance: a constant-power load drives it ever higher. */
    private static final double UNBOUNDED_V = 1e19;

    final OperatingPoint point;
    private final BranchLaw[] branches;
    private final StarElimination elimination;
    /** By branch: where its conductance goes; −1 if both ends are one supernode. */
    private final int[] slot;

    private final double[] conductanceS;
    private Islands islands;

    int iterations;
    boolean settled;
    /** An island into which a current is driven that cannot return, or −1. */
    int withoutReturn = -1;

    NewtonLoop(OperatingPoint start, Eliminations eliminations) {
        point = start;
        branches = start.contraction.branches;
        islands = start.islands();
        elimination = eliminations.of(start.high.length, start.from, start.to);
        conductanceS = new double[elimination.slots()];
        slot = new int[branches.length];
        for (int b = 0; b < slot.length; b++) {
            slot[b] = start.from[b] == start.to[b] ? -1 : elimination.slot(start.from[b], start.to[b]);
        }
    }

    Islands islands() {
        return islands;
    }

    /** Runs until Kirchhoff's current law holds, so that it is {@link #settled}, or {@link #withoutReturn} is set. */
    void run(int maxIterations, Progress progress) {
        double best = Double.POSITIVE_INFINITY;
        int idle = 0;
        for (int step = 0; step < maxIterations; step++) {
            progress.at(step, maxIterations);
            double residual = point.residual();
            if (point.largestV() > UNBOUNDED_V) {
                nameUnbounded();
                return;
            }
            if (residual <= AIM || (residual <= ACCEPTED && idle >= IDLE_STEPS)) {
                islands = point.islands();
                settled = true;
                return;
            }
            idle = residual < 0.5 * best ? 0 : idle + 1;
            best = Math.min(best, residual);
            iterations++;
            double[] direction = direction();
            if (withoutReturn >= 0) {
                return;
            }
            advance(direction);
        }
        islands = point.islands();
        settled = point.residual() <= ACCEPTED;
    }

    private double[] direction() {
        if (point.slopeChanged()) {
            islands = point.islands();
            if (!factor(point.slope)) {
                useAbsoluteSlopes();
            }
        }
        double[] direction = point.net.clone();
        for (int s = 0; s < direction.length; s++) {
            if (islands.grounded[s]) {
                direction[s] = 0;
            }
        }
        elimination.solve(direction);
        if (islands.count > 1) {
            double[] shift = islandShifts();
            for (int s = 0; s < direction.length; s++) {
                direction[s] += shift[islands.islandOf[s]];
            }
        }
        return direction;
    }

    /** Whether the conductances make a positive definite matrix. What leads to a grounded supernode leads to earth. */
    private boolean factor(double[] slopeS) {
        Arrays.fill(conductanceS, 0);
        for (int b = 0; b < slopeS.length; b++) {
            if (slot[b] >= 0) {
                int a = islands.grounded[point.from[b]] ? 0 : point.from[b];
                int c = islands.grounded[point.to[b]] ? 0 : point.to[b];
                boolean moved = a != point.from[b] || c != point.to[b];
                if (a != c) {
                    conductanceS[moved ? elimination.slot(a, c) : slot[b]] += slopeS[b];
                }
            }
        }
        return elimination.factor(conductanceS) == islands.unknowns;
    }

    /** Constant-power loads have falling slopes; where these prevail, their amounts still give a descent. */
    private void useAbsoluteSlopes() {
        double[] amount = point.slope.clone();
        for (int b = 0; b < amount.length; b++) {
            amount[b] = Math.abs(amount[b]);
        }
        if (!factor(amount)) {
            throw new NoConvergence(iterations, point.residual(), List.of());
        }
    }

    /**
     * How far to move islands that take in more current than they give, or less: past the nearest kink of a one-way
     * element at their border. Sets {@link #withoutReturn} where there is none.
     */
    private double[] islandShifts() {
        double[] shift = new double[islands.count];
        double[] surplus = new double[islands.count];
        // Not the sum over the nodes: that holds the rounding of all currents within the island.
        for (int b = 0; b < branches.length; b++) {
            int from = islands.islandOf[point.from[b]];
            int to = islands.islandOf[point.to[b]];
            if (from != to) {
                surplus[from] -= point.current[b];
                surplus[to] += point.current[b];
            }
        }
        double[] reach = new double[islands.count];
        Arrays.fill(reach, Double.POSITIVE_INFINITY);
        for (int b = 0; b < branches.length; b++) {
            int from = islands.islandOf[point.from[b]];
            int to = islands.islandOf[point.to[b]];
            if (from != to) {
                reach[from] = Math.min(reach[from], kink(b, surplus[from] > 0));
                reach[to] = Math.min(reach[to], kink(b, surplus[to] < 0));
            }
        }
        for (int k = 1; k < islands.count; k++) {
            if (Math.abs(surplus[k]) > OneWayStates.ROUNDING * point.largestA() + point.floorA()) {
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
        double[] rising = point.slope.clone();
        for (int b = 0; b < rising.length; b++) {
            rising[b] = rising[b] < 0 ? 0 : rising[b];
        }
        islands = Islands.of(point, rising);
        double highest = 0;
        for (int s = 0; s < point.high.length; s++) {
            if (islands.islandOf[s] > 0 && Math.abs(point.high[s]) > highest) {
                highest = Math.abs(point.high[s]);
                withoutReturn = islands.islandOf[s];
            }
        }
    }

    private double kink(int b, boolean rising) {
        double driveV = point.drive[b];
        return rising ? branches[b].riseToKinkV(driveV) : branches[b].fallToKinkV(driveV);
    }

    /** Goes the full step, or, if the descent ends before, to where it ends. */
    private void advance(double[] direction) {
        double[][] start = point.potentials();
        double first = point.descent(direction);
        point.move(start, direction, 1);
        double end = point.descent(direction);
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
            point.move(start, direction, t);
            double descent = point.descent(direction);
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
}
