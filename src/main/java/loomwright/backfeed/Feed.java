package loomwright.backfeed;

import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.operation.FeedStrength;
import loomwright.operation.SolvedStep;

/**
 * How a load is fed that should not be live. Stronger comes first: by what it does, what is pulled in before what is not,
 * then by volts, where differences that come of rounding do not count.
 */
record Feed(FeedStrength strength, boolean pulledIn, double effectiveV) implements Comparable<Feed> {
    static final Feed NONE = new Feed(FeedStrength.DEAD, false, 0);

    /** Volts that a decision may be off by, as a share. */
    private static final double ALIKE = 1e-5;

    /** How a load is fed in a solved step, meant or not. */
    static Feed of(SolvedStep solved, Consumer load) {
        boolean hasArmature = load instanceof Electromagnet;
        return new Feed(solved.activity(load), hasArmature && solved.isActive(load), solved.effectiveV(load));
    }

    boolean isDead() {
        return strength == FeedStrength.DEAD;
    }

    /** By what it does alone. */
    int compareEffect(Feed other) {
        int byStrength = strength.compareTo(other.strength);
        return byStrength != 0 ? byStrength : Boolean.compare(other.pulledIn, pulledIn);
    }

    @Override
    public int compareTo(Feed other) {
        int byEffect = compareEffect(other);
        if (byEffect != 0) {
            return byEffect;
        }
        boolean alike = Math.abs(effectiveV - other.effectiveV) <= ALIKE * Math.max(effectiveV, other.effectiveV);
        return alike ? 0 : Double.compare(other.effectiveV, effectiveV);
    }
}
