package loomwright.diagnosis;

import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;

/**
 * How well predicted figures go with what was measured.
 *
 * @param logLikelihood natural logarithm, up to a constant that is the same for all predictions
 * @param deviations measured less predicted for each reading, in standard deviations
 * @param supplyShares EMF of the supply in each condition as a share of the plan's, as fits best
 */
record Fit(double logLikelihood, List<Double> deviations, Map<Condition, Double> supplyShares) {
    /** Coverage of about 99 per cent (JCGM 100:2008, GUM, annex G, table G.1, from memory). */
    static final double LIMIT = 3;

    Fit {
        deviations = List.copyOf(deviations);
        supplyShares = Map.copyOf(supplyShares);
    }

    /** Whether a reading does not go with the prediction. */
    boolean deviates(int reading) {
        return Math.abs(deviations.get(reading)) > LIMIT;
    }

    /** How many readings do not go with it. */
    long unexplained() {
        return deviations.stream().filter(z -> Math.abs(z) > LIMIT).count();
    }

    boolean explains() {
        return unexplained() == 0;
    }

    /** The largest deviation, standard deviations. */
    double worst() {
        return deviations.stream().mapToDouble(Math::abs).max().orElse(0);
    }
}
