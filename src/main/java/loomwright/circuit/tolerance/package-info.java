/**
 * How far the figures of a plan may be off in a sound vehicle, for whoever says what a meter may show. {@link
 * loomwright.circuit.tolerance.Tolerances} holds the usual tolerance of each kind, {@link
 * loomwright.circuit.tolerance.PartFigures} the figures of a part, {@link loomwright.circuit.tolerance.Spreads} all figures of
 * a plan.
 */
@NullMarked
package loomwright.circuit.tolerance;

import org.jspecify.annotations.NullMarked;
