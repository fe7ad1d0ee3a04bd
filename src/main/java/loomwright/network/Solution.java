package loomwright.network;

import java.util.List;

/**
 * A solved network, by the indices of its nodes and elements.
 *
 * <p>Where {@link #solved} is false there are no figures, only {@link #findings}: asking for a figure is then an error
 * of the caller.
 */
public final class Solution {
    private final boolean solved;
    private final double[] voltageV;
    private final boolean[] floating;
    private final int[] islandOf;
    private final double[] currentA;
    private final double[] powerW;
    private final boolean[] determined;
    private final double kirchhoffResidual;
    private final double powerResidual;
    private final int iterations;
    private final List<NetworkFinding> findings;

    private Solution(Outcome outcome, boolean solved, int iterations, List<NetworkFinding> findings) {
        this.solved = solved;
        this.voltageV = outcome.voltageV;
        this.floating = outcome.floating;
        this.islandOf = outcome.islandOf;
        this.currentA = outcome.currentA;
        this.powerW = outcome.powerW;
        this.determined = outcome.determined;
        this.kirchhoffResidual = outcome.kirchhoffResidual;
        this.powerResidual = outcome.powerResidual;
        this.iterations = iterations;
        this.findings = List.copyOf(findings);
    }

    static Solution of(Outcome outcome, int iterations, List<NetworkFinding> findings) {
        return new Solution(outcome, true, iterations, findings);
    }

    static Solution none(int iterations, List<NetworkFinding> findings) {
        return new Solution(Outcome.NONE, false, iterations, findings);
    }

    /** Whether there are figures; if not, a finding says why. */
    public boolean solved() {
        return solved;
    }

    /** Voltage of a node to the reference, or to the first node of its own island if it is {@link #floating}, V. */
    public double voltageV(int node) {
        return ask(voltageV)[node];
    }

    /** Whether nothing conducting joins this node to the reference. */
    public boolean floating(int node) {
        requireSolved();
        return floating[node];
    }

    /**
     * Which nodes are connected: nodes of the same number can be compared by {@link #voltageV}. 0 is the reference's
     * island.
     */
    public int island(int node) {
        requireSolved();
        return islandOf[node];
    }

    /** Current through an element, positive from its {@code from} to its {@code to}, A. */
    public double currentA(int element) {
        return ask(currentA)[element];
    }

    /** Whether the current is the only possible one; false in a loop of ideal joints, where it is one of many. */
    public boolean currentDetermined(int element) {
        requireSolved();
        return determined[element];
    }

    /** Power that an element takes up, W; negative if it delivers. */
    public double powerW(int element) {
        return ask(powerW)[element];
    }

    /** Largest sum of the currents at a node as a fraction of the largest current. */
    public double kirchhoffResidual() {
        requireSolved();
        return kirchhoffResidual;
    }

    /** Sum of the powers of all elements as a fraction of the sum of their amounts, or of the largest current times the
     * largest voltage if that is more. */
    public double powerResidual() {
        requireSolved();
        return powerResidual;
    }

    public int iterations() {
        return iterations;
    }

    public List<NetworkFinding> findings() {
        return findings;
    }

    private double[] ask(double[] figures) {
        requireSolved();
        return figures;
    }

    private void requireSolved() {
        if (!solved) {
            throw new IllegalStateException("asked for a figure of a network without solution: " + findings);
        }
    }
}
