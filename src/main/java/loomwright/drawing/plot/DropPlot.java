package loomwright.drawing.plot;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import loomwright.drawing.Svg;
import loomwright.drawing.plot.PlotCurve.Look;
import loomwright.drawing.plot.PlotCurve.Point;
import loomwright.sizing.DropOverLength;

/** The voltage lost over the length of a run, for a size of wire and its neighbours, against what may be lost. */
public final class DropPlot {
    private static final List<Look> OTHERS = List.of(Look.SECOND, Look.THIRD, Look.FOURTH, Look.FIFTH);

    /** So far beyond the run asked about the lines go on. */
    private static final double BEYOND = 2;

    /** So far above the limit, or the drop asked about, the picture goes on. */
    private static final double ABOVE = 1.5;

    private DropPlot() {}

    /** The picture. */
    public static Svg draw(DropOverLength drops) {
        return PlotDrawing.draw("drop", title(drops), description(drops), List.of(plot(drops)));
    }

    static Plot plot(DropOverLength drops) {
        double lengthM = drops.lengthM();
        double limitV = drops.limit().findingV();
        double askedV = drops.lines().stream()
                .filter(DropOverLength.Line::asked)
                .mapToDouble(line -> line.dropV(lengthM))
                .max()
                .orElse(0);
        Axis x = Axis.linear(PlotText.AXIS_LENGTH.text(), 0, BEYOND * lengthM);
        Axis y = Axis.linear(PlotText.AXIS_DROP.text(), 0, ABOVE * Math.max(limitV, askedV));
        List<PlotCurve> curves = new ArrayList<>(lines(drops, x));
        curves.add(
                PlotCurve.level(PlotText.DROP_LIMIT.with(arg("limitV", limitV)).text(), Look.LIMIT, x, limitV));
        drops.lines().stream()
                .filter(DropOverLength.Line::asked)
                .forEach(line -> curves.add(PlotCurve.mark(
                        PlotText.DROP_ASKED
                                .with(arg("size", line.size()), arg("lengthM", lengthM), arg("dropV", askedV))
                                .text(),
                        lengthM,
                        askedV)));
        return new Plot(title(drops), x, y, curves);
    }

    /** The size asked about looks the same in each picture; the others keep their order, the thinnest first. */
    private static List<PlotCurve> lines(DropOverLength drops, Axis x) {
        List<DropOverLength.Line> others =
                drops.lines().stream().filter(line -> !line.asked()).toList();
        return drops.lines().stream()
                .map(line -> new PlotCurve(
                        line.size(),
                        line.asked() ? Look.MAIN : OTHERS.get(others.indexOf(line) % OTHERS.size()),
                        IntStream.rangeClosed(0, 1)
                                .mapToDouble(end -> end * x.max())
                                .mapToObj(metres -> new Point(metres, line.dropV(metres)))
                                .toList()))
                .toList();
    }

    private static String description(DropOverLength drops) {
        return PlotText.DROP_DESCRIPTION
                .with(
                        arg("lengthM", drops.lengthM()),
                        messages(
                                "sizes",
                                drops.lines().stream()
                                        .map(line -> PlotText.DROP_OF_SIZE.with(
                                                arg("size", line.size()), arg("dropV", line.dropV(drops.lengthM()))))
                                        .toList()),
                        arg("limitV", drops.limit().findingV()))
                .text();
    }

    private static String title(DropOverLength drops) {
        return PlotText.DROP_TITLE.with(arg("currentA", drops.currentA())).text();
    }
}
