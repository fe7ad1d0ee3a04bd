/**
 * What every calculation hands back, whatever it calculates: the {@link loomwright.answer.Answer} with its working,
 * {@link loomwright.answer.Basis} and {@link loomwright.answer.Caution}s, or the {@link loomwright.answer.InputError}s for
 * which the input was rejected. What people read in it are {@link loomwright.message.Message}s. Data only.
 */
@NullMarked
package loomwright.answer;

import org.jspecify.annotations.NullMarked;
