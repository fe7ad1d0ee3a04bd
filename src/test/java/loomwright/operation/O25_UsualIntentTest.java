package loomwright.operation;

import static java.util.Map.entry;
import static loomwright.circuit.Condition.ACCESSORY;
import static loomwright.circuit.Condition.CRANK;
import static loomwright.circuit.Condition.RUN;
import static loomwright.circuit.Condition.RUNNING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Assumption;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Switch;
import loomwright.network.NetworkLimits;
import loomwright.operation.UsualIntent.Rule;
import loomwright.operation.UsualIntent.Usual;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A plan may leave unsaid when a load is meant to be live: the usual of its kind and of the switches that feed it counts. */
class O25_UsualIntentTest {
    private static final String SUPPLY = "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
            + "{'kind':'switch','id':'key','terminals':['30','15','50','acc'],'positions':["
            + "{'name':'off','joins':[]},{'name':'acc','joins':[['30','acc']]},{'name':'on','joins':[['30','15','acc']]},"
            + "{'name':'start','joins':[['30','15','50']]}],"
            + "'positionByCondition':{'off':'off','accessory':'acc','run':'on','crank':'start','running':'on'}},";
    private static final String CABLES = wire("E", "battery.minus", "body.31") + wire("K", "battery.plus", "key.30");

    @Test
    void aLoadOnTheKeyIsMeantWhileTheKeyFeedsIt() {
        Usual radio = usual(load("radio"), wire("1", "key.acc", "radio.a") + earth("radio"), "radio");
        assertThat(radio.rule()).isEqualTo(Rule.FED);
        assertThat(radio.conditions()).containsExactly(ACCESSORY, RUN, RUNNING);
        assertThat(radio.when()).isEmpty();
    }

    @Test
    void aLoadBehindASwitchIsMeantInThePositionsThatFeedIt() {
        String lights =
                "{'kind':'switch','id':'lights','terminals':['30','58','56'],'positions':[{'name':'out','joins':[]},"
                        + "{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','58','56']]}]}";
        String wires = wire("1", "battery.plus", "lights.30")
                + wire("2", "lights.58", "tail.a")
                + wire("3", "lights.56", "head.a")
                + earth("tail")
                + earth("head");
        String parts = lights + "," + lamp("tail") + "," + lamp("head");
        assertThat(usual(parts, wires, "tail"))
                .returns(Rule.SWITCHED, Usual::rule)
                .returns(List.of(Condition.values()), Usual::conditions)
                .returns(List.of(when("lights", "side", "head")), Usual::when);
        assertThat(usual(parts, wires, "head").when()).containsExactly(when("lights", "head"));
    }

    @Test
    void aFanRunsByItsThermostatOrByItsOverride() {
        String wires = wire("1", "key.15", "thermostat.a")
                + wire("2", "thermostat.b", "fan.33")
                + wire("3", "battery.plus", "override.a")
                + wire("4", "override.b", "fan.33")
                + wire("5", "fan.32", "body.31");
        Usual fan = usual(onOff("thermostat") + "," + onOff("override") + "," + motor("fan"), wires, "fan");
        assertThat(fan.conditions()).containsExactly(Condition.values());
        assertThat(fan.when())
                .containsExactlyInAnyOrder(
                        when("override", "on"), new LiveAlternative(List.of(RUN, CRANK, RUNNING), on("thermostat")));
    }

    @Test
    void aFilamentIsForStopOrTurn() {
        String turn = "{'kind':'switch','id':'turn','terminals':['in','stop','left','right'],'positions':["
                + "{'name':'middle','joins':[['stop','left','right']]},"
                + "{'name':'left','joins':[['in','left'],['stop','right']]},"
                + "{'name':'right','joins':[['in','right'],['stop','left']]}]}";
        String wires = wire("1", "battery.plus", "brake.a")
                + wire("2", "brake.b", "turn.stop")
                + wire("3", "key.15", "turn.in")
                + wire("4", "turn.left", "rear-left.a")
                + earth("rear-left");
        Usual lamp = usual(onOff("brake") + "," + turn + "," + lamp("rear-left"), wires, "rear-left");
        assertThat(lamp.when())
                .containsExactlyInAnyOrder(
                        new LiveAlternative(null, Map.of("brake", List.of("on"), "turn", List.of("middle", "right"))),
                        new LiveAlternative(List.of(RUN, CRANK, RUNNING), Map.of("turn", List.of("left"))));
    }

