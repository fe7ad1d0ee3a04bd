/**
 * The sheet a workshop prints and takes to the vehicle: one page of HTML with nothing from outside.
 *
 * <p>Reading list: {@link loomwright.drawing.sheet.SheetQuestion} is what is asked for, {@link
 * loomwright.drawing.sheet.JobSheet} gathers it from the other packages, {@link loomwright.drawing.sheet.SheetPage} puts
 * the sections in their order, {@link loomwright.drawing.sheet.Html} writes them.
 */
@NullMarked
package loomwright.drawing.sheet;

import org.jspecify.annotations.NullMarked;
