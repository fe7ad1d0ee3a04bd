package loomwright.review.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.operation.fault.BadJoint;
import loomwright.operation.fault.SingleFault;
import org.jspecify.annotations.Nullable;

/**
 * How many ohms a bad joint has: the size that makes the readings most likely.
 *
 * <p>A grid of {@value #GRID} sizes a factor √10 apart finds the hill, golden-section search its top to 2 per cent (J. Kiefer,
 * Sequential minimax search for a maximum, 1953, from memory), both over the logarithm of the resistance.
 */
final class JointSize {
    static final int GRID = 9;
    private static final double LARGEST_OHM = 300;
    private static final double APART = Math.sqrt(10);
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final double CLOSE = 0.02;

    private final Trials trials;

    JointSize(Trials trials) {
        this.trials = trials;
    }

    /**
     * Fits one joint.
     *
     * @param faults of which {@code which} is the bad joint, the others stay as they are
     * @param without the same without this joint; a joint that makes no difference even when it hardly conducts is not sized
     * @return empty if the plan has no solution with them
     */
    Optional<Candidate> fit(List<SingleFault> faults, int which, Set<String> fusesBlown, @Nullable Candidate without) {
        @Nullable Candidate best = null;
        double ohm = LARGEST_OHM;
        for (int i = 0; i < GRID; i++, ohm /= APART) {
            Candidate tried = at(faults, which, fusesBlown, ohm);
            boolean unseen = i == 0
                    && tried != null
                    && without != null
                    && trials.likelihood().alike(tried.figures(), without.figures());
            if (unseen) {
                return trials.of(faults, fusesBlown);
            }
            best = better(best, tried);
        }
        if (best == null) {
            return Optional.empty();
        }
        boolean helps = without == null
                || best.fit().logLikelihood() > without.fit().logLikelihood();
        return Optional.of(helps ? refined(best, which) : best);
    }

    /** Climbs from a size that is near the top. */
    Candidate refined(Candidate start, int which) {
        double middle = Math.log(joint(start.faults(), which).resistanceOhm());
        double low = middle - Math.log(APART);
        double high = middle + Math.log(APART);
        Candidate best = start;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        Candidate atLeft = at(start.faults(), which, start.fusesBlown(), Math.exp(left));
        Candidate atRight = at(start.faults(), which, start.fusesBlown(), Math.exp(right));
        while (high - low > CLOSE) {
            best = higher(higher(best, atLeft), atRight);
            if (log(atLeft) > log(atRight)) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = at(start.faults(), which, start.fusesBlown(), Math.exp(left));
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = at(start.faults(), which, start.fusesBlown(), Math.exp(right));
            }
        }
        return higher(higher(best, atLeft), atRight);
    }

    private static BadJoint joint(List<SingleFault> faults, int which) {
        return (BadJoint) faults.get(which);
    }

    private @Nullable Candidate at(List<SingleFault> faults, int which, Set<String> fusesBlown, double ohm) {
        List<SingleFault> sized = new ArrayList<>(faults);
        sized.set(which, joint(faults, which).withResistanceOhm(ohm));
        return trials.of(sized, fusesBlown).orElse(null);
    }

    private static double log(@Nullable Candidate candidate) {
        return candidate == null ? Double.NEGATIVE_INFINITY : candidate.logWeight();
    }

    private static @Nullable Candidate better(@Nullable Candidate one, @Nullable Candidate other) {
        return log(other) > log(one) ? other : one;
    }

    private static Candidate higher(Candidate one, @Nullable Candidate other) {
        return other != null && other.logWeight() > one.logWeight() ? other : one;
    }
}
