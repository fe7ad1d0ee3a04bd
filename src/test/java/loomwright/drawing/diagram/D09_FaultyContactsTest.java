package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Switch;
import loomwright.comparison.PropertyWording;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.State;
import loomwright.drawing.diagram.Shape.Paint;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A contact that the plan states to be faulty is drawn as it is solved, with the sign of a fault and a label. */
class D09_FaultyContactsTest {
    private static final Pattern STROKE = Pattern.compile("M([-.0-9]+) ([-.0-9]+)L([-.0-9]+) ([-.0-9]+)");

    private static Plan lights(String position, String faults) {
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'switch','id':'lights','terminals':['30','58','56'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','58','56']]}],'position':'"
                        + position + "','contactFaults':[" + faults + "]},"
                        + "{'kind':'load','id':'side','resistanceOhm':12},{'kind':'load','id':'head','resistanceOhm':2}",
                "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W1','from':'battery.plus','to':'lights.30','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'lights.58','to':'side.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'lights.56','to':'head.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'side.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'head.b','to':'body.31','resistanceOhm':0.01}");
    }

    /** From and to of the strokes of the switch in one paint, x and y by turns. */
    private static List<double[]> strokes(Drawing drawing, Paint paint) {
        return Drawn.symbol(drawing, "lights").shapes().stream()
                .filter(shape -> shape.paint() == paint)
                .flatMap(shape -> STROKE.matcher(shape.path()).results())
                .map(D09_FaultyContactsTest::ends)
                .toList();
    }

    private static double[] ends(MatchResult stroke) {
        return new double[] {
            Double.parseDouble(stroke.group(1)),
            Double.parseDouble(stroke.group(2)),
            Double.parseDouble(stroke.group(3)),
            Double.parseDouble(stroke.group(4))
        };
    }

    private static boolean isLive(Drawing drawing, String wire) {
        Line line = Drawn.wire(drawing, wire);
        return line.state() == State.LIVE;
    }

    /** Upright blades are closed, slanted ones open, level strokes are bridges: as many as what the lamps show. */
    @ParameterizedTest
    @CsvSource({
        "off, stuck, 30, 56, '', 1, 0",
        "side, stuck, 30, 56, '', 2, 0",
        "head, open, 30, 56, '', 1, 0",
        "head, worn, 30, 56, ',\"resistanceOhm\":2', 2, 0",
        "side, worn, 30, 56, ',\"resistanceOhm\":2', 1, 0",
        "side, bridged, 58, 56, '', 1, 1",
        "side, bridged, 58, 56, ',\"resistanceOhm\":2', 1, 1",
        "off, bridged, 58, 56, '', 0, 1",
    })
    void itIsDrawnAsItIsSolved(
            String position, String state, String from, String to, String ohm, int closed, int bridges) {
        Plan plan = lights(position, "{'state':'" + state + "','between':['" + from + "','" + to + "']" + ohm + "}");
        Drawing drawing = Drawn.of(plan, Step.RUN);
        List<double[]> blades = strokes(drawing, Paint.THICK);
        assertThat(blades.stream().filter(xy -> xy[0] == xy[2])).hasSize(closed);
        assertThat(blades.stream().filter(xy -> xy[1] == xy[3])).hasSize(bridges);
        assertThat(blades).as("each contact has a blade").hasSize(2 + bridges);
        int live = (isLive(drawing, "W2") ? 1 : 0) + (isLive(drawing, "W3") ? 1 : 0);
        assertThat(live).isEqualTo(position.equals("off") ? closed : closed + bridges);
    }

    /** Two fed terminals that a position joins have a level stroke between them, as batteries in parallel. */
    @ParameterizedTest
    @CsvSource({"apart, 0", "parallel, 1"})
    void fedTerminalsThatAreJoinedAreDrawnSo(String position, int strokes) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'one'},{'kind':'battery','id':'two'},{'kind':'earth','id':'body'},"
                        + "{'kind':'switch','id':'lights','terminals':['A','B'],'position':'" + position
                        + "','positions':[{'name':'apart','joins':[]},{'name':'parallel','joins':[['A','B']]}]}",
                "{'id':'W1','from':'one.minus','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'two.minus','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'one.plus','to':'lights.A','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'two.plus','to':'lights.B','resistanceOhm':0.01}");
        assertThat(strokes(Drawn.of(plan, Step.RUN), Paint.THICK).stream().filter(xy -> xy[1] == xy[3]))
                .hasSize(strokes);
    }

    @Test
    void theSwitchHasTheSignOfAFaultAndItsLabelIfTheContactIsFaultyAndElseNone() {
        Plan plan = lights("off", "{'state':'stuck','between':['30','56']}");
        Switch.ContactFault fault =
                plan.listParts(Switch.class).get(0).faults().findFirst().orElseThrow();
        Drawing faulty = Drawn.of(plan, Step.RUN);
        Drawing sound = Drawn.of(lights("off", ""), Step.RUN);
        assertThat(String.join(" ", Drawn.texts(faulty, "lights")).replace(TextLines.TIE, ' '))
                .contains(PropertyWording.contact(fault));
        assertThat(strokes(faulty, Paint.LINE))
                .hasSize(strokes(sound, Paint.LINE).size() + 2);
        assertThat(Room.overlaps(faulty)).isEmpty();
    }
}
