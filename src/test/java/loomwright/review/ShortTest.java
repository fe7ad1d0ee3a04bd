package loomwright.review;

import static loomwright.message.Arg.arg;
import static loomwright.message.MessageFinder.instant;
import static loomwright.review.Reviews.ALWAYS;
import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;

/** A short behind a fuse: it is named as what it is, and nothing that merely follows from it. */
class ShortTest {
    private static Plan behindFuse(String more, String wires) {
        return plan(
                "{'kind':'fuse','id':'F1','ratingA':10},{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21," + ALWAYS
                        + "}" + more,
                "{'id':'W1','from':'battery.plus','to':'F1.a','size':'2.5 mm2','lengthM':0.3},"
                        + "{'id':'W2','from':'F1.b','to':'lamp.a','size':'1.5 mm2','lengthM':1},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','size':'1.5 mm2','lengthM':1}"
                        + wires);
    }

    @Test
    void theFuseBlowsAtOnceAndTheWayToTheShortIsTold() {
        Plan plan = behindFuse("", ",{'id':'chafed','from':'lamp.a','to':'body.31','size':'1.5 mm2','lengthM':0.2}");
        Finding finding = get(plan, FindingCode.FUSE_BLOWS_AT_ONCE);
        assertThat(finding.severity()).isEqualTo(Severity.DANGER);
        assertThat(finding.ids()).containsExactly("F1", "W2", "chafed");
        assertThat(figure(finding, "currentA")).isGreaterThan(100);
        assertThat(codes(plan)).doesNotContain("wire-overloaded", "voltage-drop", "fuse-overloaded");
    }

    /** As long as the fuse holds the battery is all but shorted, and the amplifier starves. */
    @Test
    void whatFollowsFromTheShortIsNotToldBesides() {
        String chafed = "{'id':'chafed','from':'F1.b','to':'body.31','resistanceOhm':0.001}";
        List<String> codes = codes(plan(
                "{'kind':'fuse','id':'F1','ratingA':10,'resistanceOhm':0.001}," + weak(),
                "{'id':'W1','from':'battery.plus','to':'F1.a','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'F1.b','to':'amplifier.a','resistanceOhm':0.001}," + chafed
                        + ",{'id':'W5','from':'amplifier.b','to':'body.31','resistanceOhm':0.001}"));
        assertThat(codes)
                .contains("fuse-blows-at-once")
                .doesNotContain("dead-short", "supply-overloaded", "oscillating");
    }

    /** The widest way of the battery's current leads past the fuse: a short of its own. */
    @Test
    void aShortOnAnotherWayIs() {
        List<String> codes = codes(plan(
                "{'kind':'fuse','id':'F1','ratingA':10,'resistanceOhm':0.001}," + weak(),
                "{'id':'W1','from':'battery.plus','to':'F1.a','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'F1.b','to':'amplifier.a','resistanceOhm':0.001},"
                        + "{'id':'chafed','from':'F1.b','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'cable','from':'battery.plus','to':'body.31','resistanceOhm':0.0005},"
                        + "{'id':'W5','from':'amplifier.b','to':'body.31','resistanceOhm':0.001}"));
        assertThat(codes).contains("fuse-blows-at-once", "dead-short");
    }

    private static String weak() {
        return "{'kind':'load','id':'amplifier','powerW':20," + Reviews.ALWAYS + "}";
    }

    /** In both positions flows the same: which of them is told does not hang on how the plan lists them. */
    @Test
    void ofMomentsOfTheSameCurrentTheSameIsToldWhateverTheOrderOfThePlan() {
        String joins = "{'name':'%s','joins':[['1','2']]}";
        String free = ",{'kind':'switch','id':'x','terminals':['1','2'],'positions':[{'name':'out','joins':[]}," + joins
                + "," + joins + "]}";
        String chafed = ",{'id':'W4','from':'lamp.a','to':'x.1','resistanceOhm':0.001},"
                + "{'id':'chafed','from':'x.2','to':'body.31','resistanceOhm':0.001}";
        for (String parts : new String[] {free.formatted("dim", "full"), free.formatted("full", "dim")}) {
            assertThat(instant(get(behindFuse(parts, chafed), FindingCode.FUSE_BLOWS_AT_ONCE)
                            .message()))
                    .contains("x dim");
        }
    }

