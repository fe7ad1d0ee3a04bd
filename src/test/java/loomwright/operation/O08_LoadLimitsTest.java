package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Loads of constant ohms, amps or watts take nothing outside their voltage limits. */
class O08_LoadLimitsTest {
    @Test
    void constantWattsTakeMoreCurrentWhenTheVoltageFalls() {
        Solved solved = load("'powerW':60");
        assertThat(solved.acrossV(Step.RUN, "L") * solved.currentA(Step.RUN, "L"))
                .isCloseTo(60, within(1e-6));
        assertThat(solved.currentA(Step.CRANK, "L")).isGreaterThan(solved.currentA(Step.RUN, "L"));
    }

    /** Off, a load keeps a millionth of its conductance. */
    private static final double IDLE = 1e-6;

    @Test
    void constantAmpsAreTheSameAtAnyVoltageAboveTheMinimum() {
        Solved solved = load("'currentA':4,'minimumV':6");
        assertThat(solved.currentA(Step.RUN, "L")).isCloseTo(4, within(1e-9));
        assertThat(solved.currentA(Step.CRANK, "L")).isCloseTo(4, within(1e-9));
    }

    @Test
    void belowItsMinimumALoadTakesNextToNothing() {
        Solved solved = load("'resistanceOhm':4,'minimumV':11");
        assertThat(solved.currentA(Step.RUN, "L")).isGreaterThan(3);
        assertThat(solved.currentA(Step.CRANK, "L")).isCloseTo(10 * IDLE / 4, within(1e-10)); // 10 V
    }

    @Test
    void aboveItsMaximumALoadTakesNextToNothing() {
        Solved solved = load("'resistanceOhm':4,'maximumV':13");
        assertThat(solved.currentA(Step.RUN, "L")).isGreaterThan(3);
        assertThat(solved.currentA(Step.RUNNING, "L")).isCloseTo(14.2 * IDLE / 4, within(1e-10)); // 14.2 V
    }

    @Test
    void aMaximumHoldsForConstantAmpsToo() {
        Solved solved = load("'currentA':4,'maximumV':13");
        assertThat(solved.currentA(Step.RUN, "L")).isCloseTo(4, within(1e-9));
        assertThat(solved.currentA(Step.RUNNING, "L")).isLessThan(1e-4); // 14.2 V
    }

    /** A 30 W load, a diode and earth in series: off, the load has no volts, on whichever side the diode is. */
    @ParameterizedTest
    @CsvSource({
        "'battery.plus L.a', 'L.b D.anode', 'D.cathode body.31'",
        "'battery.plus D.anode', 'D.cathode L.a', 'L.b body.31'"
    })
    void theOrderOfALoadAndADiodeInSeriesDoesNotMatter(String first, String second, String third) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'load','id':'L','powerW':30,'meantLive':['off']},{'kind':'diode','id':'D'}",
                wires(first, second, third, "battery.minus body.31"));
        Solved solved = Solved.of(plan);
        assertThat(solved.currentA(Step.OFF, "L")).isBetween(2.4, 2.7);
    }

    /** Half the nominal voltage would be more than such a load is made for. */
    @Test
    void wattsForFewVoltsWorkBelowHalfTheNominalVoltage() {
        Solved solved = Solved.of(Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'resistor','id':'R','resistanceOhm':10},{'kind':'resistor','id':'S','resistanceOhm':4},"
                        + "{'kind':'load','id':'L','powerW':0.5,'maximumV':5,'meantLive':[]}",
                wires("B.plus R.a", "R.b S.a", "S.b E.31", "R.b L.a", "L.b E.31", "B.minus E.31")));
        assertThat(solved.acrossV(Step.RUN, "L")).isBetween(2.5, 5.0);
        assertThat(solved.acrossV(Step.RUN, "L") * solved.currentA(Step.RUN, "L"))
                .isCloseTo(0.5, within(1e-6));
    }

    private static Solved load(String load) {
        return Solved.of(Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'load','id':'L'," + load
                        + ",'meantLive':[]}",
                wires("B.plus L.a", "L.b E.31", "B.minus E.31")));
    }
}
