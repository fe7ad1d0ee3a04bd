/**
 * The sheet of readings an owner works through with a meter.
 *
 * <p>Reading list: {@link loomwright.readings.ReadingsAnswer} is the entry. {@link
 * loomwright.readings.Circuits} chooses what is worth measuring, {@link loomwright.circuit.tolerance.Spreads} says
 * how far each figure of a plan may be off, {@link loomwright.readings.VoltBounds} and {@link
 * loomwright.readings.OhmBounds} what follows for a reading, {@link loomwright.operation.MeterRange} how a
 * meter shows it.
 */
@NullMarked
package loomwright.readings;

import org.jspecify.annotations.NullMarked;
