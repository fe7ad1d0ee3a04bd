package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.operation.PlanReadings.StepReadings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is joined to nothing floats, what is shorted is named. */
class O10_ShortsAndFloatingPartsTest {
    private static final String PARTS =
            "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'resistor','id':'R','resistanceOhm':10}";

    @Test
    void aPartJoinedToNothingFloatsAndIsNotLive() {
        StepReadings run = read(Plans.of(PARTS, wires("B.minus E.31")), Step.RUN);
        assertThat(run.nodes())
                .filteredOn(n -> n.node().startsWith("R."))
                .hasSize(2)
                .allSatisfy(n -> {
                    assertThat(n.floating()).isTrue();
                    assertThat(n.live()).isFalse();
                    assertThat(n.voltageV()).isNull();
                });
    }

    @Test
    void theOpenEndOfADiodeShowsTheVoltsBehindItThoughTheDiodeConductsNothing() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'diode','id':'D'},"
                        + "{'kind':'diode','id':'feeding'},{'kind':'resistor','id':'R','resistanceOhm':10},"
                        + "{'kind':'motor','id':'starter','resistanceOhm':0.05,'meantLive':['run']},"
                        + "{'kind':'switch','id':'S','terminals':['1','2'],'positions':[{'name':'out','joins':[]}],'position':'out'}",
                wires(
                        "B.minus E.31",
                        "B.plus D.anode",
                        "D.cathode S.1",
                        "B.plus feeding.anode",
                        "feeding.cathode R.a",
                        "R.b E.31",
                        "B.plus starter.33",
                        "starter.32 E.31"));
        StepReadings run = read(plan, Step.RUN);
        assertThat(run.parts())
                .filteredOn(p -> p.kind().equals("diode"))
                .extracting(PlanReadings.PartReading::state)
                .containsExactly("blocking", "conducting");
        assertThat(run.nodes())
                .filteredOn(n -> n.terminals().contains("S.1"))
                .singleElement()
                .satisfies(n -> {
                    double anodeV = Solved.of(plan).voltageV(Step.RUN, "D.anode");
                    assertThat(Objects.requireNonNull(n.voltageV())).isCloseTo(anodeV - 0.7, within(1e-9));
                });
    }

    @Test
    void withTheBatterysEarthStrapOffTheLoopStillWorksThoughAllOfItFloats() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'lamp','id':'L','ratedV':12,'ratedW':21,"
                        + "'meantLive':[]}",
                wires("B.plus L.a", "L.b B.minus"));
        Solved solved = Solved.of(plan);
        assertThat(solved.activity(Step.RUN, "L")).isEqualTo(FeedStrength.OPERATES);
        assertThat(solved.in(Step.RUN).voltageV(1)).isEmpty();
    }

    /** In every position of the key, with or without a starter in the plan, whichever pole is earthed. */
    @ParameterizedTest
    @CsvSource({"negative, plus, minus", "positive, minus, plus"})
    void aDeadShortNamesTheWayOfItsCurrent(String earth, String live, String earthed) {
        Solved solved = Solved.of(
                Plans.of(12, earth, PARTS, wires("B." + live + " R.a", "R.a E.31", "B." + earthed + " E.31")));
        for (Step step : Step.values()) {
            assertThat(solved.read(step).findings())
                    .as("%s", step)
                    .singleElement()
                    .satisfies(f -> {
                        assertThat(f.kind()).isEqualTo(StepFinding.Kind.DEAD_SHORT);
                        assertThat(f.ids()).containsExactly("W1", "W2", "W3");
                    });
        }
    }

    /** Each has half of the EMF and half of the resistance: while cranking that is no short, as it is none of one battery. */
    @Test
    void twoBatteriesInSeriesAreJudgedByTheirShareOfTheSupply() {
        Plan one = cranking("{'kind':'battery','id':'B'}", "B.minus E.31", "B.plus M.33", "M.32 E.31");
        Plan two = cranking(
                "{'kind':'battery','id':'B','nominalVoltageV':6},{'kind':'battery','id':'B2','nominalVoltageV':6}",
                "B.minus E.31",
                "B.plus B2.minus",
                "B2.plus M.33",
                "M.32 E.31");
        assertThat(read(one, Step.CRANK).findings()).isEmpty();
        assertThat(read(two, Step.CRANK).findings()).isEmpty();
    }

    @Test
    void aWireWithBothEndsOnTheChassisCarriesNothing() {
        Plan plan = Plans.of(
                PARTS + ",{'kind':'earth','id':'E2'}", wires("B.plus R.a", "R.b E.31", "B.minus E.31", "E.31 E2.31"));
        assertThat(read(plan, Step.RUN).wires().get(3).currentA()).isZero();
    }

    private static Plan cranking(String batteries, String... joined) {
        return Plans.parse("{'schema':'loomwright/plan/1','name':'t','system':{'nominalVoltageV':12},"
                + "'conditions':{'crank':{'emfV':12,'internalResistanceOhm':0.045}},'parts':["
                + batteries + ",{'kind':'earth','id':'E'},"
                + "{'kind':'motor','id':'M','resistanceOhm':0.06,'meantLive':['crank']}],'wires':["
                + wires(joined) + "]}");
    }

    private static StepReadings read(Plan plan, Step step) {
        return Solved.of(plan).read(step);
    }
}
