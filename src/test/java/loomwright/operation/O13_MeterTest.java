package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Relay;
import org.junit.jupiter.api.Test;

/** What a meter shows between two points: volts of the circuit at work, ohms with the battery disconnected. */
class O13_MeterTest {
    private static final String WIRE = "'resistanceOhm':0.000001";
    private static final Plan TOURER = Plans.example("sandpiper-as-built");

    @Test
    void voltsToEarthAndAcrossAreThoseOfTheSolvedStep() {
        SolvedStep run = Solved.of(TOURER).in(Step.RUN);
        double feedV = Meter.volts(run, Probe.toEarth("coil.15")).orElseThrow();
        double returnV = Meter.volts(run, Probe.toEarth("coil.1")).orElseThrow();
        assertThat(Meter.volts(run, Probe.of("coil.15", "coil.1")).orElseThrow())
                .isCloseTo(feedV - returnV, within(1e-12));
        assertThat(Meter.volts(run, Probe.of("coil.1", "coil.15")).orElseThrow())
                .isCloseTo(returnV - feedV, within(1e-12));
    }

    @Test
    void betweenPointsThatNothingJoinsAMeterShowsNothingSteady() {
        SolvedStep off = Solved.of(TOURER).in(Step.OFF);
        assertThat(Meter.volts(off, Probe.of("key.75", "battery.plus"))).isPresent();
        Plan loose = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'joint','id':'J','terminals':['1','2']}",
                "{'id':'W1','from':'B.minus','to':'E.31'," + WIRE + "}");
        assertThat(Meter.volts(Solved.of(loose).in(Step.OFF), Probe.toEarth("J.1")))
                .isEmpty();
    }

    @Test
    void resistancesInParallel() {
        // OpenStax University Physics vol. 2, 10.2, parallel example: 1.00, 2.00 and 2.00 ohm in parallel are 0.50 ohm.
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'resistor','id':'R1','resistanceOhm':1},{'kind':'resistor','id':'R2','resistanceOhm':2},"
                        + "{'kind':'resistor','id':'R3','resistanceOhm':2},"
                        + "{'kind':'joint','id':'J','terminals':['0','1','2','3']}",
                "{'id':'W0','from':'B.plus','to':'J.0'," + WIRE + "},{'id':'W1','from':'J.1','to':'R1.a'," + WIRE
                        + "},{'id':'W2','from':'J.2','to':'R2.a'," + WIRE + "},{'id':'W3','from':'J.3','to':'R3.a',"
                        + WIRE + "},{'id':'W4','from':'R1.b','to':'E.31'," + WIRE + "},{'id':'W5','from':'R2.b',"
                        + "'to':'E.31'," + WIRE + "},{'id':'W6','from':'R3.b','to':'E.31'," + WIRE + "},"
                        + "{'id':'W7','from':'B.minus','to':'E.31'," + WIRE + "}");
        assertThat(Meter.ohms(plan, Condition.OFF, Probe.toEarth("J.0")).orElseThrow())
                .isCloseTo(0.5, within(1e-5));
        assertThat(Meter.ohms(plan, Condition.OFF, Probe.of("J.0", "J.2"))).hasValue(0);
    }

    @Test
    void theKeyStandsWhereTheConditionHasItThoughTheEngineIsStopped() {
        Probe primary = Probe.toEarth("key.15");
        // Ballast 1.5, coil 1.5 and the contacts 0.03 ohm; the warning lamp and the field winding beside them.
        double lampOhm = 0.350 / 4.80 * 144 / 2.2 + 4;
        double chainOhm = 1.5 + 1.5 + 0.03;
        double expectedOhm = lampOhm * chainOhm / (lampOhm + chainOhm);
        assertThat(Meter.ohms(TOURER, Condition.OFF, primary).orElseThrow()).isCloseTo(expectedOhm, within(0.06));
        // Key on: also through the blower, 2.4 ohm; the contact joins the stud as well, where nothing leads to earth.
        double withBlowerOhm = expectedOhm * 2.4 / (expectedOhm + 2.4);
        assertThat(Meter.ohms(TOURER, Condition.RUN, primary).orElseThrow()).isCloseTo(withBlowerOhm, within(0.06));
        assertThat(Meter.ohms(TOURER, Condition.RUNNING, primary))
                .isEqualTo(Meter.ohms(TOURER, Condition.RUN, primary));
    }

    @Test
    void relaysAreReleasedAndElectronicsOpen() {
        Plan relay = Plans.example("sandpiper-bypass-relay");
        String id = relay.listParts(Relay.class).get(0).id();
        DisconnectedPlan dead = DisconnectedPlan.of(relay, Condition.CRANK);
        assertThat(dead.ohms(Probe.of(id + ".30", id + ".87a")).orElseThrow()).isCloseTo(0.0015, within(1e-9));
        assertThat(dead.ohms(Probe.of(id + ".30", id + ".87")).orElse(1e9)).isGreaterThan(0.1);
        Plan module = Plans.example("sandpiper-electronic-module");
        // Not through the module, but by coil, warning lamp (cold) and field winding.
        assertThat(Meter.ohms(module, Condition.OFF, Probe.toEarth("coil.1")).orElseThrow())
                .isCloseTo(0.8 + 0.350 / 4.80 * 144 / 2.2 + 4, within(0.15));
    }

    @Test
    void aLampOfAbsurdRatingsIsAShort() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'lamp','id':'L','ratedV':0.01,'ratedW':50000,'meantLive':[]}",
                "{'id':'W','from':'battery.minus','to':'L.b','resistanceOhm':0.5}");
        DisconnectedPlan dead = DisconnectedPlan.of(plan, Condition.OFF);
        assertThat(dead.ohms(Probe.of("battery.minus", "L.a")).orElseThrow()).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void leadsTurnedRoundShowTheSameOhms() {
        DisconnectedPlan dead = DisconnectedPlan.of(TOURER, Condition.RUN);
        List<String> points = List.of("key.15", "ballast.tap1", "coil.1", "head-left.a", "battery.plus", "earth");
        for (String one : points) {
            for (String other : points) {
                var there = dead.ohms(Probe.of(one, other));
                var back = dead.ohms(Probe.of(other, one));
                assertThat(there.isPresent()).isEqualTo(back.isPresent());
                assertThat(there.orElse(0)).isCloseTo(back.orElse(0), within(1e-9));
            }
        }
    }

    @Test
    void aPointIsATerminalOfThePlanOrEarth() {
        assertThat(Point.parse("earth")).isEqualTo(Point.EARTH).hasToString("earth");
        assertThat(Point.parse("coil.15")).hasToString("coil.15");
        assertThatThrownBy(() -> Point.parse("chassis"))
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        e -> assertThat(e.faults())
                                .extracting(InputError::code)
                                .containsExactly(InputError.Code.MALFORMED));
        assertThat(Point.parse("coil.16")
                        .check(TOURER, "/from", new InputErrors())
                        .list())
                .extracting(InputError::code)
                .containsExactly(InputError.Code.UNKNOWN_REFERENCE);
        assertThat(Point.EARTH.check(TOURER, "/to", new InputErrors()).isEmpty())
                .isTrue();
    }
}
