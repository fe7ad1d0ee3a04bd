package loomwright.diagnosis;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * How well predicted figures go with what was measured.
 *
 * @param logLikelihood natural logarithm of the density of the readings
 * @param deviations measured less predicted for each reading, in standard deviations
 * @param wrong readings that are likelier wrong than of this prediction
 * @param contactsOpen of the readings for which nobody said how the contacts stood, those that go better with open ones
 */
record Fit(double logLikelihood, List<Double> deviations, Set<Integer> wrong, Set<Integer> contactsOpen) {
    /** Coverage of about 99 per cent (JCGM 100:2008, GUM, annex G, table G.1, from memory). */
    static final double LIMIT = 3;
    /** Readings that go with each other, but not with the prediction, are so far off (common practice, no source). */
    private static final double FAR = 4;

    Fit {
        deviations = List.copyOf(deviations);
        wrong = Set.copyOf(wrong);
        contactsOpen = Set.copyOf(contactsOpen);
    }

    /** Whether a reading does not go with the prediction. */
    boolean deviates(int reading) {
        return wrong.contains(reading);
    }

    boolean explains() {
        return notExplained().isEmpty();
    }

    /** The readings that are wrong, or too far off to go with the prediction, in their order. */
    List<Integer> notExplained() {
        return IntStream.range(0, deviations.size())
                .filter(i -> wrong.contains(i) || Math.abs(deviations.get(i)) >= FAR)
                .boxed()
                .toList();
    }

    /** The largest deviation, standard deviations. */
    double worst() {
        return deviations.stream().mapToDouble(Math::abs).max().orElse(0);
    }
}
