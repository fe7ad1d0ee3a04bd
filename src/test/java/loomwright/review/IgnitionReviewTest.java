package loomwright.review;

import static loomwright.message.MessageFinder.words;
import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.judgement.ignition.IgnitionMistake.Kind;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;

/** What a plan says of its ignition: coil, ballast, bypass, module, contacts, battery while cranking. */
class IgnitionReviewTest {
    private static final String KEY =
            "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                    + "{'name':'on','joins':[['30','15']]}],'positionByCondition':{'off':'off','accessory':'off',"
                    + "'run':'on','crank':'on','running':'on'}}";
    private static final String POINTS = "{'kind':'contact-breaker','id':'points'}";
    private static final String LIVE = "'meantLive':['run','crank','running']";

    private static Plan ballasted(double ballastOhm, double coilOhm, String use) {
        return plan(
                KEY + "," + POINTS + ",{'kind':'ballast','id':'ballast','elementsOhm':[" + ballastOhm + "]},"
                        + coil(coilOhm, use),
                FEED + "{'id':'W2','from':'key.15','to':'ballast.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'ballast.b','to':'coil.15','resistanceOhm':0.01}," + BACK);
    }

    private static Plan direct(double coilOhm, String use) {
        return plan(
                KEY + "," + POINTS + "," + coil(coilOhm, use),
                FEED + "{'id':'W2','from':'key.15','to':'coil.15','resistanceOhm':0.01}," + BACK);
    }

    private static String coil(double ohm, String use) {
        return "{'kind':'coil','id':'coil','primaryResistanceOhm':" + ohm + ",'use':'" + use + "'," + LIVE + "}";
    }

    private static final String FEED = "{'id':'W1','from':'battery.plus','to':'key.30','resistanceOhm':0.01},";
    private static final String BACK = "{'id':'W4','from':'coil.1','to':'points.1','resistanceOhm':0.01},"
            + "{'id':'W5','from':'points.31','to':'body.31','resistanceOhm':0.01}";

    @Test
    void sixToEightVoltsAtABallastedCoilAreSound() {
        assertThat(codes(ballasted(1.5, 1.7, "with-ballast")))
                .doesNotContain("coil-voltage-low", "ballast-too-small", "ballast-too-large", "coil-overheats");
    }

    /** 12.6 V over ballast, coil and 0.076875 ohm of wires, key, contacts and battery. */
    @Test
    void tooMuchAndTooLittleBallastAreFound() {
        Finding large = get(ballasted(2.5, 1.5, "with-ballast"), Kind.BALLAST_TOO_LARGE);
        assertThat(figure(large, "judgedOhm")).isCloseTo(2.5, within(1e-6));
        assertThat(large.severity()).isEqualTo(Severity.WARNING);
        Finding small = get(ballasted(0.4, 1.5, "with-ballast"), Kind.BALLAST_TOO_SMALL);
        assertThat(figure(small, "closedA")).isCloseTo(14.2 / 1.986875, within(0.2));
        assertThat(small.severity()).isEqualTo(Severity.WARNING);
    }

    @Test
    void aCoilForABallastFedDirectlyIsADangerAndBurnsTheContacts() {
        Plan plan = direct(1.5, "with-ballast");
        assertThat(get(plan, Kind.COIL_OVERHEATS).severity()).isEqualTo(Severity.DANGER);
        Finding contacts = get(plan, FindingCode.CONTACT_OVERLOADED);
        assertThat(contacts.ids()).containsExactly("points");
        assertThat(contacts.basis().source()).contains("TM 9-8000");
    }

    @Test
    void aCoilForDirectFeedBehindABallastIsWeak() {
        assertThat(get(ballasted(1.5, 3, "direct"), Kind.COIL_WEAK).ids()).containsExactly("coil");
        assertThat(codes(direct(3, "direct"))).doesNotContain("coil-overheats", "coil-weak");
    }

    /** Its 8 to 10 V behind a ballast are too few, not too many: the window is that of coils made for a ballast. */
    @Test
    void aCoilForDirectFeedIsNotHeldToTheWindowOfBallastedCoils() {
        assertThat(codes(ballasted(1.6, 3, "direct")))
                .contains("coil-weak")
                .doesNotContain("coil-overheats", "coil-voltage-low");
        assertThat(codes(ballasted(1.6, 3, "with-ballast")))
                .as("by its ohms, whatever the plan calls it")
                .contains("coil-weak");
    }

    /** With less ballast the bypass wire would feed the solenoid even more. */
    @Test
    void voltsThatABackfeedTakesFromTheCoilAreNoReasonForASmallerBallast() {
        Finding low = get(Plans.example("sandpiper-unguarded-bypass"), FindingCode.COIL_VOLTAGE_LOW);
        assertThat(words(low.message(), "stray")).containsExactly("stray-to-loads");
        assertThat(low.remedy()).isEqualTo(ReviewText.REPAIR_STRAY_FIRST.with());
    }

    private static Plan electronic(String limit) {
        return plan(
                KEY + ",{'kind':'module','id':'module'" + limit + "}," + coil(0.8, "direct"),
                FEED + "{'id':'W2','from':'key.15','to':'coil.15','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'coil.1','to':'module.1','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'key.15','to':'module.15','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'module.31','to':'body.31','resistanceOhm':0.01}");
    }

    @Test
    void aCoilOfLowResistanceNeedsAModuleWithALimit() {
        assertThat(get(electronic(""), Kind.NO_CURRENT_LIMIT).severity()).isEqualTo(Severity.DANGER);
        Finding limits = get(electronic(",'limitA':6.5"), FindingCode.MODULE_LIMITS_CURRENT);
        assertThat(figure(limits, "unlimitedA")).isBetween(13.0, 16.5);
        assertThat(codes(electronic(",'limitA':6.5"))).doesNotContain("no-current-limit");
    }

    @Test
    void aStarterThatPullsTheBatteryDownIsFound() {
        String starter = "{'kind':'solenoid','id':'solenoid','holdInResistanceOhm':3,'meantLive':['crank']},"
                + "{'kind':'motor','id':'starter','resistanceOhm':0.03,'meantLive':['crank']},"
                + "{'kind':'switch','id':'key','terminals':['30','50'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'start','joins':[['30','50']]}],'positionByCondition':{'off':'off','accessory':'off',"
                + "'run':'off','crank':'start','running':'off'}}";
        String wires = "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                + "{'id':'W1','from':'battery.plus','to':'solenoid.30','size':'35 mm2','lengthM':1},"
                + "{'id':'W2','from':'solenoid.45','to':'starter.33','size':'35 mm2','lengthM':0.3},"
                + "{'id':'W3','from':'starter.32','to':'body.31','resistanceOhm':0.001},"
                + "{'id':'W4','from':'battery.plus','to':'key.30','resistanceOhm':0.01},"
                + "{'id':'W5','from':'key.50','to':'solenoid.50','resistanceOhm':0.01},"
                + "{'id':'W6','from':'solenoid.31','to':'body.31','resistanceOhm':0.001}";
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'starter',"
                + "'system':{'nominalVoltageV':12},'conditions':{'crank':{'emfV':12,'internalResistanceOhm':0.02}},"
                + "'parts':[{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + starter + "],'wires':["
                + wires + "]}");
        Finding finding = get(plan, FindingCode.BATTERY_LOW_CRANKING);
        assertThat(figure(finding, "batteryV")).isBetween(6.0, 9.9);
        assertThat(get(plan, FindingCode.UNFUSED_CABLE).ids()).containsExactlyInAnyOrder("W1", "W2");
    }

    /** Through a wire from the starter to the coil it also gets current by the key, whose leads are no starter cables for that. */
    @Test
    void theWiresThatFeedAStarterBackwardsAreNoStarterCables() {
        String parts = "{'kind':'solenoid','id':'solenoid','holdInResistanceOhm':3,'meantLive':['crank']},"
                + "{'kind':'motor','id':'starter','resistanceOhm':0.03,'meantLive':['crank']},"
                + "{'kind':'ballast','id':'ballast','elementsOhm':[1.5]},"
                + "{'kind':'coil','id':'coil','primaryResistanceOhm':1.5},{'kind':'contact-breaker','id':'points'},"
                + "{'kind':'fuse','id':'fuse','ratingA':25},"
                + "{'kind':'switch','id':'button','terminals':['a','b'],'momentary':true,"
                + "'positions':[{'name':'off','joins':[]},{'name':'pressed','joins':[['a','b']]}]},"
                + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['30','15']]}],'positionByCondition':{'off':'off','accessory':'off',"
                + "'run':'on','crank':'on','running':'on'}}";
        String wires = "{'id':'W1','from':'battery.plus','to':'solenoid.30','size':'35 mm2','lengthM':1},"
                + "{'id':'W2','from':'solenoid.45','to':'starter.33','size':'35 mm2','lengthM':0.3},"
                + "{'id':'W3','from':'starter.32','to':'body.31','resistanceOhm':0.001},"
                + "{'id':'W4','from':'battery.plus','to':'key.30','size':'4 mm2','lengthM':1},"
                + "{'id':'W5','from':'key.15','to':'fuse.a','size':'2.5 mm2','lengthM':1},"
                + "{'id':'W6','from':'fuse.b','to':'ballast.a','size':'2.5 mm2','lengthM':1},"
                + "{'id':'W7','from':'ballast.b','to':'coil.15','size':'2.5 mm2','lengthM':1},"
                + "{'id':'W8','from':'coil.1','to':'points.1','size':'1.5 mm2','lengthM':1},"
                + "{'id':'W9','from':'starter.33','to':'coil.15','size':'2.5 mm2','lengthM':1},"
                + "{'id':'W10','from':'fuse.b','to':'button.a','size':'1.5 mm2','lengthM':1},"
                + "{'id':'W11','from':'button.b','to':'solenoid.50','size':'1.5 mm2','lengthM':1},"
                + "{'id':'W12','from':'solenoid.31','to':'body.31','resistanceOhm':0.001}";
        Plan plan = Reviews.plan(parts, wires);
        assertThat(get(plan, FindingCode.UNFUSED_LEAD).ids()).containsExactlyInAnyOrder("W4", "W5");
        assertThat(get(plan, FindingCode.UNFUSED_CABLE).ids()).containsExactlyInAnyOrder("W1", "W2");
    }

    /** A fan relay's winding on the key's output beside the ballast joins nothing; on the coil's side of the ballast it does. */
    @Test
    void aRelayThatTheKeyFeedsBesideTheBallastIsNoBypass() {
        assertThat(codes(withRelayAt("key.15"))).doesNotContain("bypass-not-isolated");
        assertThat(codes(withRelayAt("ballast.b"))).contains("bypass-not-isolated");
    }

    private static Plan withRelayAt(String terminal) {
        return plan(
                KEY + "," + POINTS + ",{'kind':'ballast','id':'ballast','elementsOhm':[1.5]},"
                        + "{'kind':'relay','id':'relay','coilResistanceOhm':85}," + coil(1.5, "with-ballast"),
                FEED + "{'id':'W2','from':'key.15','to':'ballast.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'ballast.b','to':'coil.15','resistanceOhm':0.01},"
                        + "{'id':'W6','from':'" + terminal + "','to':'relay.86','resistanceOhm':0.01},"
                        + "{'id':'W7','from':'relay.85','to':'body.31','resistanceOhm':0.01}," + BACK);
    }
}
