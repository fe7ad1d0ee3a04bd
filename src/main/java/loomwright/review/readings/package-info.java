/**
 * The sheet of readings an owner works through with a meter.
 *
 * <p>Reading list: {@link loomwright.review.readings.ReadingsAnswer} is the entry. {@link
 * loomwright.review.readings.Circuits} chooses what is worth measuring, {@link loomwright.review.readings.Spreads} says
 * how far each figure of a plan may be off, {@link loomwright.review.readings.VoltBounds} and {@link
 * loomwright.review.readings.OhmBounds} what follows for a reading, {@link loomwright.review.readings.MeterRange} how a
 * meter shows it.
 */
@NullMarked
package loomwright.review.readings;

import org.jspecify.annotations.NullMarked;
