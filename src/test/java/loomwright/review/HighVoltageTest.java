package loomwright.review;

import static loomwright.message.MessageFinder.instant;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Argument;
import loomwright.message.Message;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Windings and batteries that get more volts than they are made for. */
class HighVoltageTest {
    private static Plan wound(String winding, String feed, String back) {
        return plan(
                winding,
                "{'id':'W1','from':'battery.plus','to':'" + feed + "','resistanceOhm':0.01},{'id':'W2','from':'" + back
                        + "','to':'body.31','resistanceOhm':0.01}");
    }

    private static Plan relay(String pullIn, String meant) {
        return wound(
                "{'kind':'relay','id':'relay','coilResistanceOhm':22," + pullIn + "'meantLive':[" + meant + "]}",
                "relay.86",
                "relay.85");
    }

    @Test
    void aRelayOfSixVoltsInTwelveIsToldAtItsWorst() {
        Finding finding = get(relay("'pullInV':4,", "'run','crank','running'"), FindingCode.WINDING_OVERVOLTAGE);
        assertThat(finding.ids()).containsExactly("relay");
        assertThat(instant(finding.message())).containsExactly("running");
        assertThat(figure(finding, "lowestRatedV")).isCloseTo(6, within(1e-9));
        assertThat(figure(finding, "highestRatedV")).isCloseTo(8.8, within(1e-9));
        assertThat(figure(finding, "limitRatio")).isCloseTo(figure(finding, "windingV") / 12, within(1e-12));
        assertThat(finding.basis().rule()).contains("at most 3 times", "1.5 to 2.2 times");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "'pullInV':8,", "'pullInV':5.4,"})
    void oneThatIsRightOrOfWhichNothingIsSaidIsNot(String pullIn) {
        assertThat(find(relay(pullIn, "'run','running'"), FindingCode.WINDING_OVERVOLTAGE))
                .isEmpty();
    }

    /** What it does then is put right with the backfeed. */
    @Test
    void norOneThatIsNotMeantToBeFed() {
        assertThat(find(relay("'pullInV':4,", ""), FindingCode.WINDING_OVERVOLTAGE))
                .isEmpty();
    }

    @Test
    void aSolenoidIsToldUnlessItIsFedForTheStartAlone() {
        String solenoid = "{'kind':'solenoid','id':'valve','holdInResistanceOhm':6,'operateV':4,'meantLive':[";
        assertThat(find(wound(solenoid + "'running']}", "valve.50", "valve.31"), FindingCode.WINDING_OVERVOLTAGE))
                .isPresent();
        assertThat(find(wound(solenoid + "'crank']}", "valve.50", "valve.31"), FindingCode.WINDING_OVERVOLTAGE))
                .isEmpty();
    }

    private static Plan charged(double nominalV, String regulated) {
        return Plans.of(
                nominalV,
                "negative",
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'alternator','id':'alt'"
                        + regulated + "}",
                "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'alt.B-','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'alt.B+','to':'battery.plus','resistanceOhm':0.001}");
    }

    @ParameterizedTest
    @CsvSource({"6, 7.6, 7.5", "12, 15.5, 15", "24, 31, 30", "6, 14.2, 7.5"})
    void anAlternatorRegulatedTooHighIsTold(double nominalV, double regulatedV, double limitV) {
        Finding finding = get(charged(nominalV, ",'regulatedV':" + regulatedV), FindingCode.CHARGING_VOLTAGE_HIGH);
        assertThat(finding.ids()).containsExactly("alt");
        assertThat(figure(finding, "limitV")).isEqualTo(limitV);
    }

    @ParameterizedTest
    @ValueSource(doubles = {6, 12, 24})
    void theUsualRegulatorIsNoFault(double nominalV) {
        assertThat(find(charged(nominalV, ""), FindingCode.CHARGING_VOLTAGE_HIGH))
                .isEmpty();
        assertThat(find(charged(nominalV, ",'regulatedV':" + 14.8 * nominalV / 12), FindingCode.CHARGING_VOLTAGE_HIGH))
                .isEmpty();
    }

    /** 13.4 V at 12 V never fills the battery; set right it is silent. */
    @Test
    void oneRegulatedTooLowIsToldToo() {
        Finding finding = get(charged(12, ",'regulatedV':13.4"), FindingCode.CHARGING_VOLTAGE_LOW);
        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(figure(finding, "limitV")).isEqualTo(13.7);
        assertThat(find(charged(12, ",'regulatedV':13.8"), FindingCode.CHARGING_VOLTAGE_LOW))
                .isEmpty();
    }

    /** 30 A of load behind a machine of 20 A: the battery gives the rest. One of what the remedy names is enough. */
    @Test
    void aMachineThatGivesLessThanRunsIsTold() {
        String load = "{'kind':'lamp','id':'lamps','ratedV':12,'ratedW':400,'meantLive':['running']}";
        Finding finding = get(loaded(20, load), FindingCode.GENERATOR_OVERLOADED);
        assertThat(finding.ids()).containsExactly("alt");
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(figure(finding, "loadsA")).isBetween(25.0, 40.0);
        assertThat(find(loaded(quantity(finding), load), FindingCode.GENERATOR_OVERLOADED))
                .isEmpty();
    }

    /** What the remedy names. */
    private static double quantity(Finding finding) {
        Message remedy = Objects.requireNonNull(finding.remedy());
        return ((Argument.Quantity) Objects.requireNonNull(remedy.arguments().get("ratingA"))).value();
    }

    private static Plan loaded(double limitA, String load) {
        return Plans.of(
                12,
                "negative",
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'alternator','id':'alt','selfExciting':true,'limitA':" + limitA + "}," + load,
                "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'alt.B-','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'alt.B+','to':'battery.plus','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'battery.plus','to':'lamps.a','resistanceOhm':0.001},"
                        + "{'id':'W5','from':'lamps.b','to':'body.31','resistanceOhm':0.001}");
    }

    @Test
    void withoutAnAlternatorTheSupplyWhileRunningStandsForIt() {
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'test','system':{'nominalVoltageV':12},"
                + "'conditions':{'running':{'emfV':16}},"
                + "'parts':[{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                + "{'kind':'load','id':'radio','powerW':10,'meantLive':['running']}],"
                + "'wires':[{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                + "{'id':'W2','from':'battery.plus','to':'radio.a','resistanceOhm':0.01},"
                + "{'id':'W3','from':'radio.b','to':'body.31','resistanceOhm':0.01}]}");
        assertThat(get(plan, FindingCode.CHARGING_VOLTAGE_HIGH).ids()).containsExactly("battery");
        assertThat(Reviews.answer(plan).cautions())
                .as("its remedy is to measure with the engine running")
                .contains(Caution.MOVING_PARTS);
    }

    @ForEachExample
    void noExampleHasOne(String name) {
        assertThat(Reviews.codes(Plans.example(name)))
                .doesNotContain(FindingCode.WINDING_OVERVOLTAGE.code(), FindingCode.CHARGING_VOLTAGE_HIGH.code());
    }

    /** With its button held the horn takes more than the machine has left. */
    @Test
    void aHornRunsNoBatteryFlat() {
        assertThat(find(Plans.example("otter-6v-positive-earth"), FindingCode.GENERATOR_OVERLOADED))
                .isEmpty();
    }
}
