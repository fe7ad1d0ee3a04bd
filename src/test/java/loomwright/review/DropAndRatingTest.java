package loomwright.review;

import static loomwright.message.MessageFinder.instant;
import static loomwright.message.MessageFinder.nested;
import static loomwright.message.MessageFinder.word;
import static loomwright.review.Reviews.ALWAYS;
import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.Finding;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Argument;
import loomwright.message.Message;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;

/** 1 volts lost on the way there and back, 2 earth points, 3 what contacts, diodes, connectors and resistors may carry. */
class DropAndRatingTest {
    /** Battery, feed of some ohms, lamp of 24 W at 12 V, return of some ohms. */
    private static Plan lamp(double feedOhm, double backOhm) {
        return plan(
                "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':24," + ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'lamp.a','resistanceOhm':" + feedOhm + "},"
                        + "{'id':'W2','from':'lamp.b','to':'body.31','resistanceOhm':" + backOhm + "}");
    }

    @Test
    void theDropIsDividedIntoFeedAndReturnAndTheWorstPlaceNamed() {
        Finding finding = get(lamp(0.2, 0.6), FindingCode.VOLTAGE_DROP);
        // Along the same current the drops are as the ohms; the earth of the battery lies in the return.
        assertThat(figure(finding, "returnDropV") / figure(finding, "feedDropV"))
                .isCloseTo(3.005, within(1e-6));
        assertThat(figure(finding, "dropV"))
                .isCloseTo(figure(finding, "feedDropV") + figure(finding, "returnDropV"), within(1e-12));
        assertThat(finding.ids()).containsExactly("lamp", "W2");
        assertThat(finding.basis().source()).contains("common practice");
    }

    /** 0.35 V in contact and new feed instead of what is lost now, at 12 V; light by volts to the power of 3.4. */
    @Test
    void whatARelayWouldWinBackOfALampsLightIsTold() {
        Finding finding = get(lamp(0.9, 0.1), FindingCode.VOLTAGE_DROP);
        double lampV = figure(finding, "supplyV") - figure(finding, "returnDropV") - 0.35;
        assertThat(figure(finding, "relayLightPercent"))
                .isCloseTo(100 * Math.pow(lampV / 13.5, 3.4), within(0.5))
                .isGreaterThan(figure(finding, "lightPercent"))
                .isLessThan(figure(finding, "fullLightPercent"));
        assertThat(word(finding.message(), "relay")).isEqualTo("yes");
        assertThat(word(get(lamp(0.1, 0.9), FindingCode.VOLTAGE_DROP).message(), "relay"))
                .as("a bad earth is not cured by a relay in the feed")
                .isEqualTo("no");
    }

    @Test
    void aVoltIsLeftToALampOfMoreThanFifteenWatts() {
        assertThat(find(lamp(0.2, 0.2), FindingCode.VOLTAGE_DROP)).isEmpty();
    }

    /** Half a metre of 2.5 mm2 has 4 milliohms: no thicker wire helps against half an ohm of rust at its end. */
    @Test
    void aBadJointIsToldFromAThinWire() {
        String parts = "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':24," + ALWAYS + "}";
        String wires = "{'id':'W1','from':'battery.plus','to':'lamp.a','resistanceOhm':0.01},"
                + "{'id':'W2','from':'lamp.b','to':'body.31','size':'%s','lengthM':%s%s}";
        Finding joint = get(
                plan(parts, wires.formatted("2.5 mm2", 0.5, ",'toJointResistanceOhm':0.5")), FindingCode.VOLTAGE_DROP);
        Message place = nested(joint.message(), "place");
        assertThat(place.code()).isEqualTo(ReviewText.JOINT_OF_WIRE);
        assertThat(word(place, "wire")).isEqualTo("W2");
        assertThat(word(place, "terminal")).isEqualTo("body.31");
        assertThat(Objects.requireNonNull(joint.remedy()).code()).isEqualTo(ReviewText.CLEAN_JOINT);
        Finding thin = get(plan(parts, wires.formatted("0.5 mm2", 12, "")), FindingCode.VOLTAGE_DROP);
        Message thicker = Objects.requireNonNull(thin.remedy());
        assertThat(thicker.code()).isEqualTo(ReviewText.FIT_SIZE_FOR_DROP);
        assertThat(word(thicker, "place")).isEqualTo("W2");
        assertThat(word(thicker, "relay")).isEqualTo("yes");
    }

    /** Feed and return both too thin: the sizes that are named together cure it, which one alone cannot. */
    @Test
    void whereOneWireIsNotEnoughTheSizesOfAllAreNamedAndCure() {
        String[] sizes = {"0.5 mm2", "0.5 mm2"};
        Message remedy = Objects.requireNonNull(
                get(twoWires(sizes[0], sizes[1]), FindingCode.VOLTAGE_DROP).remedy());
        assertThat(remedy.code()).isEqualTo(ReviewText.FIT_SIZES_FOR_DROP);
        for (Argument each :
                ((Argument.Listing) Objects.requireNonNull(remedy.arguments().get("sizes"))).items()) {
            Message one = ((Argument.Nested) each).message();
            sizes[one.ids().get(0).equals("W1") ? 0 : 1] = word(one, "size");
        }
        assertThat(sizes).doesNotContain("0.5 mm2");
        assertThat(find(twoWires(sizes[0], sizes[1]), FindingCode.VOLTAGE_DROP)).isEmpty();
    }

    private static Plan twoWires(String out, String back) {
        return plan(
                "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':55," + ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'lamp.a','size':'" + out + "','lengthM':8},"
                        + "{'id':'W2','from':'lamp.b','to':'body.31','size':'" + back + "','lengthM':8}");
    }

    @Test
    void loadsThatLoseMostInTheSameWireAreToldTogether() {
        Plan plan = plan(
                "{'kind':'joint','id':'splice','terminals':['1','2','3']},"
                        + "{'kind':'lamp','id':'left','ratedV':12,'ratedW':24," + ALWAYS + "},"
                        + "{'kind':'lamp','id':'right','ratedV':12,'ratedW':24," + ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'splice.1','resistanceOhm':0.4},"
                        + "{'id':'W2','from':'splice.2','to':'left.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'splice.3','to':'right.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'left.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'right.b','to':'body.31','resistanceOhm':0.01}");
        assertThat(codes(plan).stream().filter("voltage-drop"::equals)).hasSize(1);
        assertThat(get(plan, FindingCode.VOLTAGE_DROP).ids()).containsExactly("left", "right", "W1");
    }

    @Test
    void aCorrodedEarthPointIsFound() {
        Plan plan = plan(
                "{'kind':'earth','id':'wing','resistanceOhm':0.1},{'kind':'load','id':'fan','resistanceOhm':6," + ALWAYS
                        + "}",
                "{'id':'W1','from':'battery.plus','to':'fan.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'fan.b','to':'wing.31','resistanceOhm':0.01}");
        assertThat(get(plan, FindingCode.EARTH_DROP).ids()).containsExactly("wing");
    }

    /** One part in the feed of a load of 1 ohm, so some 13 A. */
    private static Plan inFeed(String part, String in, String out) {
        return plan(
                part + ",{'kind':'load','id':'fan','resistanceOhm':1," + ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'x." + in + "','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'x." + out + "','to':'fan.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'fan.b','to':'body.31','resistanceOhm':0.01}");
    }

    @Test
    void aSwitchThatIsClosedInSomePositionIsJudgedInThat() {
        String contact = "{'kind':'switch','id':'x','terminals':['a','b'],'positions':[{'name':'out','joins':[]},"
                + "{'name':'in','joins':[['a','b']]}],'ratingA':10}";
        Finding finding = get(inFeed(contact, "a", "b"), FindingCode.CONTACT_OVERLOADED);
        assertThat(finding.ids()).containsExactly("x");
        assertThat(instant(finding.message())).contains("x in");
        assertThat(figure(finding, "limitRatio")).isCloseTo(figure(finding, "currentA") / 10, within(1e-12));
        assertThat(codes(inFeed(contact.replace("10}", "20}"), "a", "b"))).doesNotContain("contact-overloaded");
    }

    @Test
    void theContactOfARelayIsJudgedNotItsCoil() {
        String relay = "{'kind':'relay','id':'x','coilResistanceOhm':85,'ratingA':10,'meantLive':[]}";
        assertThat(get(inFeed(relay, "30", "87a"), FindingCode.CONTACT_OVERLOADED)
                        .ids())
                .containsExactly("x");
    }

    @Test
    void aDiodeAndAResistorAreJudged() {
        assertThat(codes(inFeed("{'kind':'diode','id':'x','ratingA':6}", "anode", "cathode")))
                .contains("diode-overloaded");
        String resistor = "{'kind':'resistor','id':'x','resistanceOhm':0.5,'ratingW':20}";
        Finding hot = get(inFeed(resistor, "a", "b"), FindingCode.RESISTOR_OVERHEATED);
        // 14.2 V over 1 + 0.5 + 0.031 ohm and 0.004375 in the battery, squared, times 0.5 ohm
        assertThat(figure(hot, "powerW")).isCloseTo(Math.pow(14.2 / 1.535375, 2) * 0.5, within(1e-6));
    }

    @Test
    void aConnectorIsJudgedByItsWeakerHalf() {
        Plan plan = connected();
        Finding finding = get(plan, FindingCode.CONNECTOR_OVERLOADED);
        assertThat(finding.ids()).containsExactly("C1", "one", "other");
        assertThat(figure(finding, "ratingA")).isEqualTo(5);
    }

    /** The plan with a connector, whose halves may carry 20 and 5 A. */
    private static Plan connected() {
        String half = "{'kind':'connector-half','id':'%s','terminals':['1'],'form':'blade','widthMm':6.3,"
                + "'gender':'%s','ratingA':%s},";
        return Plans.parse("{'schema':'loomwright/plan/1','name':'connector',"
                + "'system':{'nominalVoltageV':12},'parts':[{'kind':'battery','id':'battery'},"
                + "{'kind':'earth','id':'body'}," + String.format(half, "one", "male", "20")
                + String.format(half, "other", "female", "5")
                + "{'kind':'load','id':'fan','resistanceOhm':1," + ALWAYS + "}],'wires':["
                + "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                + "{'id':'W1','from':'battery.plus','to':'one.1','resistanceOhm':0.01},"
                + "{'id':'W2','from':'other.1','to':'fan.a','resistanceOhm':0.01},"
                + "{'id':'W3','from':'fan.b','to':'body.31','resistanceOhm':0.01}],"
                + "'connectors':[{'id':'C1','halves':['one','other']}]}");
    }

    /** It has less left than a relay takes of its own, so that no light is reckoned for it. */
    @Test
    void aLampWithNextToNothingIsStillJudged() {
        Plan plan = Reviews.plan(
                "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21," + Reviews.ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'lamp.a','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'lamp.b','to':'body.31','resistanceOhm':100}");
        assertThat(Reviews.figure(Reviews.get(plan, FindingCode.VOLTAGE_DROP), "relayLightPercent"))
                .isBetween(0.0, 1.0);
    }
}
