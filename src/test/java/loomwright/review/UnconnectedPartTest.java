package loomwright.review;

import static loomwright.review.Reviews.ALWAYS;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.List;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.operation.FeedStrength;
import loomwright.operation.MissingConnections;
import loomwright.operation.MissingConnections.Kind;
import loomwright.operation.Solved;
import loomwright.operation.Step;
import loomwright.review.context.FindingCode;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A fault of the vehicle is a valid plan with a finding that names part and terminal: a lead off, a lost earth. */
class UnconnectedPartTest {
    private static final String LAMP = "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21,%s}";
    private static final String NEVER = "'meantLive':[]";

    private static String lamp(String meant) {
        return LAMP.formatted(meant);
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.01}";
    }

    private static List<Finding> connections(Plan plan) {
        return findings(plan).stream()
                .filter(f -> f.code().equals(FindingCode.TERMINAL_NOT_CONNECTED.code())
                        || f.code().equals(FindingCode.NO_RETURN.code()))
                .toList();
    }

    private static boolean isToldOtherwise(Plan plan) {
        return findings(plan).stream().anyMatch(f -> f.code().equals(FindingCode.LOAD_NOT_POWERED.code()));
    }

    @Test
    void aLampWithoutAnEarthIsToldOnceWithItsTerminal() {
        Plan plan = plan(lamp(ALWAYS), wire("W1", "battery.plus", "lamp.a"));
        assertThat(connections(plan))
                .extracting(Finding::code, Finding::severity, Finding::ids)
                .containsExactly(tuple(FindingCode.TERMINAL_NOT_CONNECTED.code(), Severity.WARNING, List.of("lamp")));
        assertThat(missing(plan)).containsExactly(tuple(Kind.TERMINAL_NOT_CONNECTED, "lamp.b"));
        assertThat(isToldOtherwise(plan)).isFalse();
        assertThat(Solved.of(plan).in(Step.RUN).solved()).isTrue();
    }

    @Test
    void soIsALeadOffAtItsFeed() {
        Plan plan = plan(
                lamp(ALWAYS) + "," + door(""),
                wire("W1", "lamp.b", "body.31") + "," + wire("W2", "battery.plus", "door.a"));
        assertThat(missing(plan)).containsExactly(tuple(Kind.TERMINAL_NOT_CONNECTED, "lamp.a"));
        assertThat(connections(plan)).extracting(Finding::severity).containsExactly(Severity.WARNING);
    }

    /** Two lamps share an earth that is lost: both are named, at their own terminals. */
    @Test
    void aLostEarthIsToldOfEachThatHangsOnIt() {
        Plan plan = plan(
                lamp(ALWAYS) + ",{'kind':'load','id':'fan','resistanceOhm':3," + ALWAYS + "},"
                        + "{'kind':'joint','id':'splice','terminals':['1','2','3']}",
                wire("W1", "battery.plus", "lamp.a") + "," + wire("W2", "battery.plus", "fan.a") + ","
                        + wire("W3", "lamp.b", "splice.1") + "," + wire("W4", "fan.b", "splice.2"));
        assertThat(missing(plan)).containsExactly(tuple(Kind.NO_RETURN, "lamp.b"), tuple(Kind.NO_RETURN, "fan.b"));
        assertThat(connections(plan)).extracting(Finding::severity).containsOnly(Severity.WARNING);
        assertThat(isToldOtherwise(plan)).isFalse();
    }

    @Test
    void anOpenSwitchInTheReturnIsNoFaultIfItCanClose() {
        Plan plan = plan(lamp(ALWAYS) + "," + door(""), returnThroughDoor());
        assertThat(connections(plan)).isEmpty();
        assertThat(isToldOtherwise(plan)).isFalse();
        assertThat(Solved.of(plan).in(Step.RUN).activity((Consumer)
                        plan.findPart("lamp").orElseThrow()))
                .isEqualTo(FeedStrength.DEAD);
    }

    @Test
    void oneThatNeverClosesInItsTimeIs() {
        String open = ",'positionByCondition':{'off':'on','accessory':'off','run':'off','crank':'off','running':'off'}";
        Plan plan = plan(lamp("'meantLive':['run','running']") + "," + door(open), returnThroughDoor());
        assertThat(missing(plan)).containsExactly(tuple(Kind.NO_RETURN, "lamp.b"));
        assertThat(missing(plan(lamp("'meantLive':['off']") + "," + door(open), returnThroughDoor())))
                .isEmpty();
    }

    @Test
    void ofTwoLampsInSeriesTheFirstHasTheSecondForReturn() {
        Plan plan = plan(
                lamp(ALWAYS) + ",{'kind':'load','id':'fan','resistanceOhm':3," + ALWAYS + "}",
                wire("W1", "battery.plus", "lamp.a") + "," + wire("W2", "lamp.b", "fan.a") + ","
                        + wire("W3", "fan.b", "body.31"));
        assertThat(missing(plan)).isEmpty();
    }

    @Test
    void whatIsNeverMeantToWorkIsANote() {
        Plan plan = plan(lamp(NEVER), wire("W1", "battery.plus", "lamp.a"));
        assertThat(connections(plan)).extracting(Finding::severity).containsExactly(Severity.NOTE);
    }

    @Test
    void aSparePartIsNotTold() {
        Plan plan = plan(lamp(NEVER) + "," + door(""), wire("W1", "battery.plus", "door.a"));
        assertThat(missing(plan)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "{'kind':'fuse';'id':'x';'ratingA':10}, x.a, x.b, NOTE",
        "{'kind':'diode';'id':'x'}, x.cathode, x.anode, NOTE",
        "{'kind':'alternator';'id':'x'}, x.B+, x.B-, WARNING",
        "{'kind':'module';'id':'x'}, x.15, x.1, WARNING"
    })
    void aPartWithALooseTerminalIsToldByWhatItDoes(String part, String wired, String loose, Severity severity) {
        Plan plan = plan(part.replace(';', ','), wire("W1", "battery.plus", wired));
        assertThat(missing(plan)).contains(tuple(Kind.TERMINAL_NOT_CONNECTED, loose));
        assertThat(connections(plan)).extracting(Finding::severity).containsOnly(severity);
    }

    private static List<Tuple> missing(Plan plan) {
        return MissingConnections.of(plan).stream()
                .map(m -> tuple(m.kind(), m.terminal().toString()))
                .toList();
    }

    private static String door(String tied) {
        return "{'kind':'switch','id':'door','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['a','b']]}]" + tied + "}";
    }

    private static String returnThroughDoor() {
        return wire("W1", "battery.plus", "lamp.a") + "," + wire("W2", "lamp.b", "door.a") + ","
                + wire("W3", "door.b", "body.31");
    }
}
