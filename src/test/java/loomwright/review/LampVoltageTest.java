package loomwright.review;

import static loomwright.message.MessageFinder.instant;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.Finding;
import loomwright.circuit.Plan;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** Lamps with far more volts than they are made for. */
class LampVoltageTest {
    private static Plan lamp(double ratedV, String meant) {
        return plan(
                "{'kind':'lamp','id':'lamp','ratedV':" + ratedV + ",'ratedW':10,'meantLive':[" + meant + "]}",
                "{'id':'W1','from':'battery.plus','to':'lamp.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'lamp.b','to':'body.31','resistanceOhm':0.01}");
    }

    @Test
    void aLampOfSixVoltsInTwelveIsToldAtItsWorst() {
        Finding finding = get(lamp(6, "'run','crank','running'"), FindingCode.LAMP_OVERVOLTAGE);
        assertThat(finding.ids()).containsExactly("lamp");
        assertThat(instant(finding.message())).containsExactly("running");
        assertThat(figure(finding, "ratedV")).isEqualTo(6);
        assertThat(figure(finding, "limitRatio")).isCloseTo(figure(finding, "lampV") / (1.1 * 6.75), within(1e-12));
        assertThat(instant(get(lamp(6, "'run'"), FindingCode.LAMP_OVERVOLTAGE).message()))
                .containsExactly("run");
    }

    @Test
    void theVoltsOfAChargingSystemAreNoFault() {
        assertThat(find(lamp(12, "'run','running'"), FindingCode.LAMP_OVERVOLTAGE))
                .isEmpty();
    }

    /** What it does then is put right with the backfeed. */
    @Test
    void onlyALampThatIsMeantToBeLitIsJudged() {
        assertThat(find(lamp(6, ""), FindingCode.LAMP_OVERVOLTAGE)).isEmpty();
    }
}
