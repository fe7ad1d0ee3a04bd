package loomwright.review;

import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.Remedy.Kind;
import loomwright.backfeed.BackfeedSearch;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** Starter, points and dynamo are bolted to an engine that no strap joins to the body: one fault, not one of each. */
class EngineStrapTest {
    private static final String PARTS = "{'kind':'joint','id':'engine','terminals':['1']},"
            + "{'kind':'switch','id':'key','terminals':['30','15','50'],'positions':["
            + "{'name':'off','joins':[]},{'name':'on','joins':[['30','15']]},{'name':'start','joins':[['30','15','50']]}],"
            + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'start','running':'on'}},"
            + "{'kind':'coil','id':'coil','primaryResistanceOhm':3},{'kind':'contact-breaker','id':'points'},"
            + "{'kind':'motor','id':'starter','resistanceOhm':0.08,'meantLive':['crank']},"
            + "{'kind':'lamp','id':'charge-lamp','ratedV':12,'ratedW':2.2},{'kind':'dynamo','id':'dynamo'},"
            + "{'kind':'control-box','id':'box'}";

    private static final String WIRES = sized("W1", "battery.plus", "key.30", "6 mm2")
            + sized("W2", "key.15", "coil.15", "1.5 mm2")
            + sized("W3", "coil.1", "points.1", "1.5 mm2")
            + sized("W4", "key.50", "starter.33", "25 mm2")
            + sized("W5", "key.15", "charge-lamp.a", "1 mm2")
            + sized("W6", "charge-lamp.b", "box.D", "1 mm2")
            + sized("W7", "box.A", "battery.plus", "6 mm2")
            + sized("W11", "dynamo.D", "box.D", "6 mm2")
            + sized("W12", "dynamo.F", "box.F", "1 mm2")
            + sized("W13", "box.E", "body.31", "1 mm2")
            + bolted("case-1", "starter.32")
            + bolted("case-2", "dynamo.E")
            + bolted("case-3", "points.31");
    private static final String STRAP = "{'id':'W8','from':'engine.1','to':'body.31','size':'25 mm2','lengthM':0.3}";

    private static String sized(String id, String from, String to, String size) {
        return "{'id':'%s','from':'%s','to':'%s','size':'%s','lengthM':1},".formatted(id, from, to, size);
    }

    private static String bolted(String id, String from) {
        return "{'id':'%s','from':'%s','to':'engine.1','resistanceOhm':0.002},".formatted(id, from);
    }

    private static Plan without() {
        return plan(PARTS, WIRES.substring(0, WIRES.length() - 1));
    }

    @Test
    void oneFindingNamesTheEngineAndAllThatReturnsThere() {
        var found = get(without(), FindingCode.NO_RETURN);
        assertThat(found.severity()).isEqualTo(Severity.WARNING);
        assertThat(found.ids()).containsExactlyInAnyOrder("coil", "starter", "charge-lamp", "engine");
        assertThat(codes(without()))
                .containsOnlyOnce(FindingCode.NO_RETURN.code())
                .doesNotContain(FindingCode.LOAD_NOT_POWERED.code(), FindingCode.VOLTAGE_DROP.code());
    }

    @Test
    void theStrapThatItAsksForCuresIt() {
        assertThat(codes(plan(PARTS, WIRES + STRAP)))
                .doesNotContain(
                        FindingCode.NO_RETURN.code(),
                        FindingCode.LOAD_NOT_POWERED.code(),
                        FindingCode.TERMINAL_NOT_CONNECTED.code());
    }

    /** Though no current flows in them while the strap is missing: with it they carry what a starter takes. */
    @Test
    void theCablesOfAStarterThatNothingEarthsAreStillCables() {
        String parts =
                "{'kind':'joint','id':'engine','terminals':['1']},{'kind':'switch','id':'button','terminals':['1','2'],"
                        + "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['1','2']]}],"
                        + "'positionByCondition':{'off':'off','accessory':'off','run':'off','crank':'on','running':'off'}},"
                        + "{'kind':'motor','id':'starter','resistanceOhm':0.08,'meantLive':['crank']}";
        String wires = sized("W1", "battery.plus", "button.1", "25 mm2")
                + sized("W2", "button.2", "starter.33", "25 mm2")
                + bolted("case-1", "starter.32");
        Plan lost = plan(parts, wires.substring(0, wires.length() - 1));
        assertThat(codes(lost))
                .contains(FindingCode.NO_RETURN.code())
                .doesNotContain(FindingCode.UNFUSED_CIRCUIT.code());
        assertThat(codes(plan(parts, wires + STRAP))).doesNotContain(FindingCode.UNFUSED_CIRCUIT.code());
    }

    /** Without the strap the starter's current returns through lamp and coil: their wires are no starter cables. */
    @Test
    void theWiresByWhichItsCurrentReturnsThenAreNoStarterCables() {
        Plan plan = plan(PARTS + WIPER_PARTS, WIRES + WIPER_WIRES);
        assertThat(get(plan, FindingCode.UNFUSED_CIRCUIT).ids()).contains("W2", "W5");
    }

    /** A wiper motor on the key's output stays earthed by the body: what the engine carries finds its way through it. */
    private static final String WIPER_PARTS = ",{'kind':'motor','id':'wiper','resistanceOhm':2.4,'meantLive':['run']}";

    private static final String WIPER_WIRES = sized("W9", "key.15", "wiper.33", "1 mm2")
            + "{'id':'W10','from':'wiper.32','to':'body.31','size':'1 mm2','lengthM':1}";

    /** Earthed itself, a coil is on all the time and never makes a spark; the case of a machine takes no diode. */
    @Test
    void theRemedyEarthsTheEngineAndNeverTheCoilNorCutsTheCaseOfAMachine() {
        List<Remedy> remedies = new BackfeedSearch(BackfeedLimits.defaults(), NetworkLimits.defaults())
                .find(plan(PARTS + WIPER_PARTS, WIRES + WIPER_WIRES), Progress.UNWATCHED).unintendedFeeds().stream()
                        .flatMap(feed -> feed.remedies().stream())
                        .toList();
        assertThat(remedies)
                .noneMatch(r -> r.kind() == Kind.SEPARATE_EARTH && r.at().equals("coil"))
                .noneMatch(r -> r.kind() == Kind.DIODE && r.at().equals("case-2"))
                .anyMatch(r -> r.kind() == Kind.SEPARATE_EARTH && r.at().equals("engine"));
    }
}