    @Test
    void aWiperRunsOnByItsParkContact() {
        String wiper = "{'kind':'switch','id':'wiper','terminals':['15','53','park'],'positions':["
                + "{'name':'off','joins':[['park','53']]},{'name':'on','joins':[['15','53']]}]}";
        String park = "{'kind':'switch','id':'park','terminals':['15','out'],'positions':["
                + "{'name':'parked','joins':[]},{'name':'under-way','joins':[['15','out']]}]}";
        String wires = wire("1", "key.15", "wiper.15")
                + wire("2", "key.15", "park.15")
                + wire("3", "park.out", "wiper.park")
                + wire("4", "wiper.53", "motor.33")
                + wire("5", "motor.32", "body.31");
        Usual motor = usual(wiper + "," + park + "," + motor("motor"), wires, "motor");
        assertThat(motor.conditions()).containsExactly(RUN, CRANK, RUNNING);
        assertThat(motor.when())
                .containsExactlyInAnyOrder(
                        when("wiper", "on"),
                        new LiveAlternative(null, Map.of("park", List.of("under-way"), "wiper", List.of("off"))));
    }

    @Test
    void aSwitchOnTheEarthSideCountsAsOneInTheFeed() {
        String wires =
                wire("1", "battery.plus", "roof.a") + wire("2", "roof.b", "door.a") + wire("3", "door.b", "body.31");
        assertThat(usual(onOff("door") + "," + lamp("roof"), wires, "roof").when())
                .containsExactly(when("door", "on"));
    }

    @Test
    void aRelayIsMeantByItsWindingAndWhatItsContactsFeedWithIt() {
        String relay = "{'kind':'relay','id':'relay','coilResistanceOhm':85}";
        String wires = wire("1", "battery.plus", "relay.30")
                + wire("2", "battery.plus", "relay.86")
                + wire("3", "relay.85", "push.a")
                + wire("4", "push.b", "body.31")
                + wire("5", "relay.87", "horn.a")
                + earth("horn")
                + wire("6", "relay.87a", "idle.a")
                + earth("idle");
        String parts = relay + "," + onOff("push") + "," + load("horn") + "," + load("idle");
        assertThat(usual(parts, wires, "relay").when()).containsExactly(when("push", "on"));
        assertThat(usual(parts, wires, "horn").when()).containsExactly(when("push", "on"));
        assertThat(usual(parts, wires, "idle").when()).containsExactly(when("push", "off"));
    }

    @Test
    void aRelayThatHoldsItselfIsMeantByWhatPullsItIn() {
        String relay = "{'kind':'relay','id':'relay','coilResistanceOhm':85}";
        String wires = wire("1", "battery.plus", "relay.30")
                + wire("2", "battery.plus", "push.a")
                + wire("3", "push.b", "relay.86")
                + wire("4", "relay.87", "relay.86")
                + wire("5", "relay.85", "body.31");
        assertThat(usual(relay + "," + onOff("push"), wires, "relay").when()).containsExactly(when("push", "on"));
    }

    @Test
    void noWayLeadsThroughAnotherLoadNorAgainstAFeed() {
        String wires = wire("1", "battery.plus", "first.a")
                + earth("first")
                + wire("2", "first.b", "splice.1")
                + wire("3", "splice.2", "second.a")
                + earth("second")
                + "{'id':'4','from':'third.a','to':'key.15','resistanceOhm':0.01,'directed':true},"
                + earth("third");
        String parts = "{'kind':'joint','id':'splice','terminals':['1','2']}," + load("first") + "," + load("second")
                + "," + load("third");
        assertThat(usual(parts, wires, "first").rule()).isEqualTo(Rule.FED);
        for (String unfed : List.of("second", "third")) {
            assertThat(usual(parts, wires, unfed))
                    .returns(Rule.UNFED, Usual::rule)
                    .returns(List.of(), Usual::conditions);
        }
    }

