package loomwright.circuit.tolerance;

/**
 * One figure of a plan that is known within a tolerance.
 *
 * @param id of the part, wire or connector; "supply" for the battery
 * @param fraction by how much it may be lower or higher
 * @param raisesOhms whether more of it means more resistance: false for a lamp's watts
 * @param change puts it into a draft, multiplied by a factor
 */
public record Spread(String id, double fraction, boolean raisesOhms, Change change) {

    /** Makes one figure of a draft a multiple of what it was in the original. */
    @FunctionalInterface
    public interface Change {
        void apply(PlanDraft draft, double factor);
    }

    /** Moves the figure by a share of its tolerance, -1 (lowest) to 1 (highest). */
    public void move(PlanDraft draft, double share) {
        change.apply(draft, 1 + share * fraction);
    }
}
