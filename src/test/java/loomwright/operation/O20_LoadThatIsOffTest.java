package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 20: a load that is off lets a millionth through, so that it senses its volts wherever a diode lies. */
class O20_LoadThatIsOffTest {
    private static final String BATTERY = "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
            + "{'kind':'diode','id':'D'},{'kind':'load','id':'L','meantLive':['run'],";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "'powerW':30",
                "'resistanceOhm':5,'minimumV':6",
                "'currentA':2.5,'minimumV':6",
                "'powerW':30,'maximumV':16"
            })
    void itIsOfNoMatterWhetherADiodeLiesInItsFeedOrItsReturn(String figures) {
        Solved ahead = Solved.of(Plans.of(
                BATTERY + figures + "}", wires("B.plus D.anode", "D.cathode L.a", "L.b E.31", "B.minus E.31")));
        Solved behind = Solved.of(Plans.of(
                BATTERY + figures + "}", wires("B.plus L.a", "L.b D.anode", "D.cathode E.31", "B.minus E.31")));
        assertThat(ahead.acrossV(Step.RUN, "L")).isBetween(11.5, 12.0);
        assertThat(behind.acrossV(Step.RUN, "L")).isCloseTo(ahead.acrossV(Step.RUN, "L"), within(1e-6));
        assertThat(behind.currentA(Step.RUN, "L")).isCloseTo(ahead.currentA(Step.RUN, "L"), within(1e-6));
        assertThat(behind.activity(Step.RUN, "L")).isEqualTo(FeedStrength.OPERATES);
    }

    /** 12.6 V is below the least of 13 V: 12.6 V times a millionth of 1/5 S, of 30 W / (13 V)², of 2.6 A / 13 V. */
    @ParameterizedTest
    @CsvSource({
        "'resistanceOhm':5, 2.52e-6",
        "'powerW':30, 2.2367e-6",
        "'currentA':2.6, 2.52e-6",
    })
    void offItTakesAMillionthOfWhatItWouldAtItsLeastVolts(String figures, double idleA) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'load','id':'L','meantLive':[],"
                        + figures + ",'minimumV':13}",
                wires("B.plus L.a", "L.b E.31", "B.minus E.31"));
        SolvedStep solved = Solved.of(plan).in(Step.RUN);
        assertThat(solved.currentA(plan.findWire("W1").orElseThrow())).isCloseTo(idleA, within(1e-9));
        assertThat(solved.activity(
                        (loomwright.circuit.Consumer) plan.findPart("L").orElseThrow()))
                .isEqualTo(FeedStrength.DEAD);
    }

    @ParameterizedTest
    @ValueSource(strings = {"'resistanceOhm':5", "'powerW':30", "'currentA':2.5,'minimumV':3"})
    void aboveItsMostEveryKindOfLoadIsOff(String figures) {
        Solved solved = Solved.of(Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'load','id':'L','meantLive':[],"
                        + figures + ",'maximumV':11}",
                wires("B.plus L.a", "L.b E.31", "B.minus E.31")));
        assertThat(Math.abs(solved.currentA(Step.RUN, "L"))).isLessThan(1e-4);
        assertThat(solved.currentA(Step.CRANK, "L")).as("at 10 V").isGreaterThan(1.9);
    }

    @Test
    void twoLoadsThatAreOffInSeriesShareTheVoltsByTheirOhms() {
        Solved solved = Solved.of(Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'load','id':'one','resistanceOhm':6,'minimumV':11,'meantLive':[]},"
                        + "{'kind':'load','id':'two','resistanceOhm':3,'minimumV':11,'meantLive':[]}",
                wires("B.plus one.a", "one.b two.a", "two.b E.31", "B.minus E.31")));
        assertThat(solved.acrossV(Step.OFF, "one")).isCloseTo(2 * solved.acrossV(Step.OFF, "two"), within(1e-6));
    }
}