    @Test
    void ofTwoLampsInSeriesTheSecondIsMeantWithTheFirst() {
        String wires = wire("1", "key.15", "first.a") + wire("2", "first.b", "second.a") + earth("second");
        assertThat(usual(lamp("first") + "," + lamp("second"), wires, "second").conditions())
                .containsExactly(RUN, CRANK, RUNNING);
    }

    @Test
    void ofPlugsInSeriesTheLastIsMeantWithTheFirst() {
        String wires = wire("1", "key.15", "first.a")
                + wire("2", "first.b", "second.a")
                + wire("3", "second.b", "third.a")
                + wire("4", "third.b", "fourth.a")
                + earth("fourth");
        String four = String.join(",", lamp("fourth"), lamp("third"), lamp("second"), lamp("first"));
        for (String one : List.of("first", "second", "third", "fourth")) {
            assertThat(usual(four, wires, one).conditions()).containsExactly(RUN, CRANK, RUNNING);
        }
    }

    @Test
    void starterAndCoilHaveTheTimesOfTheirKind() {
        String parts = "{'kind':'solenoid','id':'solenoid','holdInResistanceOhm':1.2},"
                + "{'kind':'motor','id':'starter','resistanceOhm':0.06},"
                + "{'kind':'coil','id':'coil','primaryResistanceOhm':3},{'kind':'contact-breaker','id':'points'},"
                + onOff("neutral");
        // The key's 50 goes through the contact of the gearbox; its 15 is dead while cranking in nothing here.
        String wires = wire("1", "battery.plus", "solenoid.30")
                + wire("2", "key.50", "neutral.a")
                + wire("3", "neutral.b", "solenoid.50")
                + wire("4", "solenoid.31", "body.31")
                + wire("5", "solenoid.45", "starter.33")
                + wire("6", "starter.32", "body.31")
                + wire("7", "key.15", "coil.15")
                + wire("8", "coil.1", "points.1")
                + wire("9", "points.31", "body.31");
        for (String starting : List.of("solenoid", "starter")) {
            assertThat(usual(parts, wires, starting))
                    .returns(Rule.STARTER, Usual::rule)
                    .returns(List.of(CRANK), Usual::conditions)
                    .returns(List.of(when("neutral", "on")), Usual::when);
        }
        assertThat(usual(parts, wires, "coil"))
                .returns(Rule.IGNITION, Usual::rule)
                .returns(List.of(RUN, CRANK, RUNNING), Usual::conditions)
                .returns(List.of(), Usual::when);
    }

    /** Its feed forgotten, a coil is still meant: that is what a review then tells. */
    @Test
    void aKindKeepsItsTimesWithoutAFeed() {
        assertThat(usual("{'kind':'coil','id':'coil','primaryResistanceOhm':3}", wire("1", "coil.1", "body.31"), "coil")
                        .conditions())
                .containsExactly(RUN, CRANK, RUNNING);
    }

    @ParameterizedTest
    @ValueSource(strings = {"negative", "positive"})
    void aChargeLampIsMeantUntilTheEngineRuns(String earth) {
        Plan plan = withAlternator(earth, "");
        assertThat(UsualIntent.of(plan))
                .extracting(Usual::rule, Usual::conditions)
                .containsExactly(tuple(Rule.CHARGE_LAMP, List.of(RUN, CRANK)));
    }

    /** It is lit while the alternator still feeds it and the key's side is dead; stated or not, that is no fault. */
    @ParameterizedTest
    @ValueSource(strings = {"", ",'meantLive':['run','crank']", ",'meantLive':['run','crank','running']"})
    void aChargeLampMayBeLitWhileTheEngineRunsDown(String meant) {
        Plan plan = UsualIntent.complete(withAlternator("negative", meant));
        Consumer lamp = plan.listParts(Consumer.class).get(0);
        assertThat(Intent.meantLive(lamp, plan, Step.OFF_ENGINE_TURNING)).isTrue();
        assertThat(Intent.settings(lamp, plan, Step.OFF_ENGINE_TURNING, Set.of(lamp.id())))
                .containsExactly(Map.of());
        for (Step dark : List.of(Step.OFF, Step.ACCESSORY, Step.OFF_AGAIN)) {
            assertThat(Intent.meantLive(lamp, plan, dark)).isFalse();
        }
    }

