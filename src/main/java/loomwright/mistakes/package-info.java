/**
 * What each plausible single mistake does. {@link loomwright.mistakes.MistakesAnswer} answers,
 * {@link loomwright.mistakes.Consequences} solves one mistake and compares it with the plan as it is, in which what blows its fuse by itself has blown it ({@link
 * loomwright.mistakes.FusedSteps}),
 * {@link loomwright.mistakes.Keying} says how connectors can be kept from being crossed.
 */
@NullMarked
package loomwright.mistakes;

import org.jspecify.annotations.NullMarked;