    /** A module fed by a trickle after the key is turned off: nobody wants a spark then. */
    @Test
    void aModuleThatFindsNoRestWhenNoSparkIsWantedIsNoFinding() {
        assertThat(codes(Plans.example("sandpiper-electronic-module"))).doesNotContain("oscillating");
    }

    /** Ten times the rating, but through a load: the fuse is too small, and no short is to be looked for. */
    @Test
    void aFuseThatIsMerelyTooSmallIsOverloaded() {
        assertThat(codes(Reviews.fused(1, "6 mm2", 0.5, 1.2)))
                .contains("fuse-overloaded")
                .doesNotContain("fuse-blows-at-once");
    }

    /** 15 m of 0.75 mm2 have 0.39 ohm and leave some 30 A, three times the rating; 2 m leave more than a hundred. */
    @Test
    void belowSixTimesItsRatingAFuseIsOverloaded() {
        String far = ",{'id':'chafed','from':'lamp.a','to':'body.31','size':'0.75 mm2','lengthM':%s}";
        assertThat(codes(behindFuse("", far.formatted(15))))
                .contains("fuse-overloaded")
                .doesNotContain("fuse-blows-at-once");
        assertThat(codes(behindFuse("", far.formatted(2))))
                .contains("fuse-blows-at-once")
                .doesNotContain("fuse-overloaded");
    }

    @Test
    void aSpikeDiodeTheWrongWayRoundIsSuspected() {
        String diode = ",{'kind':'diode','id':'spike','ratingA':1}";
        Finding wrong = get(
                behindFuse(
                        diode,
                        ",{'id':'W4','from':'lamp.a','to':'spike.anode','resistanceOhm':0.01},"
                                + "{'id':'W5','from':'spike.cathode','to':'lamp.b','resistanceOhm':0.01}"),
                FindingCode.FUSE_BLOWS_AT_ONCE);
        assertThat(wrong.ids()).contains("spike");
        assertThat(wrong.remedy()).isEqualTo(ReviewText.FIND_SHORT.with(arg("diode", "yes")));
        assertThat(codes(behindFuse(
                        diode,
                        ",{'id':'W4','from':'lamp.a','to':'spike.cathode','resistanceOhm':0.01},"
                                + "{'id':'W5','from':'spike.anode','to':'lamp.b','resistanceOhm':0.01}")))
                .doesNotContain("fuse-blows-at-once", "diode-overloaded");
    }

    /** After the key is turned off a trickle comes by way of the charge warning lamp: nobody asks more of this feed. */
    @Test
    void aWeakFeedOfALoadThatIsMeantToBeDeadIsNoFinding() {
        assertThat(codes(pumpBehindKey("['run','crank','running']")))
                .doesNotContain("supply-overloaded", "oscillating");
        assertThat(codes(pumpBehindKey("['off','run','crank','running']"))).contains("supply-overloaded");
    }

    private static Plan pumpBehindKey(String meantLive) {
        return behindFuse(
                ",{'kind':'alternator','id':'alternator'},"
                        + "{'kind':'lamp','id':'charge','ratedV':12,'ratedW':2.2,'meantLive':['run','crank']},"
                        + "{'kind':'load','id':'pump','powerW':24,'meantLive':" + meantLive + "},"
                        + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['30','15']]}],'positionByCondition':"
                        + "{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}}",
                ",{'id':'W4','from':'F1.b','to':'key.30','size':'1.5 mm2','lengthM':1},"
                        + "{'id':'W5','from':'key.15','to':'charge.a','size':'1.5 mm2','lengthM':1},"
                        + "{'id':'W6','from':'charge.b','to':'alternator.D+','size':'1.5 mm2','lengthM':1},"
                        + "{'id':'W7','from':'alternator.B+','to':'battery.plus','size':'10 mm2','lengthM':1},"
                        + "{'id':'W8','from':'alternator.B-','to':'body.31','size':'10 mm2','lengthM':0.5},"
                        + "{'id':'W9','from':'key.15','to':'pump.a','size':'1.5 mm2','lengthM':1},"
                        + "{'id':'W10','from':'pump.b','to':'body.31','size':'1.5 mm2','lengthM':1}");
    }
}
