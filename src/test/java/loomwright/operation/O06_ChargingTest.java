package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The alternator holds its voltage while the engine runs, and its warning lamp tells whether it does. */
class O06_ChargingTest {
    private final Solved solved = Solved.of(Plans.example("sandpiper-as-built"));

    @Test
    void theWarningLampIsLitThroughTheFieldWindingUntilItCharges() {
        assertThat(solved.activity(Step.RUN, "charge-lamp")).isEqualTo(FeedStrength.OPERATES);
        assertThat(solved.currentA(Step.RUN, "charge-lamp")).isPositive();
        assertThat(Math.abs(solved.acrossV(Step.RUNNING, "charge-lamp"))).isLessThan(0.5);
    }

    /**
     * The field takes 3.6 A at any system voltage, less than the 5 A of the exciter diodes: both ends of the lamp are live.
     * Whichever pole is earthed, the lamp hangs between the live one and D+.
     */
    @ParameterizedTest
    @CsvSource({
        "6, negative, minus, plus, B-, B+",
        "12, negative, minus, plus, B-, B+",
        "24, negative, minus, plus, B-, B+",
        "6, positive, plus, minus, B+, B-",
        "12, positive, plus, minus, B+, B-"
    })
    void theWarningLampGoesOutInEverySystem(
            double nominalV, String earth, String earthed, String live, String machineEarthed, String machineLive) {
        Solved plain = Solved.of(Plans.of(
                nominalV,
                earth,
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'alternator','id':'alt'},"
                        + "{'kind':'lamp','id':'charge','ratedV':" + nominalV + ",'ratedW':3,'meantLive':['run']}",
                "{'id':'W1','from':'battery." + earthed + "','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'alt." + machineEarthed + "','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'alt." + machineLive + "','to':'battery." + live
                        + "','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'battery." + live + "','to':'charge.a','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'charge.b','to':'alt.D+','resistanceOhm':0.01}"));
        assertThat(plain.activity(Step.RUN, "charge")).isEqualTo(FeedStrength.OPERATES);
        assertThat(Math.abs(plain.acrossV(Step.RUNNING, "charge"))).isLessThan(0.02 * nominalV);
    }

    @Test
    void theOutputStaysAtTheRegulatedVoltageLessItsSag() {
        double outputA = solved.currentA(Step.RUNNING, "alternator.B-", "alternator.B+");
        double acrossV =
                solved.voltageV(Step.RUNNING, "alternator.B+") - solved.voltageV(Step.RUNNING, "alternator.B-");
        assertThat(outputA).isBetween(0.0, 35.0);
        assertThat(acrossV).isCloseTo(14.2 - 0.02 * outputA, within(1e-9));
    }

    @Test
    void itTakesNoCurrentWhenItStands() {
        assertThat(solved.in(Step.OFF).branches())
                .noneMatch(b -> b.from().equals("alternator.B-") && b.to().equals("alternator.B+"));
    }

    @Test
    void justAfterTheKeyIsTurnedOffTheLampFeedsTheIgnitionFromDPlus() {
        assertThat(solved.currentA(Step.OFF_ENGINE_TURNING, "charge-lamp")).isNegative();
        assertThat(solved.activity(Step.OFF_ENGINE_TURNING, "coil")).isEqualTo(FeedStrength.LEAKS);
        assertThat(solved.activity(Step.OFF_AGAIN, "coil")).isEqualTo(FeedStrength.DEAD);
    }
}
