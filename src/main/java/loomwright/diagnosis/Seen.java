package loomwright.diagnosis;

import java.util.Collections;
import java.util.List;
import loomwright.circuit.Consumer;
import loomwright.operation.FeedStrength;
import loomwright.operation.StepFigures;

/**
 * What somebody sees of a part in a solved plan, and how likely what was reported then is (common practice, no source). Nobody
 * complains of a part that works as it should, so a complaint is seldom mistaken.
 */
enum Seen {
    //      works  weak   glows  dead   stays  blows
    WORKING(0.980, 0.004, 0.002, 0.001, 0.980, 0.001),
    WEAK(0.350, 0.550, 0.050, 0.030, 0.600, 0.004),
    GLOWING(0.030, 0.350, 0.500, 0.100, 0.300, 0.004),
    NOTHING(0.001, 0.010, 0.030, 0.940, 0.001, 0.004),
    FUSE_BLOWN(0.001, 0.004, 0.004, 0.500, 0.001, 0.900);

    /** What is reported with less is not explained. */
    static final double EXPLAINED = 0.02;

    /** Below this share of what it should have, a part is seen to be weak (common practice, no source). */
    private static final double WEAK_SHARE = 0.8;

    private static final List<Seen> ALL = List.of(values());

    @SuppressWarnings("ImmutableEnumChecker") // an unmodifiable list
    private final List<Double> likelihoods;

    Seen(Double... likelihoods) {
        this.likelihoods = List.of(likelihoods);
    }

    double likelihoodOf(Sign sign) {
        return likelihoods.get((int) sign.figure());
    }

    /** Whether no other word is likelier for it. */
    boolean isCalled(Sign sign) {
        return likelihoodOf(sign) >= Collections.max(likelihoods);
    }

    /** By which it stands among the figures of readings. */
    double figure() {
        return ALL.indexOf(this);
    }

    static Seen of(double figure) {
        return ALL.get((int) figure);
    }

    /**
     * What is seen of a part.
     *
     * @param soundV what it works on in the sound plan
     */
    static Seen of(StepFigures solved, String part, double soundV) {
        if (!(solved.plan().findPart(part).orElse(null) instanceof Consumer consumer) || solved.isOff(consumer)) {
            return NOTHING;
        }
        FeedStrength strength = solved.activity(consumer);
        return switch (strength) {
            case OPERATES -> solved.effectiveV(consumer) < WEAK_SHARE * soundV ? WEAK : WORKING;
            case HOLDS, GLOWS -> GLOWING;
            case STALLS, LEAKS, DEAD -> NOTHING;
        };
    }
}
