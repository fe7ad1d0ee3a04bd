package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import loomwright.answer.Progress;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Wire;
import loomwright.drawing.diagram.DiagramOptions.Marks;
import loomwright.drawing.diagram.Drawing.Arrow;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.State;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A drawing tells all that the plan and its solution say. */
class D03_ContentTest {
    /** 12 V through 1 ohm of wire into 5 ohm: 2 A and 10 V at the load, by Ohm's law. */
    private static final Plan ONE_LOAD = Plans.parse("{'schema':'loomwright/plan/1','name':'One load',"
            + "'system':{'nominalVoltageV':12},'conditions':{'run':{'emfV':12,'internalResistanceOhm':0}},"
            + "'parts':[{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
            + "{'kind':'load','id':'horn','label':'Horn','resistanceOhm':5,'meantLive':['run']}],"
            + "'wires':[{'id':'W1','from':'battery.plus','to':'horn.a','resistanceOhm':1,'colour':'RDWH'},"
            + "{'id':'W2','from':'horn.b','to':'body.31','resistanceOhm':1e-6,'colour':'BK'},"
            + "{'id':'W3','from':'battery.minus','to':'body.31','size':'16 mm2','lengthM':0.001}]}");

    static Stream<String> examples() {
        return Drawn.EXAMPLES.stream();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void eachPartAndEachWireIsThereWithItsNameAndItsEndsAtItsTerminals(String name) {
        Plan plan = Plans.example(name);
        Drawing drawing = Drawn.of(plan, Step.RUN);
        plan.parts().forEach(part -> {
            assertThat(Drawn.symbol(drawing, part.id()).words()).contains(part.displayName());
            assertThat(Drawn.texts(drawing, part.id())).isNotEmpty();
        });
        plan.wires().forEach(wire -> {
            Line line = Drawn.wire(drawing, wire.id());
            assertThat(Drawn.texts(drawing, wire.id())).contains(wire.id(), Wordings.conductor(wire));
            assertThat(pins(drawing, wire.from().part()))
                    .anyMatch(pin -> near(pin, line.points().get(0)));
            assertThat(pins(drawing, wire.to().part()))
                    .anyMatch(pin -> near(pin, line.points().get(line.points().size() - 1)));
        });
    }

    private static List<DiagramPoint> pins(Drawing drawing, String part) {
        return drawing.symbols().stream()
                .filter(symbol -> symbol.ids().contains(part))
                .flatMap(symbol -> symbol.pins().stream())
                .map(Drawing.Pin::at)
                .toList();
    }

    /** The leads of a terminal stand side by side. */
    private static boolean near(DiagramPoint pin, DiagramPoint end) {
        double right = end.x() - pin.x();
        return Math.abs(end.y() - pin.y()) < 1e-6 && right > -1e-6 && right < 4 * Setting.LEAD_PX;
    }

    @Test
    void voltsAndAmpsAreThoseOfOhmsLaw() {
        Drawing drawing = Drawn.of(ONE_LOAD, Step.RUN);
        assertThat(Drawn.texts(drawing, "W1")).containsExactly("W1", "2.00 A", "RDWH 1 Ω");
        assertThat(Drawn.texts(drawing, "horn")).contains("Horn", "10.0 V", "10.0 V " + FeedStrength.OPERATES.text());
        assertThat(Drawn.texts(drawing, "battery")).contains("12.0 V");
        assertThat(Drawn.wire(drawing, "W1").colours()).containsExactly("RD", "WH");
    }

    @Test
    void arrowsPointTheWayTheCurrentFlowsAndLinesTellLiveFromReturnFromDead() {
        Drawing drawing = Drawn.of(ONE_LOAD, Step.RUN);
        Line feed = Drawn.wire(drawing, "W1");
        assertThat(feed.state()).isEqualTo(State.LIVE);
        assertThat(direction(feed)).isEqualTo(direction(feed.points()));
        assertThat(Drawn.wire(drawing, "W2").state()).isEqualTo(State.RETURN);
        Line back = Drawn.wire(drawing, "W3");
        assertThat(back.state()).isEqualTo(State.RETURN);
        // Drawn from the pole to the earth; the current comes back the other way.
        assertThat(direction(back)).isEqualTo(-direction(back.points()));
        Drawing off = Drawn.example("sandpiper-as-built", Step.OFF);
        assertThat(Drawn.wire(off, "W9").state()).isEqualTo(State.DEAD);
        assertThat(Drawn.wire(off, "W9").arrow()).isNull();
    }

    private static double direction(Line wire) {
        Arrow arrow = Objects.requireNonNull(wire.arrow());
        return Math.signum(arrow.dy());
    }

    private static double direction(List<DiagramPoint> points) {
        return Math.signum(points.get(points.size() - 1).y() - points.get(0).y());
    }

    @Test
    void placesAreTheSameInAllSteps() {
        Drawing off = Drawn.example("sandpiper-bypass-relay", Step.OFF);
        Drawing crank = Drawn.example("sandpiper-bypass-relay", Step.CRANK);
        assertThat(crank.wires().stream().map(Line::points).toList())
                .isEqualTo(off.wires().stream().map(Line::points).toList());
        assertThat(crank.symbols().stream().map(Drawing.Symbol::box).toList())
                .isEqualTo(off.symbols().stream().map(Drawing.Symbol::box).toList());
    }

    @Test
    void contactsStandAsInTheStep() {
        Drawing run = Drawn.example("sandpiper-bypass-relay", Step.RUN);
        Drawing crank = Drawn.example("sandpiper-bypass-relay", Step.CRANK);
        for (String moved : List.of("bypass-relay", "solenoid", "key")) {
            assertThat(Drawn.symbol(crank, moved).shapes())
                    .as(moved)
                    .isNotEqualTo(Drawn.symbol(run, moved).shapes());
        }
        assertThat(Drawn.texts(run, "bypass-relay")).anyMatch(text -> text.endsWith("not pulled in"));
        assertThat(Drawn.texts(crank, "bypass-relay")).anyMatch(text -> text.endsWith("V pulled in"));
        assertThat(Drawn.texts(crank, "key")).contains("start");
    }

    @Test
    void eachEarthedWireHasAnEarthOfItsOwn() {
        Plan plan = Plans.example("sandpiper-as-built");
        long ends = plan.wires().stream()
                .filter(wire -> plan.findPart(wire.to().part()).orElseThrow() instanceof EarthPoint)
                .count();
        long signs = Drawn.of(plan, Step.RUN).symbols().stream()
                .filter(symbol ->
                        symbol.ids().contains("earth-body") || symbol.ids().contains("earth-engine"))
                .count();
        assertThat(signs).isEqualTo(ends).isGreaterThan(8);
    }

    @Test
    void theBackfeedOfTheUnguardedBypassStandsOut() {
        Drawing drawing = Drawn.example("sandpiper-unguarded-bypass", Step.RUN, Marks.BACKFEED);
        // By way of the ballast's tap into the starter solenoid, as the backfeed search tells it.
        for (String id : List.of("W4", "W5", "W6", "W7", "W8", "W35", "W16")) {
            assertThat(Drawn.wire(drawing, id).emphasis()).as(id).isEqualTo(Emphasis.BACKFEED);
        }
        assertThat(Drawn.wire(drawing, "W23").emphasis()).isEqualTo(Emphasis.NONE);
        assertThat(Drawn.symbol(drawing, "solenoid").emphasis()).isEqualTo(Emphasis.BACKFEED);
        assertThat(drawing.badges()).anyMatch(badge -> badge.owner().equals("solenoid"));
        assertThat(Objects.requireNonNull(Drawn.wire(drawing, "W35").arrow()).againstFeed())
                .isTrue();
        // That current needs the contact points open, so they are drawn open, and the sheet says so.
        assertThat(drawing.texts()).anyMatch(text -> text.text().contains("Contact points: open"));
    }

    @Test
    void aFindingHasItsNumberAtEachThingItIsAboutAndItsSentenceBelow() {
        Drawing drawing = Drawn.example("otter-6v-positive-earth", Step.RUN, Marks.FINDINGS);
        List<Badge> badges = drawing.badges();
        assertThat(badges.stream().filter(b -> b.owner().isEmpty()).map(Badge::number))
                .startsWith(1, 2, 3);
        assertThat(badges.stream().filter(b -> !b.owner().isEmpty()).map(Badge::number))
                .contains(1, 2, 3);
        assertThat(drawing.texts())
                .anyMatch(t -> t.role() == Text.Role.LEGEND && t.text().contains("main fuse"));
        assertThat(Drawn.example("otter-6v-positive-earth", Step.RUN, Marks.NONE)
                        .badges())
                .isEmpty();
    }

    @Test
    void coloursAreWrittenOutWhereThatIsAskedFor() {
        DiagramOptions words = new DiagramOptions(
                Step.RUN, List.of(Marks.NONE), null, null, null, null, null, null, DiagramOptions.Colours.WORDS, null);
        Plan plan = Plans.example("sandpiper-as-built");
        Wire wire = plan.wires().stream()
                .filter(one -> one.colour() != null && one.colour().length() > 2)
                .findFirst()
                .orElseThrow();

        Drawing drawn = Diagram.of(plan, words, Drawn.LIMITS, NetworkLimits.defaults(), Progress.UNWATCHED)
                .drawing();

        assertThat(String.join(" ", Drawn.texts(drawn, wire.id()))).contains(Insulation.words(wire.colour()));
        assertThat(String.join(" ", Drawn.texts(Drawn.of(plan, Step.RUN, Marks.NONE), wire.id())))
                .contains(wire.colour())
                .doesNotContain(Insulation.words(wire.colour()));
    }
}
