package loomwright.list;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** Finds the word that somebody meant. */
public final class Spelling {
    private static final JaroWinklerSimilarity ALIKE = new JaroWinklerSimilarity();
    private static final LevenshteinDistance EDITS = new LevenshteinDistance(2);
    private static final double ALIKE_ENOUGH = 0.9;
    /** Shorter words are too easily another word. */
    private static final int SHORTEST = 4;

    private Spelling() {}

    /** The known word that a text is most likely a slip of: at most two letters changed, and alike at its beginning. */
    public static Optional<String> nearest(String text, Collection<String> known) {
        if (text.length() < SHORTEST) {
            return Optional.empty();
        }
        return known.stream()
                .filter(word -> word.length() >= SHORTEST && Math.abs(word.length() - text.length()) <= 1)
                .filter(word -> isSlip(text, word))
                .max(Comparator.comparingDouble((String word) -> ALIKE.apply(text, word))
                        .thenComparing(Comparator.reverseOrder()));
    }

    private static boolean isSlip(String text, String word) {
        int edits = EDITS.apply(text, word);
        return edits >= 0 && (edits <= 1 || text.length() > SHORTEST) && ALIKE.apply(text, word) >= ALIKE_ENOUGH;
    }
}
