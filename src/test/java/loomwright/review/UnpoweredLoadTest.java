package loomwright.review;

import static loomwright.message.MessageFinder.instant;
import static loomwright.message.MessageFinder.word;
import static loomwright.message.MessageFinder.words;
import static loomwright.review.Reviews.ALWAYS;
import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Message;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** Loads that should work and do not: 1 what is told, 2 what is no fault, 3 what another finding tells already. */
class UnpoweredLoadTest {
    private static final FindingCode CODE = FindingCode.LOAD_NOT_POWERED;

    private static String lamp(String id, double ratedW, String meant) {
        return "{'kind':'lamp','id':'" + id + "','ratedV':12,'ratedW':" + ratedW + "," + meant + "}";
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.01}";
    }

    /** Battery, something, a lamp of 10 W, earth. */
    private static Plan behind(String part, String in, String out, String meant) {
        return plan(
                part + "," + lamp("lamp", 10, meant),
                wire("W1", "battery.plus", "x." + in) + "," + wire("W2", "x." + out, "lamp.a") + ","
                        + wire("W3", "lamp.b", "body.31"));
    }

    private static String key(String inRun, String inOff) {
        return "{'kind':'switch','id':'x','terminals':['30','15'],'positions':[{'name':'out','joins':[]},"
                + "{'name':'in','joins':[['30','15']]}],'positionByCondition':{'off':'" + inOff + "','accessory':'out',"
                + "'run':'" + inRun + "','crank':'" + inRun + "','running':'" + inRun + "'}}";
    }

    @Test
    void aLampBehindASwitchThatNeverClosesIsToldOnceWithItsSteps() {
        Plan plan = behind(key("out", "out"), "30", "15", "'meantLive':['run','running']");
        assertThat(codes(plan).stream().filter(CODE.code()::equals)).hasSize(1);
        Finding finding = get(plan, CODE);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.ids()).containsExactly("lamp");
        assertThat(words(finding.message(), "steps")).containsExactly("run", "running");
        assertThat(word(finding.message(), "supplied")).isEqualTo("none");
        assertThat(figure(finding, "operateV")).isEqualTo(6);
        Message remedy = Objects.requireNonNull(finding.remedy());
        assertThat(word(remedy, "feed")).isEqualTo("lamp.a");
        assertThat(word(remedy, "return")).isEqualTo("lamp.b");
    }

    @Test
    void soIsOneBehindADiodeTheWrongWayRound() {
        String diode = "{'kind':'diode','id':'x'}";
        assertThat(find(behind(diode, "cathode", "anode", ALWAYS), CODE)).isPresent();
        assertThat(find(behind(diode, "anode", "cathode", ALWAYS), CODE)).isEmpty();
    }

    @Test
    void soIsOneFedFromAJointThatNothingFeeds() {
        Plan plan = plan(
                "{'kind':'joint','id':'splice','terminals':['1','2']}," + lamp("lamp", 10, ALWAYS) + ","
                        + lamp("sound", 10, ALWAYS),
                wire("W1", "splice.1", "lamp.a") + "," + wire("W2", "lamp.b", "body.31") + ","
                        + wire("W3", "battery.plus", "sound.a") + "," + wire("W4", "sound.b", "body.31"));
        assertThat(get(plan, CODE).ids()).containsExactly("lamp");
    }

    @Test
    void soIsARelayFedOnlyThroughItsOwnContact() {
        Plan plan = plan(
                "{'kind':'relay','id':'relay','coilResistanceOhm':85," + ALWAYS + "}",
                wire("W1", "battery.plus", "relay.30") + "," + wire("W2", "relay.87", "relay.86") + ","
                        + wire("W3", "relay.85", "body.31"));
        assertThat(get(plan, CODE).ids()).containsExactly("relay");
    }

    /** The larger of two in series has the lesser part of the volts. */
    @Test
    void soIsTheLargerOfTwoUnequalLampsInSeries() {
        Plan plan = plan(
                lamp("small", 2, ALWAYS) + "," + lamp("large", 21, ALWAYS),
                wire("W1", "battery.plus", "small.a") + "," + wire("W2", "small.b", "large.a") + ","
                        + wire("W3", "large.b", "body.31"));
        Finding finding = get(plan, CODE);
        assertThat(finding.ids()).containsExactly("large");
        assertThat(figure(finding, "effectiveV")).isBetween(0.1, 6.0);
        assertThat(word(finding.message(), "supplied")).isEqualTo("little");
        assertThat(instant(finding.message())).containsExactly("running");
    }

    @Test
    void aLoadWithoutAnEarthIsToldByItsTerminalInstead() {
        Plan plan = plan(
                "{'kind':'joint','id':'loose','terminals':['1','2']}," + lamp("lamp", 10, ALWAYS),
                wire("W1", "battery.plus", "lamp.a") + "," + wire("W2", "lamp.b", "loose.1"));
        assertThat(find(plan, CODE)).isEmpty();
        assertThat(get(plan, FindingCode.NO_RETURN).ids()).containsExactly("lamp", "loose");
    }

    /** The plan need not say in which position of a free switch it is meant to work. */
    @Test
    void aLoadThatWorksInSomePositionIsSound() {
        String free = "{'kind':'switch','id':'x','terminals':['30','15'],'positions':[{'name':'out','joins':[]},"
                + "{'name':'in','joins':[['30','15']]}]}";
        assertThat(find(behind(free, "30", "15", ALWAYS), CODE)).isEmpty();
        assertThat(get(behind(free, "30", "15", ALWAYS + ",'meantLiveWhen':[{'switches':{'x':['out']}}]"), CODE)
                        .ids())
                .containsExactly("lamp");
    }

    /** A clock or a parking lamp on the wrong side of the key. */
    @Test
    void aLoadThatGetsNothingWithTheKeyOffIsToldThoughItIsMeantForMore() {
        assertThat(words(
                        get(behind(key("in", "out"), "30", "15", "'meantLive':['off','run','running']"), CODE)
                                .message(),
                        "steps"))
                .containsExactly("off");
        assertThat(words(
                        get(behind(key("in", "out"), "30", "15", "'meantLive':['off']"), CODE)
                                .message(),
                        "steps"))
                .containsExactly("off");
    }

    /** Key off is then said for the moment after running: the alternator keeps it alive until the engine stands. */
    @Test
    void unlessItWorksJustAfterRunning() {
        Plan plan = plan(
                key("in", "out") + ",{'kind':'alternator','id':'alt'},"
                        + lamp("lamp", 10, "'meantLive':['off','running']"),
                wire("W1", "alt.D+", "lamp.a") + "," + wire("W2", "lamp.b", "body.31") + ","
                        + wire("W3", "alt.B-", "body.31") + "," + wire("W4", "alt.B+", "battery.plus") + ","
                        + wire("W5", "battery.plus", "x.30") + "," + wire("W6", "x.15", "alt.D+"));
        assertThat(find(plan, CODE)).isEmpty();
    }

    /** Its module lets no current through while the engine stands. */
    @Test
    void aCoilIsJudgedOnlyWhileTheEngineTurns() {
        String parts = key("in", "out") + ",{'kind':'module','id':'module','limitA':6.5},"
                + "{'kind':'coil','id':'coil','primaryResistanceOhm':0.8,'meantLive':['run','crank','running']}";
        String wires = wire("W1", "battery.plus", "x.30") + "," + wire("W2", "x.15", "coil.15") + ","
                + wire("W3", "coil.1", "module.1") + "," + wire("W5", "module.31", "body.31");
        assertThat(find(plan(parts, wires + "," + wire("W4", "x.15", "module.15")), CODE))
                .isEmpty();
        assertThat(words(get(plan(parts, wires), CODE).message(), "steps")).containsExactly("crank", "running");
    }

    /** 7 V would not pull it in, but hold it. */
    @Test
    void aRelayThatStaysPulledInWorks() {
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'weak battery',"
                + "'system':{'nominalVoltageV':12},'conditions':{'crank':{'emfV':7,'internalResistanceOhm':0.01}},"
                + "'parts':[{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                + "{'kind':'relay','id':'relay','coilResistanceOhm':85," + ALWAYS + "}],'wires':["
                + wire("W0", "battery.minus", "body.31") + "," + wire("W1", "battery.plus", "relay.86") + ","
                + wire("W2", "relay.85", "body.31") + "]}");
        assertThat(find(plan, CODE)).isEmpty();
    }

    @Test
    void aLoadThatTakesHardlyAnythingWorksWhenItHasItsVolts() {
        Plan plan = plan(
                "{'kind':'load','id':'clock','resistanceOhm':50000," + ALWAYS + "}",
                wire("W1", "battery.plus", "clock.a") + "," + wire("W2", "clock.b", "body.31"));
        assertThat(find(plan, CODE)).isEmpty();
    }

    @Test
    void aLoadThatItsOwnLimitsKeepOffIsToldAsThat() {
        Plan plan = plan(
                "{'kind':'load','id':'radio','resistanceOhm':6,'minimumV':13.5," + "'meantLive':['run','running']}",
                wire("W1", "battery.plus", "radio.a") + "," + wire("W2", "radio.b", "body.31"));
        assertThat(words(get(plan, CODE).message(), "steps")).containsExactly("run");
        assertThat(word(get(plan, CODE).message(), "supplied")).isEqualTo("enough");
    }

    @Test
    void voltsLostOnTheWayAreToldAsThatAlone() {
        Plan plan = plan(
                lamp("lamp", 24, ALWAYS),
                "{'id':'W1','from':'battery.plus','to':'lamp.a','resistanceOhm':20},"
                        + wire("W2", "lamp.b", "body.31"));
        assertThat(codes(plan)).contains("voltage-drop").doesNotContain(CODE.code());
    }

    @Test
    void aFeedTooWeakIsToldAsThatAlone() {
        Plan plan = plan(
                "{'kind':'load','id':'amplifier','powerW':100,'minimumV':9,'operateV':9," + ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'amplifier.a','resistanceOhm':1},"
                        + wire("W2", "amplifier.b", "body.31"));
        assertThat(findings(plan))
                .filteredOn(f -> f.ids().contains("amplifier"))
                .isNotEmpty();
        assertThat(codes(plan)).doesNotContain(CODE.code());
    }

    @Test
    void aCoilWithTooFewVoltsBehindItsBallastIsToldAsThatAlone() {
        Plan plan = plan(
                key("in", "out")
                        + ",{'kind':'contact-breaker','id':'points'},{'kind':'ballast','id':'ballast','elementsOhm':[6]},"
                        + "{'kind':'coil','id':'coil','primaryResistanceOhm':1.5,'meantLive':['run','crank','running']}",
                wire("W1", "battery.plus", "x.30") + "," + wire("W2", "x.15", "ballast.a") + ","
                        + wire("W3", "ballast.b", "coil.15") + "," + wire("W4", "coil.1", "points.1") + ","
                        + wire("W5", "points.31", "body.31"));
        assertThat(codes(plan)).contains("ballast-too-large").doesNotContain(CODE.code());
    }

    @ForEachExample
    void noExampleHasOne(String name) {
        assertThat(codes(Plans.example(name))).doesNotContain(CODE.code());
    }
}
