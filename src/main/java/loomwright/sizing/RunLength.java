package loomwright.sizing;

import org.jspecify.annotations.Nullable;

/**
 * The length of a run one way, in one of two units.
 *
 * @param lengthM in metres
 * @param lengthFt in feet
 */
public record RunLength(@Nullable Double lengthM, @Nullable Double lengthFt) {}
