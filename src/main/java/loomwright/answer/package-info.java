/**
 * What every calculation hands back, whatever it calculates: the {@link loomwright.answer.Answer} with its working,
 * {@link loomwright.answer.Basis} and {@link loomwright.answer.Caution}s, or the {@link loomwright.answer.InputError}s for
 * which the input was rejected. {@link loomwright.answer.PropertyName} says the names in it as people do. Data only;
 * depends on the JDK alone.
 */
@NullMarked
package loomwright.answer;

import org.jspecify.annotations.NullMarked;
