/** Curves with axes: {@code AxisTest}, then whole pictures, {@code PlotDrawingTest}. */
@NullMarked
package loomwright.drawing.plot;

import org.jspecify.annotations.NullMarked;
