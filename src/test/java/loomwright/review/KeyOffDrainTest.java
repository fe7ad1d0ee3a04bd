package loomwright.review;

import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.message.Argument;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** What the battery gives with the key off. */
class KeyOffDrainTest {
    private static Plan clock(double ohm) {
        return plan(
                "{'kind':'load','id':'clock','resistanceOhm':" + ohm + "," + Reviews.ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'clock.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'clock.b','to':'body.31','resistanceOhm':0.01}");
    }

    /** 12.6 V over 280 ohm is 45 mA; 24 Ah of a battery of 60 Ah last 533 h (maker's bulletin). */
    @Test
    void fortyFiveMilliamperesAreANoteWithTheHours() {
        Finding drain = get(clock(280), FindingCode.KEY_OFF_DRAIN);
        assertThat(drain.severity()).isEqualTo(Severity.NOTE);
        assertThat(drain.ids()).containsExactly("clock");
        assertThat(drain.message().arguments().get("hours"))
                .isInstanceOfSatisfying(
                        Argument.Count.class, hours -> assertThat(hours.value()).isBetween(450L, 650L));
    }

    @Test
    void aClockOfTenMilliamperesIsNormal() {
        assertThat(find(clock(1260), FindingCode.KEY_OFF_DRAIN)).isEmpty();
    }

    @Test
    void aLoadBehindASwitchIsNoDrain() {
        Plan lamp = plan(
                "{'kind':'switch','id':'knob','terminals':['in','out'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['in','out']]}],'position':'on'},"
                        + "{'kind':'load','id':'lamp','resistanceOhm':3," + Reviews.ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'knob.in','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'knob.out','to':'lamp.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'lamp.b','to':'body.31','resistanceOhm':0.01}");
        assertThat(find(lamp, FindingCode.KEY_OFF_DRAIN)).isEmpty();
    }
}
