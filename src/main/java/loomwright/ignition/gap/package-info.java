/**
 * What the gap of a plug asks for: {@link loomwright.ignition.gap.Compression} gives the gas,
 * {@link loomwright.ignition.gap.BreakdownFormula} the published formulas,
 * {@link loomwright.ignition.gap.BreakdownVoltage} the figure and how sure it is.
 */
@NullMarked
package loomwright.ignition.gap;

import org.jspecify.annotations.NullMarked;
