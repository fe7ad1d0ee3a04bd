package loomwright.review;

import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** An isolator that takes the battery off while the alternator charges. */
class BatteryIsolationTest {
    /** The lamp lead goes through the second pole or past it. */
    private static Plan car(boolean secondPole) {
        return Plans.of(
                12,
                "negative",
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'alternator','id':'alt','exciterDiodes':false},"
                        + "{'kind':'switch','id':'isolator','terminals':['1','2','3','4'],'position':'on','positions':["
                        + "{'name':'off','joins':[]},{'name':'on','joins':[['1','2'],['3','4']]}]},"
                        + "{'kind':'resistor','id':'series','resistanceOhm':5},"
                        + "{'kind':'load','id':'pump','resistanceOhm':3,'meantLive':['running']}",
                "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'battery.plus','to':'isolator.1','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'isolator.2','to':'alt.B+','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'alt.B-','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W5','from':'isolator.2','to':'pump.a','resistanceOhm':0.01},"
                        + "{'id':'W6','from':'pump.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W7','from':'isolator.2','to':'" + (secondPole ? "isolator.3" : "series.a")
                        + "','resistanceOhm':0.01},"
                        + (secondPole ? "{'id':'W8','from':'isolator.4','to':'series.a','resistanceOhm':0.01}," : "")
                        + "{'id':'W9','from':'series.b','to':'alt.D+','resistanceOhm':0.01}");
    }

    @Test
    void withOnePoleTheAlternatorGoesOnWithoutABattery() {
        assertThat(get(car(false), FindingCode.BATTERY_OFF_WHILE_CHARGING).severity())
                .isEqualTo(Severity.WARNING);
    }

    @Test
    void aSecondPoleThatCutsTheFieldStopsIt() {
        assertThat(find(car(true), FindingCode.BATTERY_OFF_WHILE_CHARGING)).isEmpty();
    }
}
