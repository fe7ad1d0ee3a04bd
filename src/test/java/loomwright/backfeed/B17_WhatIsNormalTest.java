package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.Optional;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 17: what is normal is no backfeed, what a plan leaves out has a usual answer, a lead that is off is a valid plan. */
class B17_WhatIsNormalTest {
    private static final String KEY =
            "{'kind':'switch','id':'key','terminals':['30','15','50'],'positions':[{'name':'off','joins':[]},"
                    + "{'name':'on','joins':[['30','15']]},{'name':'start','joins':[['30','15','50']]}],"
                    + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'start','running':'on'}}";
    private static final String CAR = "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + KEY + ",";
    private static final String SUPPLY = "battery.minus body.31,battery.plus key.30,";

    static String contact(String id) {
        return "{'kind':'switch','id':'" + id + "','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['a','b']]}]},";
    }

    static Plan car(String parts, String joined) {
        StringBuilder wires = new StringBuilder();
        int number = 1;
        for (String pair : (SUPPLY + joined).split(",", -1)) {
            String[] ends = pair.split(" ", -1);
            wires.append(number == 1 ? "" : ",")
                    .append("{'id':'W" + number++ + "','from':'" + ends[0] + "','to':'" + ends[1]
                            + "','resistanceOhm':0.01}");
        }
        return Plans.of(CAR + parts, wires.toString());
    }

    // Fed past its own switch.

    /** A wire from another circuit makes a backfeed, whatever the load's own switch would do. */
    @Test
    void aLoadFedPastItsOwnOpenSwitchIsMoreThanANote() {
        Plan plan = car(
                contact("wiper-switch") + contact("fan-switch")
                        + "{'kind':'motor','id':'wiper','resistanceOhm':4,'meantLive':['run','crank','running'],"
                        + "'meantLiveWhen':[{'switches':{'wiper-switch':['on']}}]},"
                        + "{'kind':'motor','id':'fan','resistanceOhm':6,'meantLive':['run','crank','running'],"
                        + "'meantLiveWhen':[{'switches':{'fan-switch':['on']}}]}",
                "key.15 wiper-switch.a,wiper-switch.b wiper.33,wiper.32 body.31,"
                        + "key.15 fan-switch.a,fan-switch.b fan.33,fan.32 body.31,wiper.33 fan.33");
        assertThat(Searched.of(plan).feed("wiper").severity().name()).isNotEqualTo("NOTE");
    }

    // The charge lamp.

    @ParameterizedTest
    @ValueSource(strings = {"'kind':'lamp','ratedV':12,'ratedW':3", "'kind':'lamp','ratedV':12,'ratedW':2"})
    void theChargeLampMayBeLitWhileTheEngineRunsDown(String lamp) {
        Plan plan = car(
                "{'kind':'alternator','id':'machine'},{" + lamp + ",'id':'charge-lamp','meantLive':['run','crank']},"
                        + "{'kind':'load','id':'ignition','resistanceOhm':3,'meantLive':['run','crank','running']}",
                "machine.B- body.31,machine.B+ battery.plus,key.15 charge-lamp.a,charge-lamp.b machine.D+,"
                        + "key.15 ignition.a,ignition.b body.31");
        Optional<UnintendedFeed> feed = Searched.of(plan).find("charge-lamp");
        assertThat(feed.stream().flatMap(f -> f.occurrences().stream()))
                .extracting(BackfeedReport.Occurrence::step)
                .doesNotContain(Step.OFF_ENGINE_TURNING);
    }

    // What is left out.

    @Test
    void whenALoadIsMeantToBeLiveMayBeLeftOut() {
        Plan plan = car(
                contact("side") + "{'kind':'lamp','id':'tail','ratedV':12,'ratedW':5},"
                        + "{'kind':'motor','id':'fan','resistanceOhm':6},"
                        + "{'kind':'coil','id':'coil','primaryResistanceOhm':3},"
                        + "{'kind':'solenoid','id':'solenoid','holdInResistanceOhm':3}",
                "battery.plus side.a,side.b tail.a,tail.b body.31,key.15 fan.33,fan.32 body.31,"
                        + "key.15 coil.15,coil.1 body.31,key.50 solenoid.50,solenoid.31 body.31");
        assertThat(Searched.of(plan).report().unintendedFeeds()).isEmpty();
    }

    // Faults are findings.

    @ParameterizedTest
    @ValueSource(
            strings = {
                "key.15 lamp.a",
                "lamp.b body.31",
                "key.15 lamp.a,lamp.b stray.1",
                "key.15 key.50,key.15 lamp.a",
            })
    void aLeadThatIsOffIsAValidPlan(String joined) {
        Plan plan = car(
                "{'kind':'joint','id':'stray','terminals':['1']},"
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21,'meantLive':['run']}",
                joined);
        assertThatCode(() -> PlanAnswer.of(plan, NetworkLimits.defaults())).doesNotThrowAnyException();
    }

    @Test
    void aBatteryWhoseEarthIsLostIsAValidPlan() {
        Plan plan = Plans.of(
                CAR + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21,'meantLive':['run']}",
                "{'id':'W1','from':'battery.plus','to':'key.30','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'key.15','to':'lamp.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.01}");
        assertThatCode(() -> PlanAnswer.of(plan, NetworkLimits.defaults())).doesNotThrowAnyException();
    }
}
