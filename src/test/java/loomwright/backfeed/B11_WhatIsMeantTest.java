package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Condition;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is unintended depends on what is meant: by one of several switches, or by the usual where the plan leaves it unsaid. */
class B11_WhatIsMeantTest {
    private static final String ALWAYS = "'meantLive':['off','accessory','run','crank','running']";

    private static Answer<BackfeedReport> search(Plan plan) {
        return BackfeedAnswer.of(
                plan, BackfeedOptions.USUAL, BackfeedLimits.defaults(), NetworkLimits.defaults(), Progress.UNWATCHED);
    }

    private static List<String> unintended(Plan plan) {
        return search(plan).result().unintendedFeeds().stream()
                .map(UnintendedFeed::load)
                .toList();
    }

    /** A fan fed by its thermostat and by a switch beside it. */
    private static Plan fan(String meant) {
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + onOff("thermostat") + ","
                        + onOff("override") + ",{'kind':'motor','id':'fan','resistanceOhm':1.5" + meant + "}",
                wire("W0", "battery.minus", "body.31") + "," + wire("W1", "battery.plus", "thermostat.a") + ","
                        + wire("W2", "thermostat.b", "fan.33") + "," + wire("W3", "battery.plus", "override.a") + ","
                        + wire("W4", "override.b", "fan.33") + "," + wire("W5", "fan.32", "body.31"));
    }

    @Test
    void aFanByThermostatOrOverrideIsMeantByEither() {
        String one = "," + ALWAYS + ",'meantLiveWhen':[{'switches':{'thermostat':['on']}}]";
        String either =
                "," + ALWAYS + ",'meantLiveWhen':[{'switches':{'thermostat':['on']}},{'switches':{'override':['on']}}]";
        assertThat(unintended(fan(one))).containsExactly("fan");
        assertThat(unintended(fan(either))).isEmpty();
        assertThat(unintended(fan(""))).isEmpty();
    }

    /** One filament behind the brake switch, key or not, and behind the turn switch with the key on. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                ",'meantLive':['off','accessory','run','crank','running'],'meantLiveWhen':["
                        + "{'switches':{'brake':['on']}},"
                        + "{'conditions':['run','crank','running'],'switches':{'turn':['on']}}]"
            })
    void aFilamentForStopOrTurnIsMeantByEither(String meant) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + key() + "," + onOff("brake") + ","
                        + onOff("turn") + ",{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21" + meant + "}",
                wire("W0", "battery.minus", "body.31") + "," + wire("W1", "battery.plus", "brake.a") + ","
                        + wire("W2", "brake.b", "lamp.a") + "," + wire("W3", "battery.plus", "key.30") + ","
                        + wire("W4", "key.15", "turn.a") + "," + wire("W5", "turn.b", "lamp.a") + ","
                        + wire("W6", "lamp.b", "body.31"));
        assertThat(unintended(plan)).isEmpty();
    }

    @Test
    void aWiperIsMeantByItsSwitchOrItsParkContact() {
        String wiper = "{'kind':'switch','id':'wiper','terminals':['15','53','park'],'positions':["
                + "{'name':'off','joins':[['park','53']]},{'name':'on','joins':[['15','53']]}]}";
        String meant = "'meantLive':['run','crank','running'],'meantLiveWhen':[{'switches':{'wiper':['on']}}%s]";
        String wires = wire("W0", "battery.minus", "body.31") + "," + wire("W1", "battery.plus", "key.30") + ","
                + wire("W2", "key.15", "wiper.15") + "," + wire("W3", "key.15", "park.a") + ","
                + wire("W4", "park.b", "wiper.park") + "," + wire("W5", "wiper.53", "motor.33") + ","
                + wire("W6", "motor.32", "body.31");
        String parts = "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + key() + "," + wiper + ","
                + onOff("park") + ",{'kind':'motor','id':'motor','resistanceOhm':3,";
        assertThat(unintended(Plans.of(parts + meant.formatted("") + "}", wires)))
                .containsExactly("motor");
        String both = meant.formatted(",{'switches':{'park':['on']}}");
        assertThat(unintended(Plans.of(parts + both + "}", wires))).isEmpty();
    }

    /** What the two leave in dispute is what the assumption changes. */
    @Test
    void anAssumptionNamesTheFindingThatRestsOnIt() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'joint','id':'lost',"
                        + "'terminals':['1','2']},{'kind':'lamp','id':'first','ratedV':12,'ratedW':21},"
                        + "{'kind':'lamp','id':'second','ratedV':12,'ratedW':21}," + onOff("switch"),
                wire("W0", "battery.minus", "body.31") + "," + wire("W1", "battery.plus", "first.a") + ","
                        + wire("W2", "first.b", "lost.1") + "," + wire("W3", "battery.plus", "switch.a") + ","
                        + wire("W4", "switch.b", "second.a") + "," + wire("W5", "second.b", "lost.2") + ","
                        + "{'id':'W6','from':'second.a','to':'body.31','resistanceOhm':30}");
        assertThat(unintended(plan)).containsExactly("second");
        assertThat(search(plan).assumptions())
                .extracting(Assumption::code, Assumption::ids, Assumption::findings)
                .containsExactly(
                        tuple("meant-live-fed", List.of("first"), List.of()),
                        tuple("meant-live-switched", List.of("second"), List.of("backfeed")));
    }

    /** The lamp between key and D+ is lit by the turning alternator; that is how it works. */
    @ForEachExample
    void noChargeLampIsToldWhileTheEngineRunsDown(String name) {
        Plan example = Plans.example(name);
        // The demo says of it that it is meant with the key off too, which a plan need not say any more.
        Plan plan = example.findPart("charge-lamp")
                .map(lamp -> ((FilamentLamp) lamp).withMeantLive(List.of(Condition.RUN, Condition.CRANK), List.of()))
                .map(example::withPart)
                .orElse(example);
        assertThat(search(plan).result().unintendedFeeds())
                .filteredOn(feed -> feed.load().equals("charge-lamp"))
                .flatExtracting(UnintendedFeed::occurrences)
                .extracting(BackfeedReport.Occurrence::step)
                .doesNotContain(Step.OFF_ENGINE_TURNING);
    }

    private static String key() {
        return "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['30','15']]}],"
                + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}}";
    }

    private static String onOff(String id) {
        return "{'kind':'switch','id':'" + id + "','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['a','b']]}]}";
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.01}";
    }
}
