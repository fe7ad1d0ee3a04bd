package loomwright.review;

import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.Finding;
import loomwright.circuit.Fuse;
import loomwright.circuit.Plan;
import loomwright.message.Argument;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the figure on a fuse means, and a breaker that resets itself. */
class FuseMarkingTest {
    private static Plan fused(String fuse, double loadA, String size) {
        return plan(
                "{'kind':'fuse','id':'fuse'," + fuse + "},{'kind':'load','id':'heater','currentA':" + loadA
                        + ",'meantLive':['run','running']},{'kind':'switch','id':'key','terminals':['30','15'],"
                        + "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['30','15']]}],"
                        + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'off','running':'on'}}",
                "{'id':'W1','from':'battery.plus','to':'fuse.a','size':'10 mm2','lengthM':0.3},"
                        + "{'id':'W2','from':'fuse.b','to':'key.30','size':'" + size + "','lengthM':1},"
                        + "{'id':'W3','from':'key.15','to':'heater.a','size':'" + size + "','lengthM':1},"
                        + "{'id':'W4','from':'heater.b','to':'body.31','size':'" + size + "','lengthM':0.5}");
    }

    /** British trade tables: marked 35 A blow, 17 A continuous; 50 A, 25 A; 15 A, 7.5 A. */
    @ParameterizedTest
    @CsvSource({"35, 17.5", "50, 25", "15, 7.5"})
    void oneMarkedWithWhatBlowsItCarriesHalf(double markedA, double carriesA) {
        Fuse fuse = new Fuse("fuse", null, markedA, Fuse.RatedBy.BLOW, Fuse.Construction.GLASS, 0.005);
        assertThat(fuse.continuousA()).isCloseTo(carriesA, within(1e-9));
        assertThat(new Fuse("fuse", null, markedA, Fuse.RatedBy.CARRY, Fuse.Construction.GLASS, 0.005).continuousA())
                .isEqualTo(markedA);
    }

    @Test
    void itsLoadIsJudgedByWhatItCarries() {
        Finding finding = get(
                fused("'ratingA':35,'ratedBy':'blow','construction':'glass'", 20, "4 mm2"),
                FindingCode.FUSE_OVERLOADED);
        assertThat(figure(finding, "ratingA")).isEqualTo(17.5);
        assertThat(find(fused("'ratingA':35", 20, "4 mm2"), FindingCode.FUSE_OVERLOADED))
                .isEmpty();
    }

    @Test
    void soIsTheWireBehindIt() {
        assertThat(find(fused("'ratingA':35", 5, "1.5 mm2"), FindingCode.FUSE_TOO_LARGE))
                .isPresent();
        assertThat(find(fused("'ratingA':35,'ratedBy':'blow'", 5, "1.5 mm2"), FindingCode.FUSE_TOO_LARGE))
                .isEmpty();
    }

    @Test
    void aSelfResettingBreakerGoesOnAndOff() {
        Finding finding =
                get(fused("'ratingA':10,'construction':'self-resetting'", 15, "2.5 mm2"), FindingCode.FUSE_OVERLOADED);
        assertThat(finding.message().arguments()).containsEntry("blows", new Argument.Verbatim("again-and-again"));
    }

    /** ISO 8820-3: holds 100 h at 1.1, opens within 1800 s from 1.35 and within 50 s from 1.6 times its rating. */
    @ParameterizedTest
    @CsvSource({"10.5, holds, 0", "12, may-blow, 0", "14, within, 1800", "17, within, 50", "70, at-once, 0.1"})
    void howSoonItBlowsFollowsTheLimitsOfItsStandard(double loadA, String blows, double withinS) {
        Finding finding = get(fused("'ratingA':10", loadA, "16 mm2"), FindingCode.FUSE_OVERLOADED);
        assertThat(finding.message().arguments()).containsEntry("blows", new Argument.Verbatim(blows));
        assertThat(figure(finding, "withinS")).isCloseTo(withinS, within(0.03));
    }

    private static Plan starter(double ratingA) {
        return plan(
                "{'kind':'fuse','id':'fuse','construction':'bolt-down','resistanceOhm':0.0005,'ratingA':" + ratingA
                        + "},{'kind':'motor','id':'starter','resistanceOhm':0.08,'excitation':'series','meantLive':['crank']},"
                        + "{'kind':'switch','id':'foot','terminals':['1','2'],"
                        + "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['1','2']]}],"
                        + "'positionByCondition':{'off':'off','accessory':'off','run':'off','crank':'on','running':'off'}}",
                "{'id':'W1','from':'battery.plus','to':'fuse.a','size':'16 mm2','lengthM':0.3},"
                        + "{'id':'W2','from':'fuse.b','to':'foot.1','size':'16 mm2','lengthM':0.5},"
                        + "{'id':'W3','from':'foot.2','to':'starter.33','size':'16 mm2','lengthM':0.5},"
                        + "{'id':'W4','from':'starter.32','to':'body.31','size':'16 mm2','lengthM':0.3}");
    }

    /** A series motor of 0.08 ohm takes 125 A, more than a 70 A fuse bears for 30 s; one of 125 A carries it for ever. */
    @Test
    void aFuseInTheFeedOfAStarterMustCarryCranking() {
        Finding blown = get(starter(40), FindingCode.FUSE_OVERLOADED);
        assertThat(figure(blown, "currentA")).isCloseTo(125, within(0.5));
        assertThat(Objects.requireNonNull(blown.remedy()).arguments().get("ratingA"))
                .isEqualTo(new Argument.Quantity(125, "A"));
        assertThat(find(starter(125), FindingCode.FUSE_OVERLOADED)).isEmpty();
    }

    /** Nothing lasting flows there, so that a fuse of 1 A would carry all that lasts. */
    @Test
    void norIsASmallerOneProposedThanCrankingTakes() {
        Finding large = get(starter(300), FindingCode.FUSE_TOO_LARGE);
        assertThat(Objects.requireNonNull(large.remedy()).arguments().get("ratingA"))
                .isEqualTo(new Argument.Quantity(125, "A"));
    }
}
