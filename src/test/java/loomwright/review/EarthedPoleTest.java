package loomwright.review;

import static loomwright.message.MessageFinder.quantity;
import static loomwright.message.MessageFinder.word;
import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Message;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** The pole that the plan says is earthed against the one that is. */
class EarthedPoleTest {
    private static final FindingCode CODE = FindingCode.EARTH_POLARITY_CONTRADICTED;
    private static final FindingCode AGAINST = FindingCode.SERIES_BATTERY_REVERSED;

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
        assertThat(word(first.message(), "earthed")).isEqualTo("negative");
        assertThat(word(first.message(), "terminal")).isEqualTo("battery.plus");
        Message positive = get(plan("positive", "plus", lead("minus")), CODE).message();
        assertThat(word(positive, "earthed")).isEqualTo("positive");
        assertThat(word(positive, "terminal")).isEqualTo("battery.minus");
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
        assertThat(word(get(turned, CODE).message(), "terminal")).isEqualTo("B2.plus");
        assertThat(word(get(turned, CODE).message(), "others")).isEqualTo("right");
        assertThat(find(
                        two("", live + wire("W2", "B2.minus", "body.31") + "," + wire("W3", "B2.plus", "live.2")),
                        CODE))
                .isEmpty();
    }

    /** They cancel out: nothing is driven through either, and nothing gets volts the wrong way round. */
    @Test
    void theSecondOfTwoInSeriesThatIsTurnedIsToldForWhatItDoes() {
        Plan turned = two("", wire("W1", "B1.plus", "B2.plus") + "," + wire("W2", "B2.minus", "live.1"));
        Finding finding = get(turned, AGAINST);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.ids()).containsExactly("B2", "B1");
        assertThat(word(finding.message(), "terminal")).isEqualTo("B2.plus");
        assertThat(word(finding.message(), "otherTerminal")).isEqualTo("B1.plus");
        assertThat(word(finding.message(), "polarity")).isEqualTo("right");
        assertThat(quantity(finding.message(), "leftV")).isZero();
        assertThat(quantity(finding.message(), "wantedV")).isEqualTo(24);
        assertThat(find(turned, CODE)).isEmpty();
        assertThat(find(two("", wire("W1", "B1.plus", "B2.minus") + "," + wire("W2", "B2.plus", "live.1")), AGAINST))
                .isEmpty();
    }

    private static Plan series(String earth, double firstV, double secondV, double thirdV, String wires) {
        String cells = "";
        double[] volts = {firstV, secondV, thirdV};
        for (int i = 0; i < volts.length; i++) {
            cells += "{'kind':'battery','id':'B" + (i + 1) + "','nominalVoltageV':" + volts[i] + "},";
        }
        return Plans.of(
                12,
                earth,
                cells + "{'kind':'earth','id':'body'},{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':10,"
                        + Reviews.ALWAYS + "}",
                wires + "," + wire("W9", "lamp.b", "body.31"));
    }

    @Test
    void soIsTheMiddleOneOfThree() {
        Plan plan = series(
                "negative",
                4,
                4,
                4,
                wire("W0", "B1.minus", "body.31") + "," + wire("W1", "B1.plus", "B2.plus") + ","
                        + wire("W2", "B2.minus", "B3.minus") + "," + wire("W3", "B3.plus", "lamp.a"));
        assertThat(get(plan, AGAINST).ids()).containsExactly("B2", "B1");
    }

    @Test
    void theLastOfThreeTakesItsOwnVoltsFromThoseOfTheOthers() {
        Plan plan = series(
                "positive",
                4,
                4,
                4,
                wire("W0", "B1.plus", "body.31") + "," + wire("W1", "B1.minus", "B2.plus") + ","
                        + wire("W2", "B2.minus", "B3.minus") + "," + wire("W3", "B3.plus", "lamp.a"));
        assertThat(get(plan, AGAINST).severity()).isEqualTo(Severity.WARNING);
        Message against = get(plan, AGAINST).message();
        assertThat(word(against, "terminal")).isEqualTo("B3.minus");
        assertThat(word(against, "otherTerminal")).isEqualTo("B2.minus");
        assertThat(quantity(against, "leftV")).isEqualTo(4);
        assertThat(quantity(against, "wantedV")).isEqualTo(12);
    }

    /** Then the vehicle gets volts the wrong way round. */
    @Test
    void aTurnedOneOfMoreVoltsThanThoseBeforeItIsADanger() {
        Plan plan = series(
                "negative",
                4,
                8,
                4,
                wire("W0", "B1.minus", "body.31") + "," + wire("W1", "B1.plus", "B2.plus") + ","
                        + wire("W2", "B2.minus", "lamp.a"));
        assertThat(get(plan, AGAINST).severity()).isEqualTo(Severity.DANGER);
        Message against = get(plan, AGAINST).message();
        assertThat(quantity(against, "leftV")).isEqualTo(4);
        assertThat(quantity(against, "wantedV")).isEqualTo(12);
        assertThat(word(against, "polarity")).isEqualTo("reversed");
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
                .filteredOn(f -> f.code().equals(CODE.code()))
                .singleElement()
                .satisfies(f -> assertThat(f.ids()).containsExactly("B1"));
    }

    private static final String ISOLATOR =
            "{'kind':'switch','id':'isolator','terminals':['1','2'],'positions':[{'name':'open','joins':[]},"
                    + "{'name':'closed','joins':[['1','2']]}]},";

    /** B2 is side by side with B1, its earth lead goes through a part: what is that part? */
    private static Plan sideBySide(String part, String in, String out) {
        return two(
                part,
                wire("W1", "B1.plus", "live.1") + "," + wire("W2", "B2.plus", "live.2") + ","
                        + wire("W3", "B2.minus", in) + "," + wire("W4", out, "body.31"));
    }

    /** With a switch it is side by side as soon as that is closed. */
    @Test
    void whatIsInTheEarthLeadOfTheSecondMakesNoSeriesOfThem() {
        assertThat(codes(sideBySide(ISOLATOR, "isolator.1", "isolator.2"))).doesNotContain(CODE.code(), AGAINST.code());
        String shunt = "{'kind':'resistor','id':'shunt','resistanceOhm':0.001},";
        assertThat(codes(sideBySide(shunt, "shunt.a", "shunt.b"))).doesNotContain(CODE.code(), AGAINST.code());
        String meter = "{'kind':'load','id':'meter','resistanceOhm':0.001," + Reviews.ALWAYS + "},";
        assertThat(codes(sideBySide(meter, "meter.a", "meter.b"))).doesNotContain(CODE.code(), AGAINST.code());
    }

    @Test
    void norDoesAnEarthLeadThatEndsNowhere() {
        Plan plan = two(
                "{'kind':'joint','id':'stud','terminals':['1','2']},",
                wire("W1", "B1.plus", "live.1") + "," + wire("W2", "B2.plus", "live.2") + ","
                        + wire("W3", "B2.minus", "stud.1"));
        assertThat(codes(plan)).doesNotContain(CODE.code(), AGAINST.code());
    }

    /** The upper battery of the second has its plus on that of the first; the switch is below the lower one. */
    @Test
    void norDoesASwitchInTheEarthLeadOfASecondSeriesSideBySide() {
        String cells = "";
        for (String id : new String[] {"B1", "B2", "C1", "C2"}) {
            cells += "{'kind':'battery','id':'" + id + "','nominalVoltageV':12},";
        }
        Plan plan = Plans.of(
                24,
                "negative",
                cells + ISOLATOR
                        + "{'kind':'earth','id':'body'},{'kind':'joint','id':'live','terminals':['1','2','3']},"
                        + "{'kind':'lamp','id':'lamp','ratedV':24,'ratedW':10," + Reviews.ALWAYS + "}",
                wire("W0", "B1.minus", "body.31") + "," + wire("W1", "B1.plus", "B2.minus") + ","
                        + wire("W2", "B2.plus", "live.1") + "," + wire("W3", "C2.plus", "live.2") + ","
                        + wire("W4", "C2.minus", "C1.plus") + "," + wire("W5", "C1.minus", "isolator.1") + ","
                        + wire("W6", "isolator.2", "body.31") + "," + wire("W7", "live.3", "lamp.a") + ","
                        + wire("W8", "lamp.b", "body.31"));
        assertThat(codes(plan)).doesNotContain(CODE.code(), AGAINST.code());
    }

    @ForEachExample
    void noExampleHasOne(String name) {
        assertThat(codes(Plans.example(name))).doesNotContain(CODE.code(), AGAINST.code());
    }
}
