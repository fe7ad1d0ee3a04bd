/**
 * Circuit diagrams: a solved plan as a drawing that reads from the supply at the top to the earths at the bottom.
 *
 * <p>Reading list: {@link loomwright.drawing.diagram.Diagram} is the entry. {@link loomwright.drawing.diagram.Flow} says
 * which way is down, {@link loomwright.drawing.diagram.Symbols} draws each kind of part,
 * {@link loomwright.drawing.diagram.Cells} puts symbol, terminals and texts together, {@link
 * loomwright.drawing.diagram.Layout} places them, {@link loomwright.drawing.diagram.Drawing} is the finished drawing as
 * plain data and {@link loomwright.drawing.diagram.DrawingSvg} writes it.
 */
@NullMarked
package loomwright.drawing.diagram;

import org.jspecify.annotations.NullMarked;