    /** A choke at D+ is fed by it: no charge lamp, though it leads there. */
    @Test
    void whatTheAlternatorFeedsIsMeantWhileItRuns() {
        Plan plan = Plans.of(
                SUPPLY + "{'kind':'alternator','id':'alt'}," + load("choke"),
                tail(CABLES
                        + wire("1", "alt.B+", "battery.plus")
                        + wire("2", "alt.B-", "body.31")
                        + wire("3", "alt.D+", "choke.a")
                        + earth("choke")));
        assertThat(UsualIntent.of(plan).get(0))
                .returns(Rule.FED, Usual::rule)
                .returns(List.of(RUNNING), Usual::conditions);
        assertThat(Intent.meantLive(plan.listParts(Consumer.class).get(0), plan, Step.OFF_ENGINE_TURNING))
                .isFalse();
    }

    /** A lost earth is a fault, no sign that the lamp is not meant to be lit. */
    @Test
    void aLostEarthChangesNothing() {
        assertThat(usual(lamp("lamp"), wire("1", "key.15", "lamp.a"), "lamp").conditions())
                .containsExactly(RUN, CRANK, RUNNING);
    }

    @Test
    void whatThePlanSaysCounts() {
        String wires = wire("1", "battery.plus", "lamp.a") + earth("lamp");
        String stated = "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':5,'meantLive':['run']}";
        assertThat(UsualIntent.of(plan(stated, wires))).isEmpty();
        Plan plan = plan(stated, wires);
        assertThat(UsualIntent.complete(plan)).isSameAs(plan);
    }

    @Test
    void switchesWithoutConditionsCountInTheUsualOnes() {
        String lamp =
                "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':5,'meantLiveWhen':[{'switches':{'fog':['on']}}]}";
        Usual usual = usual(lamp + "," + onOff("fog"), wire("1", "key.15", "lamp.a") + earth("lamp"), "lamp");
        assertThat(usual.conditions()).containsExactly(RUN, CRANK, RUNNING);
        assertThat(usual.when()).containsExactly(when("fog", "on"));
    }

    /** What was filled in is what the formulas say in each single setting. */
    @Test
    void anAlternativeHoldsInTheSettingsThatItNames() {
        String lamp = "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':5,'meantLive':['off','run'],'meantLiveWhen':["
                + "{'switches':{'one':['on']}},{'conditions':['run'],'switches':{'two':['on'],'key':['on']}}]}";
        Plan plan = plan(lamp + "," + onOff("one") + "," + onOff("two"), earth("lamp"));
        assertThat(meant(plan, Step.OFF)).isFalse();
        assertThat(meant(set(plan, "one"), Step.OFF)).isTrue();
        assertThat(meant(set(plan, "two"), Step.OFF)).isFalse();
        assertThat(meant(set(plan, "two"), Step.RUN)).isTrue();
        assertThat(meant(set(plan, "one"), Step.RUNNING)).isFalse();
        Consumer consumer = plan.listParts(Consumer.class).get(0);
        assertThat(Intent.settings(consumer, plan, Step.RUN, Set.of())).containsExactly(on("one"), on("two"));
        assertThat(Intent.settings(consumer, plan, Step.OFF, Set.of())).containsExactly(on("one"));
        assertThat(Intent.settings(consumer, plan, Step.CRANK, Set.of())).isEmpty();
    }

