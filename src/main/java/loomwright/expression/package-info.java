/**
 * Resistors in series and parallel taken together to one, step by step.
 *
 * <p>Reading list: {@link loomwright.expression.ResistanceExpression} (read from text by {@code ExpressionParser}), {@link
 * loomwright.expression.NetworkReduction} (a network seen from two of its nodes), {@link
 * loomwright.expression.Reduction} (what comes out).
 */
@NullMarked
package loomwright.expression;

import org.jspecify.annotations.NullMarked;
