package loomwright.network;

import java.util.Arrays;

/** The figures of a solved network, worked out from the potentials, and the check that they hold. */
final class Outcome {
    static final Outcome NONE = new Outcome();

    final double[] voltageV;
    final boolean[] floating;
    final int[] islandOf;
    final double[] currentA;
    final double[] powerW;
    final boolean[] determined;
    final double kirchhoffResidual;
    final double powerResidual;

    private Outcome() {
        voltageV = new double[0];
        floating = new boolean[0];
        islandOf = new int[0];
        currentA = new double[0];
        powerW = new double[0];
        determined = new boolean[0];
        kirchhoffResidual = 0;
        powerResidual = 0;
    }

    /** With the islands as the loop left them. */
    Outcome(NewtonLoop loop) {
        this(loop.point, loop.point.nodeV(), loop.point.voltage, islandOf(loop));
    }

    /** With the islands where the leaks draw them. */
    Outcome(NewtonLoop loop, FloatingNodePlacement leak) {
        this(loop.point, leak.nodeV, leak.branchV, leak.islandOf);
    }

    private Outcome(OperatingPoint settled, double[] nodeV, double[] branchV, int[] islandOf) {
        Contraction contraction = settled.contraction;
        BranchLaw[] branches = contraction.branches;
        currentA = settled.current.clone();
        if (settled.dead()) {
            Arrays.fill(currentA, 0);
        }
        contraction.recover(currentA);
        determined = new boolean[branches.length];
        Arrays.fill(determined, true);
        for (int closing : contraction.closing) {
            for (int b : contraction.loop(closing)) {
                determined[b] = false;
            }
        }
        this.islandOf = islandOf;
        voltageV = nodeV.clone();
        floating = new boolean[voltageV.length];
        double[] base = new double[voltageV.length];
        Arrays.fill(base, Double.NaN);
        base[0] = 0;
        for (int node = 0; node < voltageV.length; node++) {
            int island = islandOf[node];
            if (Double.isNaN(base[island])) {
                base[island] = voltageV[node];
            }
            floating[node] = island != 0;
            voltageV[node] -= base[island];
        }
        powerW = new double[branches.length];
        for (int b = 0; b < branches.length; b++) {
            powerW[b] = currentA[b] * branchV[b];
        }
        kirchhoffResidual = kirchhoff(branches);
        powerResidual = power(branches, branchV);
    }

    private static int[] islandOf(NewtonLoop loop) {
        int[] superOf = loop.point.contraction.superOf;
        int[] islandOf = new int[superOf.length];
        for (int node = 0; node < islandOf.length; node++) {
            islandOf[node] = loop.islands().islandOf[superOf[node]];
        }
        return islandOf;
    }

    private double kirchhoff(BranchLaw[] branches) {
        double[] sum = new double[voltageV.length];
        double largest = 0;
        for (int b = 0; b < branches.length; b++) {
            sum[branches[b].from] -= currentA[b];
            sum[branches[b].to] += currentA[b];
            largest = Math.max(largest, Math.abs(currentA[b]));
        }
        double worst = 0;
        for (double a : sum) {
            worst = Math.max(worst, Math.abs(a));
        }
        return worst == 0 ? 0 : worst / largest;
    }

    /**
     * By the sum of the amounts; or by the largest current and voltage, that within a source with resistance among them,
     * where these do not meet in one element.
     */
    private double power(BranchLaw[] branches, double[] branchV) {
        double sum = 0;
        double amount = 0;
        double largestA = 0;
        double largestV = 0;
        for (int b = 0; b < powerW.length; b++) {
            sum += powerW[b];
            amount += Math.abs(powerW[b]);
            largestA = Math.max(largestA, Math.abs(currentA[b]));
            largestV = Math.max(largestV, Math.max(Math.abs(branchV[b]), Math.abs(branches[b].biasV)));
        }
        return sum == 0 ? 0 : Math.abs(sum) / Math.max(amount, largestA * largestV);
    }
}