    @Test
    void theAnswerSaysWhatWasFilledInOnceForAllThatAreAlike() {
        Plan plan = plan(
                lamp("left") + "," + lamp("right") + "," + load("spare") + "," + load("other"),
                wire("1", "key.15", "left.a") + wire("2", "key.15", "right.a") + earth("left") + earth("right"));
        List<Assumption> assumptions =
                PlanAnswer.of(plan, NetworkLimits.defaults()).assumptions();
        assertThat(assumptions)
                .extracting(Assumption::code, Assumption::ids, Assumption::assumed)
                .containsExactly(
                        tuple(
                                "meant-live-fed",
                                List.of("left", "right"),
                                Map.ofEntries(entry("meantLive", List.of(RUN, CRANK, RUNNING)))),
                        tuple(
                                "meant-live-unfed",
                                List.of("spare", "other"),
                                Map.ofEntries(entry("meantLive", List.of()))));
    }

    /** The table of the pages is that of the code. */
    @ParameterizedTest
    @EnumSource
    void theTableOfTheDocsSaysTheSame(Rule rule) throws IOException {
        String name = IntentAssumptions.code(rule);
        List<String> cells = Files.readAllLines(Path.of("docs/plans.md")).stream()
                .filter(line -> line.contains("| `" + name + "` |"))
                .flatMap(line -> Arrays.stream(line.split("\\|")))
                .map(String::strip)
                .toList();
        String conditions = rule.conditions().size() == Condition.values().length
                ? "any"
                : rule.conditions().isEmpty()
                        ? "none"
                        : String.join(
                                ", ",
                                rule.conditions().stream()
                                        .map(c -> c.name().toLowerCase(Locale.ROOT))
                                        .toList());
        assertThat(cells).hasSize(5).contains(conditions);
    }

    private static Plan withAlternator(String earth, String meant) {
        boolean negative = earth.equals("negative");
        String live = negative ? "plus" : "minus";
        return Plans.of(
                12,
                earth,
                SUPPLY + "{'kind':'alternator','id':'alt'},{'kind':'lamp','id':'charge','ratedV':12,'ratedW':3" + meant
                        + "}",
                tail(wire("E", "battery." + (negative ? "minus" : "plus"), "body.31")
                        + wire("K", "battery." + live, "key.30")
                        + wire("1", negative ? "alt.B+" : "alt.B-", "battery." + live)
                        + wire("2", negative ? "alt.B-" : "alt.B+", "body.31")
                        + wire("3", "key.15", "charge.a")
                        + wire("4", "charge.b", "alt.D+")));
    }

    private static boolean meant(Plan plan, Step step) {
        return Intent.meantLive(plan.listParts(Consumer.class).get(0), plan, step);
    }

    private static Plan set(Plan plan, String id) {
        return plan.withPart(((Switch) plan.findPart(id).orElseThrow()).withPosition("on"));
    }

    private static Usual usual(String parts, String wires, String id) {
        return UsualIntent.of(plan(parts, wires)).stream()
                .filter(usual -> usual.consumer().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static Plan plan(String parts, String wires) {
        return Plans.of(SUPPLY + parts, tail(CABLES + wires));
    }

    private static String tail(String wires) {
        return wires.substring(0, wires.length() - 1);
    }

    private static LiveAlternative when(String id, String... positions) {
        return LiveAlternative.of(Map.of(id, List.of(positions)));
    }

    private static Map<String, List<String>> on(String... ids) {
        return Stream.of(ids).collect(Collectors.toMap(id -> id, id -> List.of("on")));
    }

    private static String onOff(String id) {
        return "{'kind':'switch','id':'" + id + "','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['a','b']]}]}";
    }

    private static String lamp(String id) {
        return "{'kind':'lamp','id':'" + id + "','ratedV':12,'ratedW':5}";
    }

    private static String load(String id) {
        return "{'kind':'load','id':'" + id + "','resistanceOhm':12}";
    }

    private static String motor(String id) {
        return "{'kind':'motor','id':'" + id + "','resistanceOhm':3}";
    }

    private static String earth(String id) {
        return wire(id + "-earth", id + ".b", "body.31");
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + (Character.isDigit(id.charAt(0)) ? "W" + id : id) + "','from':'" + from + "','to':'" + to
                + "','resistanceOhm':0.01},";
    }
}
