package loomwright.message;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Tells labels that are plain words of the trade, such as "Left headlamp", from names, such as "Fuse 2" or "Elsie": in a
 * sentence the first take an article and no capital, and names stay as their owner wrote them.
 */
final class LabelWords {
    private final Set<String> known;

    /**
     * The words that a language has for parts and where they sit.
     *
     * @param words singular, small letters, with spaces between; empty in a language that leaves labels as they are
     */
    LabelWords(String words) {
        known = Arrays.stream(words.strip().split("\\s+", -1))
                .filter(word -> !word.isEmpty())
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Whether a label names a kind of thing: it consists of words, of which at least one is known. */
    boolean isPlain(String label) {
        List<String> words = List.of(label.split(" ", -1));
        return words.stream().allMatch(word -> word.matches("[\\p{L}'/-]{2,}"))
                && words.stream().anyMatch(this::knows);
    }

    /** The label without the capital that begins it, unless the capital belongs to a name or an abbreviation. */
    String withoutCapital(String label) {
        String first = label.split(" ", 2)[0];
        boolean capital = first.length() > 1
                && Character.isUpperCase(first.charAt(0))
                && first.substring(1).equals(first.substring(1).toLowerCase(Locale.ROOT));
        return capital && knows(first) ? label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1) : label;
    }

    /** Singular or plural, whole or the first part of a compound with a hyphen. */
    private boolean knows(String word) {
        String small = word.toLowerCase(Locale.ROOT);
        return known.contains(small)
                || (small.endsWith("s") && known.contains(small.substring(0, small.length() - 1)))
                || (small.indexOf('-') > 0 && known.contains(small.substring(0, small.indexOf('-'))));
    }
}
