/**
 * Circuit diagrams, from the symbol to the sheet: D01 symbols, D02 room for everything, D03 what is told, D04 the SVG, D05
 * two plans, D06 the end of time.
 */
@NullMarked
package loomwright.drawing.diagram;

import org.jspecify.annotations.NullMarked;
