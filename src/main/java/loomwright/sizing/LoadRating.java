package loomwright.sizing;

import org.jspecify.annotations.Nullable;

/**
 * What a load draws, in one of two ways.
 *
 * @param currentA its continuous current
 * @param powerW its rated watts instead
 */
public record LoadRating(
        @Nullable Double currentA, @Nullable Double powerW) {
    /** One given by its current. */
    public static LoadRating ofA(double currentA) {
        return new LoadRating(currentA, null);
    }
}
