package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 30: electronic loads that work one way round only. */
class O30_PolarisedLoadTest {
    private static Solved radio(boolean negative, String figures, double emfV) {
        return Solved.of(Plans.of(
                12,
                negative ? "negative" : "positive",
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':" + emfV
                        + ",'internalResistanceOhm':0.01},{'kind':'load','id':'radio','meantLive':['run']," + figures
                        + "}",
                wires(
                        negative ? "B.minus M.31" : "B.plus M.31",
                        negative ? "B.plus radio.a" : "B.minus radio.a",
                        "radio.b M.31")));
    }

    /** Cable maker's catalogue: a radio takes 2 to 5 A. By whichever figure it is given, it takes that one way round. */
    @ParameterizedTest
    @CsvSource({
        "true, a, currentA, 3, 3", "true, b, currentA, 3, 0", "false, b, currentA, 3, 3", "false, a, currentA, 3, 0",
        "true, a, powerW, 36, 3", "true, b, powerW, 36, 0", "true, a, resistanceOhm, 4, 3",
                "false, a, resistanceOhm, 4, 0"
    })
    void itTakesItsCurrentOneWayRoundOnly(boolean negative, String plus, String figure, double value, double currentA) {
        Solved car = radio(negative, "'" + figure + "':" + value + ",'plus':'" + plus + "'", 12);
        assertThat(Math.abs(car.currentA(Step.RUN, "radio"))).isCloseTo(currentA, within(0.02));
        assertThat(car.activity(Step.RUN, "radio")).isEqualTo(currentA > 0 ? FeedStrength.OPERATES : FeedStrength.DEAD);
    }

    @Test
    void belowHalfTheNominalVoltsItTakesNothing() {
        assertThat(radio(true, "'resistanceOhm':4,'plus':'a'", 5.9).currentA(Step.RUN, "radio"))
                .isCloseTo(0, within(1e-4));
        assertThat(radio(true, "'resistanceOhm':4", 5.9).currentA(Step.RUN, "radio"))
                .isCloseTo(1.47, within(0.01));
    }
}
