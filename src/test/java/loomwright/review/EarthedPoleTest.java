package loomwright.review;

import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** The pole that the plan says is earthed against the one that is. */
class EarthedPoleTest {
    private static final FindingCode CODE = FindingCode.EARTH_POLARITY_CONTRADICTED;

    private static Plan plan(String earth, String live, String earthLead) {
        return Plans.of(
                12,
                earth,
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body','resistanceOhm':0.3},"
                        + "{'kind':'earth','id':'wing'},"
                        + "{'kind':'joint','id':'stud','terminals':['1','2']},"
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':10," + Reviews.ALWAYS + "}",
                earthLead + "{'id':'W1','from':'battery." + live + "','to':'lamp.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'lamp.b','to':'wing.31','resistanceOhm':0.01}");
    }

    private static String lead(String pole) {
        return "{'id':'W0','from':'battery." + pole + "','to':'stud.1','resistanceOhm':0.01},"
                + "{'id':'W3','from':'stud.2','to':'body.31','resistanceOhm':0.01},";
    }

    private static final String LOOSE = "{'id':'W0','from':'battery.minus','to':'stud.1','resistanceOhm':0.01},";

    /** However bad the way is: the body has 0.3 ohm. */
    @Test
    void theOtherPoleOnTheChassisIsADangerAndToldFirst() {
        Plan plan = plan("negative", "minus", lead("plus"));
        Finding first = findings(plan).get(0);
        assertThat(first).isEqualTo(get(plan, CODE));
        assertThat(first.severity()).isEqualTo(Severity.DANGER);
        assertThat(first.ids()).containsExactly("battery");
        assertThat(first.text()).contains("negative pole is earthed", "battery.plus", "alternator");
        assertThat(get(plan("positive", "plus", lead("minus")), CODE).text())
                .contains("positive pole is earthed", "battery.minus");
    }

    @Test
    void thePoleThatIsNamedIsNoFault() {
        assertThat(find(plan("negative", "plus", lead("minus")), CODE)).isEmpty();
        assertThat(find(plan("positive", "minus", lead("plus")), CODE)).isEmpty();
    }

    /** Through the lamp the live pole is then at the chassis' volts; it is not earthed for that. */
    @Test
    void aBatteryWithoutAnEarthLeadIsNotToldAsTurned() {
        assertThat(find(plan("negative", "plus", LOOSE), CODE)).isEmpty();
    }

    @Test
    void ofTwoInSeriesOnlyTheEarthedEndCounts() {
        Plan plan = Plans.of(
                24,
                "positive",
                "{'kind':'battery','id':'B1','nominalVoltageV':12},{'kind':'battery','id':'B2','nominalVoltageV':12},"
                        + "{'kind':'earth','id':'body'},{'kind':'joint','id':'stud','terminals':['1','2']}",
                "{'id':'W2','from':'B2.minus','to':'stud.1','resistanceOhm':0.001},{'id':'W0','from':'B1.plus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W1','from':'B1.minus','to':'B2.plus','resistanceOhm':0.001}");
        assertThat(find(plan, CODE)).isEmpty();
    }

    private static Plan two(String second, String wires) {
        return Plans.of(
                "{'kind':'battery','id':'B1'},{'kind':'battery','id':'B2'},{'kind':'earth','id':'body'},"
                        + "{'kind':'joint','id':'live','terminals':['1','2','3']}," + second
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':10," + Reviews.ALWAYS + "}",
                "{'id':'W0','from':'B1.minus','to':'body.31','resistanceOhm':0.01}," + wires
                        + ",{'id':'W8','from':'live.3','to':'lamp.a','resistanceOhm':0.01},"
                        + "{'id':'W9','from':'lamp.b','to':'body.31','resistanceOhm':0.01}");
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.01}";
    }

    @Test
    void ofTwoSideBySideTheOneThatIsTurnedIsToldThoughTheOtherIsRight() {
        String live = wire("W1", "B1.plus", "live.1") + ",";
        Plan turned = two("", live + wire("W2", "B2.plus", "body.31") + "," + wire("W3", "B2.minus", "live.2"));
        assertThat(get(turned, CODE).ids()).containsExactly("B2");
        assertThat(get(turned, CODE).text())
                .contains("B2.plus on the chassis", "Another battery stands as the plan says");
        assertThat(find(
                        two("", live + wire("W2", "B2.minus", "body.31") + "," + wire("W3", "B2.plus", "live.2")),
                        CODE))
                .isEmpty();
    }

    @Test
    void soIsTheSecondOfTwoInSeries() {
        Plan turned = two("", wire("W1", "B1.plus", "B2.plus") + "," + wire("W2", "B2.minus", "live.1"));
        assertThat(get(turned, CODE).ids()).containsExactly("B2");
        assertThat(get(turned, CODE).text()).contains("B2.plus on B1.plus");
        assertThat(find(two("", wire("W1", "B1.plus", "B2.minus") + "," + wire("W2", "B2.plus", "live.1")), CODE))
                .isEmpty();
    }

    /** A series that is turned as a whole: its batteries do not work against each other. */
    @Test
    void whatHangsOnATurnedBatteryIsNotToldBesides() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B1'},{'kind':'battery','id':'B2'},{'kind':'earth','id':'body'},"
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':10," + Reviews.ALWAYS + "}",
                wire("W0", "B1.plus", "body.31") + "," + wire("W1", "B1.minus", "B2.plus") + ","
                        + wire("W2", "B2.minus", "lamp.a") + "," + wire("W3", "lamp.b", "body.31"));
        assertThat(findings(plan))
                .filteredOn(f -> f.code().equals(CODE.text()))
                .singleElement()
                .satisfies(f -> assertThat(f.ids()).containsExactly("B1"));
    }

    /** It is side by side with the other as soon as the switch is closed. */
    @Test
    void aSwitchInTheEarthLeadOfTheSecondMakesNoSeriesOfThem() {
        String isolator =
                "{'kind':'switch','id':'isolator','terminals':['1','2'],'positions':[{'name':'open','joins':[]},"
                        + "{'name':'closed','joins':[['1','2']]}]},";
        assertThat(find(
                        two(
                                isolator,
                                wire("W1", "B1.plus", "live.1") + "," + wire("W2", "B2.plus", "live.2") + ","
                                        + wire("W3", "B2.minus", "isolator.1") + ","
                                        + wire("W4", "isolator.2", "body.31")),
                        CODE))
                .isEmpty();
    }

    @ForEachExample
    void noExampleHasOne(String name) {
        assertThat(find(Plans.example(name), CODE)).isEmpty();
    }
}
