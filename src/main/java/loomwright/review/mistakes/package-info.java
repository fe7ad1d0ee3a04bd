/**
 * What each plausible single mistake does. {@link loomwright.review.mistakes.MistakesAnswer} answers,
 * {@link loomwright.review.mistakes.Consequences} solves one mistake and compares it with the sound plan,
 * {@link loomwright.review.mistakes.Keying} says how connectors can be kept from being crossed.
 */
@NullMarked
package loomwright.review.mistakes;

import org.jspecify.annotations.NullMarked;
