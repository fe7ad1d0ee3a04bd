package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 28: gauges behind a stabiliser, and lamps of light-emitting diodes. */
class O28_GaugesAndLedLampsTest {
    private static final String SUPPLY =
            "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':%s," + "'internalResistanceOhm':0.01},";

    private static Solved gauge(double emfV, boolean negative, boolean earthed) {
        String parts = String.format(Locale.ROOT, SUPPLY, emfV)
                + "{'kind':'stabiliser','id':'S'},{'kind':'load','id':'gauge','resistanceOhm':65},"
                + "{'kind':'resistor','id':'sender','resistanceOhm':35}";
        List<String> ends = new ArrayList<>(List.of(
                negative ? "B.minus M.31" : "B.plus M.31",
                negative ? "B.plus S.B" : "B.minus S.B",
                "S.I gauge.a",
                "gauge.b sender.a",
                "sender.b M.31"));
        if (earthed) {
            ends.add("S.E M.31");
        }
        return Solved.of(Plans.of(12, negative ? "negative" : "positive", parts, wires(ends.toArray(String[]::new))));
    }

    /** Workshop page of a club: mean output 10 V, on for 77 % of the time at 13.0 V and 87 % at 11.5 V. */
    @ParameterizedTest
    @CsvSource({"11.5,true", "12.6,true", "13.0,true", "14.4,true", "13.0,false"})
    void aStabiliserHoldsTenVoltsWhateverTheBatteryHas(double emfV, boolean negative) {
        Solved car = gauge(emfV, negative, true);
        assertThat(Math.abs(car.voltageV(Step.RUN, "S.I"))).isCloseTo(10, within(0.06));
        // 10 V over gauge and sender, 65 and 35 ohm.
        assertThat(Math.abs(car.currentA(Step.RUN, "gauge"))).isCloseTo(0.1, within(0.001));
        assertThat(car.state(Step.RUN, "S")).isEqualTo("regulating");
    }

    /** In series: what the gauge takes and the winding of 65 ohm, whatever the volts of the feed. */
    @ParameterizedTest
    @CsvSource({"11.5,true", "13.0,true", "14.4,false"})
    void itTakesFromItsFeedWhatItsGaugesTake(double emfV, boolean negative) {
        Solved car = gauge(emfV, negative, true);
        assertThat(Math.abs(car.currentA(Step.RUN, negative ? "B.plus" : "B.minus", "S.B")))
                .isCloseTo(0.1 + emfV / 65, within(0.005));
    }

    @Test
    void withSeveralGaugesTheOutputKeepsItsVolts() {
        String parts = String.format(Locale.ROOT, SUPPLY, 13.0)
                + "{'kind':'stabiliser','id':'S'},{'kind':'load','id':'gauge','resistanceOhm':65},"
                + "{'kind':'load','id':'other','resistanceOhm':40},"
                + "{'kind':'switch','id':'K','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['a','b']]}]}";
        Solved car = Solved.of(Plans.of(
                12,
                "negative",
                parts,
                wires(
                        "B.minus M.31",
                        "B.plus S.B",
                        "S.I gauge.a",
                        "gauge.b M.31",
                        "S.I K.a",
                        "K.b other.a",
                        "other.b M.31",
                        "S.E M.31")));
        assertThat(car.voltageV(Step.RUN, "S.I")).isCloseTo(10, within(0.03));
        assertThat(car.currentA(Step.RUN, "gauge")).isCloseTo(10.0 / 65, within(0.001));
    }

    /** Swapped feed and output: nothing comes to the gauges. */
    @Test
    void backwardsItGivesNothing() {
        Solved car = Solved.of(Plans.of(
                12,
                "negative",
                String.format(Locale.ROOT, SUPPLY, 13.0)
                        + "{'kind':'stabiliser','id':'S'},{'kind':'load','id':'gauge','resistanceOhm':65}",
                wires("B.minus M.31", "B.plus S.I", "S.B gauge.a", "gauge.b M.31", "S.E M.31")));
        assertThat(car.currentA(Step.RUN, "gauge")).isCloseTo(0, within(1e-6));
        assertThat(car.in(Step.RUN).oscillating()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void withoutItsEarthTheGaugesHaveFullVolts(boolean negative) {
        Solved car = gauge(14, negative, false);
        assertThat(Math.abs(car.voltageV(Step.RUN, "S.I"))).isGreaterThan(13.9);
        assertThat(car.state(Step.RUN, "S")).isEqualTo("not-regulating");
    }

    private static Solved led(double emfV, boolean negative, String figures) {
        String parts = String.format(Locale.ROOT, SUPPLY, emfV) + "{'kind':'led','id':'led','meantLive':['run']"
                + figures + "}";
        return Solved.of(Plans.of(
                12,
                negative ? "negative" : "positive",
                parts,
                wires(
                        negative ? "B.minus M.31" : "B.plus M.31",
                        negative ? "B.plus led.a" : "B.minus led.a",
                        "led.b M.31")));
    }

    /** Maker's brochure: 0.23 A at 12 V. Practice: nothing below 6 to 7 V, current rises in proportion above. */
    @ParameterizedTest
    @CsvSource({"12, 0.23", "9.25, 0.115", "6, 0", "14.75, 0.345"})
    void theCurrentOfAnLedLampRisesInProportionAboveItsDiodes(double emfV, double currentA) {
        Solved car = led(emfV, true, ",'currentA':0.23");
        assertThat(car.currentA(Step.RUN, "led")).isCloseTo(currentA, within(0.001));
    }

    @Test
    void oneOfConstantCurrentTakesNoMore() {
        assertThat(led(14.75, true, ",'currentA':0.23,'constantCurrent':true").currentA(Step.RUN, "led"))
                .isCloseTo(0.23, within(1e-6));
    }

    /** Judged by its current, never by its volts: half of it from 9.25 V, a two hundredth from 6.53 V. */
    @ParameterizedTest
    @CsvSource({"9.4, OPERATES", "9.0, GLOWS", "6.6, GLOWS", "6.4, DEAD"})
    void itIsJudgedByItsCurrent(double emfV, FeedStrength strength) {
        assertThat(led(emfV, true, ",'currentA':0.23").activity(Step.RUN, "led"))
                .isEqualTo(strength);
    }

    /** After a change of earth it is the wrong way round. */
    @ParameterizedTest
    @CsvSource({"true, a, true", "true, b, false", "false, b, true", "false, a, false"})
    void theWrongWayRoundItIsDead(boolean negative, String plus, boolean lights) {
        Solved car = led(12.6, negative, ",'currentA':0.23,'plus':'" + plus + "'");
        assertThat(car.activity(Step.RUN, "led")).isEqualTo(lights ? FeedStrength.OPERATES : FeedStrength.DEAD);
    }
}
