/**
 * What each plausible single mistake does. {@link loomwright.mistakes.MistakesAnswer} answers,
 * {@link loomwright.mistakes.Consequences} solves one mistake and compares it with the sound plan,
 * {@link loomwright.mistakes.Keying} says how connectors can be kept from being crossed.
 */
@NullMarked
package loomwright.mistakes;

import org.jspecify.annotations.NullMarked;
