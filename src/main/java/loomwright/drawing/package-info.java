/**
 * What people see: pictures and printable sheets. Draws what other packages calculated and calculates nothing itself.
 *
 * <p>Reading list: {@link loomwright.drawing.Markup} writes elements, {@link loomwright.drawing.Svg} a picture of them,
 * {@link loomwright.drawing.TextWidth} says how wide a label is on every machine, {@link loomwright.drawing.Png} turns a
 * picture into dots.
 */
@NullMarked
package loomwright.drawing;

import org.jspecify.annotations.NullMarked;
