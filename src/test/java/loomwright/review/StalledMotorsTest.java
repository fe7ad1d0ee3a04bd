package loomwright.review;

import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** A motor that is held fast. */
class StalledMotorsTest {
    private static Plan wiper(String figures) {
        return plan(
                "{'kind':'motor','id':'wiper','resistanceOhm':2.4,'meantLive':['run','running']" + figures + "}",
                "{'id':'W1','from':'battery.plus','to':'wiper.33','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'wiper.32','to':'body.31','resistanceOhm':0.01}");
    }

    /** Workshop manuals, from memory: an older British wiper motor takes 11 to 14 A held fast. */
    @Test
    void itIsADangerByItsHeatAndByNothingElse() {
        Plan seized = wiper(",'stalled':true,'windingOhm':1");
        Finding finding = get(seized, FindingCode.MOTOR_STALLED);
        assertThat(finding.severity()).isEqualTo(Severity.DANGER);
        assertThat(figure(finding, "currentA")).isBetween(11.0, 14.5);
        assertThat(figure(finding, "heatW")).isCloseTo(Math.pow(figure(finding, "currentA"), 2), within(1e-6));
        assertThat(find(seized, FindingCode.LOAD_NOT_POWERED)).isEmpty();
    }

    @Test
    void oneThatTurnsIsNoFault() {
        assertThat(find(wiper(""), FindingCode.MOTOR_STALLED)).isEmpty();
    }
}
