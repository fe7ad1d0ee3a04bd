/**
 * Curves with axes and units. Draws what {@code ignition} and {@code conductor} calculated.
 *
 * <p>Reading list: {@link loomwright.drawing.plot.Plot} is what is drawn, of {@link loomwright.drawing.plot.Axis} and
 * {@link loomwright.drawing.plot.PlotCurve}; {@link loomwright.drawing.plot.PlotDrawing} draws it. {@link
 * loomwright.drawing.plot.SparkPlots}, {@link loomwright.drawing.plot.DropPlot} and {@link
 * loomwright.drawing.plot.FusePlot} say what is plotted for which answer.
 */
@NullMarked
package loomwright.drawing.plot;

import org.jspecify.annotations.NullMarked;
