package loomwright.drawing.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import loomwright.drawing.Labels;
import loomwright.drawing.Svg;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Plots as pictures: 1 labels have room, 2 curves are where they belong, 3 lines can be told apart without colour. */
class PlotDrawingTest {
    private static final List<PlotCurve.Look> LOOKS = List.of(PlotCurve.Look.values());

    private static Svg picture(Axis x, Axis y, List<PlotCurve> curves) {
        return PlotDrawing.draw(
                "p", "t", "d", List.of(new Plot("Plot", x, y, curves), new Plot("Again", x, y, curves)));
    }

    /** Whatever the ranges and names, no label covers another or leaves the picture. */
    @Property(seed = "20260505", tries = 100)
    void labelsHaveRoom(
            @ForAll @IntRange(min = 0, max = 20_000) int from,
            @ForAll @IntRange(min = -1, max = 5) int decade,
            @ForAll @DoubleRange(min = 1.5, max = 1e7) double factor,
            @ForAll @IntRange(min = 1, max = 8) int names,
            @ForAll @StringLength(max = 80) String name) {
        double span = 1.7 * Math.pow(10, decade);
        List<PlotCurve> curves = IntStream.range(0, names)
                .mapToObj(i -> new PlotCurve(name + i, LOOKS.get(i), List.of(new PlotCurve.Point(from, 1))))
                .toList();
        Svg svg = picture(Axis.linear("x, m", from, from + span), Axis.logarithmic("y, s", 1, factor), curves);
        assertThat(Labels.of(svg.bytes()).collisions()).isEmpty();
    }

    @Test
    void aCurveRunsFromCornerToCorner() {
        Axis x = Axis.linear("x", 0, 10);
        Axis y = Axis.logarithmic("y", 1, 100);
        PlotCurve curve = new PlotCurve(
                "c",
                PlotCurve.Look.MAIN,
                List.of(new PlotCurve.Point(0, 1), new PlotCurve.Point(5, 10), new PlotCurve.Point(10, 100)));
        Labels read = Labels.of(picture(x, y, List.of(curve)).bytes());
        Element area = (Element)
                ((Element) read.root().getElementsByTagName("clipPath").item(0))
                        .getElementsByTagName("rect")
                        .item(0);
        double left = Double.parseDouble(area.getAttribute("x"));
        double top = Double.parseDouble(area.getAttribute("y"));
        double width = Double.parseDouble(area.getAttribute("width"));
        double height = Double.parseDouble(area.getAttribute("height"));
        double[] places = path(read);
        double[] corners = {left, top + height, left + width / 2, top + height / 2, left + width, top};
        assertThat(places).containsExactly(corners, offset(0.011));
    }

    private static double[] path(Labels read) {
        NodeList paths = read.root().getElementsByTagName("path");
        String path = ((Element) paths.item(0)).getAttribute("d");
        return Arrays.stream(path.substring(1).split("[L ]"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    @Test
    void linesDifferInPatternOrWidthNotInColourAlone() {
        assertThat(PlotCurve.Look.values())
                .filteredOn(look -> look != PlotCurve.Look.MARK)
                .extracting(look -> List.of(look.attributes()).stream()
                        .filter(value -> !String.valueOf(value).startsWith("#"))
                        .toList())
                .doesNotHaveDuplicates();
    }
}
