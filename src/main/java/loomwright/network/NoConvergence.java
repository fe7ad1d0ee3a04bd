package loomwright.network;

import java.util.List;

/** The solver gave up within its limits; it would rather say so than hand out figures that do not hold. */
public final class NoConvergence extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int iterations;
    private final double residual;
    private final transient List<String> elementIds;

    /**
     * Gives up.
     *
     * @param residual largest current error at a node as a fraction of the largest current
     * @param elementIds the elements that did not settle
     */
    public NoConvergence(int iterations, double residual, List<String> elementIds) {
        super("no solution after " + iterations + " iterations, residual " + residual + ", elements " + elementIds);
        this.iterations = iterations;
        this.residual = residual;
        this.elementIds = List.copyOf(elementIds);
    }

    public int iterations() {
        return iterations;
    }

    public double residual() {
        return residual;
    }

    public List<String> elementIds() {
        return elementIds;
    }
}
