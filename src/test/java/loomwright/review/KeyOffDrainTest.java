package loomwright.review;

import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Argument;
import loomwright.message.Message;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    private static Finding drain(String battery, String... loads) {
        StringBuilder parts =
                new StringBuilder("{'kind':'battery','id':'battery'" + battery + "},{'kind':'earth','id':'body'}");
        StringBuilder wires =
                new StringBuilder("{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001}");
        for (int i = 0; i < loads.length; i++) {
            String id = "load-" + (i + 1);
            parts.append(",{'kind':'load','id':'" + id + "','resistanceOhm':" + loads[i] + "," + Reviews.ALWAYS + "}");
            wires.append(",{'id':'A" + i + "','from':'battery.plus','to':'" + id + ".a','resistanceOhm':0.001},{'id':'B"
                    + i + "','from':'" + id + ".b','to':'body.31','resistanceOhm':0.001}");
        }
        return get(Plans.of(parts.toString(), wires.toString()), FindingCode.KEY_OFF_DRAIN);
    }

    private static double hours(Finding drain) {
        return ((Argument.Count)
                        Objects.requireNonNull(drain.message().arguments().get("hours")))
                .value();
    }

    /** Every load that is live is named with what it draws, the largest first. */
    @Test
    void eachLoadIsNamedWithItsCurrent() {
        Finding drain = drain("", "280", "12.6");
        assertThat(drain.ids()).containsExactly("load-2", "load-1");
        assertThat(drain.message().arguments().get("loads"))
                .isInstanceOfSatisfying(
                        Argument.Listing.class,
                        loads -> assertThat(loads.items())
                                .extracting(load -> figure(((Argument.Nested) load).message(), "currentA"))
                                .satisfiesExactly(
                                        a -> assertThat(a).isCloseTo(1.0, within(0.02)),
                                        a -> assertThat(a).isCloseTo(0.045, within(0.001))));
        assertThat(Reviews.figure(drain, "currentA")).isCloseTo(1.045, within(0.02));
    }

    private static double figure(Message message, String name) {
        return ((Argument.Quantity) Objects.requireNonNull(message.arguments().get(name))).value();
    }

    /** 1 A empties 0.4 of 60 Ah in 24 h, 10 A in 2 h at the 0.8 of a heavy drain; half the battery, half the time. */
    @Test
    void theHoursFollowTheCapacityThatTheBatteryStates() {
        assertThat(hours(drain("", "12.6"))).isBetween(22.0, 26.0);
        assertThat(hours(drain("", "1.26"))).isBetween(1.0, 3.0);
        assertThat(hours(drain(",'capacityAh':120", "12.6"))).isBetween(45.0, 51.0);
        assertThat(hours(drain(",'capacityAh':30", "12.6"))).isBetween(11.0, 13.0);
    }

    /** A fortieth of an ampere with the radio's memory, a twentieth, and what flattens it by morning. */
    @ParameterizedTest(name = "{0} ohm: {1}")
    @CsvSource({"280, NOTE", "200, WARNING", "25.2, WARNING", "4, WARNING"})
    void theLevelFollowsTheCurrent(String ohm, Severity severity) {
        assertThat(drain("", ohm).severity()).isEqualTo(severity);
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
