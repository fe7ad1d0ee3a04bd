package loomwright.circuit.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.ContactState;
import loomwright.circuit.TerminalRef;
import loomwright.operation.Solved;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Faults of a switch of whose contacts the plan says that they are stuck, open, worn or bridged. */
class StatedContactTest {
    private static final List<String> HEAD = List.of("30", "56");

    static Plan lights(String position, String faults) {
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'switch','id':'lights','terminals':['30','58','56'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','58','56']]}],'position':'"
                        + position + "','contactFaults':[" + faults + "]},"
                        + "{'kind':'load','id':'side','resistanceOhm':12,'meantLive':['run']},"
                        + "{'kind':'load','id':'head','resistanceOhm':2,'meantLive':['run']}",
                "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W1','from':'battery.plus','to':'lights.30','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'lights.58','to':'side.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'lights.56','to':'head.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'side.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'head.b','to':'body.31','resistanceOhm':0.01}");
    }

    private static String stated(String state, String from, String to, double ohm) {
        return "{'state':'" + state + "','between':['" + from + "','" + to + "']"
                + (ohm > 0 ? ",'resistanceOhm':" + ohm : "") + "}";
    }

    private static double headV(Plan plan) {
        return Solved.of(plan).in(Step.RUN).acrossV(TerminalRef.parse("head.a"), TerminalRef.parse("head.b"));
    }

    private static List<SingleFault> ofLights(List<SingleFault> all) {
        return all.stream().filter(fault -> fault.ids().contains("lights")).toList();
    }

    /** What the plan says already is no mistake that somebody may yet make. */
    @ParameterizedTest
    @CsvSource({"stuck, 30, 56, 0", "open, 30, 56, 0", "worn, 30, 56, 2", "bridged, 58, 56, 0", "bridged, 58, 56, 10"})
    void noMistakeIsOfferedThatThePlanStates(String state, String from, String to, double ohm) {
        Plan plan = lights("off", stated(state, from, to, ohm));
        Switch given = plan.listParts(Switch.class).get(0);
        List<SingleFault> offered = SingleFaults.listContacts(plan);
        assertThat(offered).isNotEmpty().doesNotHaveDuplicates();
        for (SingleFault fault : offered) {
            assertThat(fault.applyTo(plan)).as("%s", fault).isNotEqualTo(plan);
            if (fault instanceof ShortBetween bridge) {
                assertThat(given.alwaysClosed())
                        .as("%s", fault)
                        .noneMatch(closed -> List.of(
                                        bridge.one().terminal(), bridge.other().terminal())
                                .containsAll(List.of(closed.from(), closed.to())));
            } else if (fault instanceof OpenContact open) {
                assertThat(given.faults().anyMatch(said -> said.isBetween(open.between())))
                        .isFalse();
            } else if (fault instanceof WornContact worn) {
                assertThat(given.faults().anyMatch(said -> said.isBetween(worn.between())))
                        .isFalse();
            }
        }
    }

    /** With 56 welded, head and side stay closed alike, and a switch that is stuck at side leaves the headlamps as they were. */
    @Test
    void aSwitchStaysOnceInPositionsThatAreTheSame() {
        assertThat(SingleFaults.listContacts(lights("off", stated("stuck", "30", "56", 0))))
                .filteredOn(StuckSwitch.class::isInstance)
                .containsExactly(new StuckSwitch("lights", "off"), new StuckSwitch("lights", "side"));
        assertThat(SingleFaults.listContacts(lights("off", stated("open", "30", "56", 0))))
                .filteredOn(StuckSwitch.class::isInstance)
                .containsExactly(new StuckSwitch("lights", "side"), new StuckSwitch("lights", ""));
    }

    /** A switch with one contact that is said to be open or stuck stays as it is: nothing is left of it to be listed. */
    @ParameterizedTest
    @ValueSource(strings = {"open", "stuck"})
    void aSwitchWithOneContactStaysAsThePlanSaysAndIsNotListedSo(String state) {
        Plan plan = Plans.of(
                "{'kind':'switch','id':'horn','terminals':['1','2'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['1','2']]}],'contactFaults':[{'state':'" + state
                        + "','between':['1','2']}]}",
                "");
        assertThat(SingleFaults.listContacts(plan)).noneMatch(StuckSwitch.class::isInstance);
    }

    /** 12.6 V over 2 ohm of lamp and 2 ohm of contact, and 0.05 of leads: a switch that stays put keeps its worn contact. */
    @Test
    void aSwitchThatStaysKeepsWhatIsWrongWithItsContacts() {
        Plan plan = lights("off", stated("worn", "30", "56", 2));
        assertThat(headV(new StuckSwitch("lights", "head").applyTo(plan))).isBetween(6.0, 6.4);
        assertThat(headV(new StuckSwitch("lights", "").applyTo(plan))).isLessThan(0.001);
        Plan welded = lights("off", stated("stuck", "30", "56", 0));
        assertThat(headV(new StuckSwitch("lights", "side").applyTo(welded))).isGreaterThan(12);
        Plan bridged = lights("off", stated("bridged", "58", "56", 0));
        assertThat(headV(new StuckSwitch("lights", "side").applyTo(bridged))).isGreaterThan(12);
    }

    /** Corrosion adds to the 2 ohm that the plan states: 12.6 V over 2 + 2 + 4 ohm. */
    @Test
    void aBadJointMakesAWornContactWorse() {
        Plan plan = lights("head", stated("worn", "30", "56", 2));
        assertThat(headV(new BadJoint("lights", 4).applyTo(plan))).isCloseTo(12.6 * 2 / 8, within(0.05));
    }

    @Test
    void oneContactOpensOrWearsAndTheOthersStaySound() {
        Plan plan = lights("head", "");
        Plan open = new OpenContact("lights", HEAD).applyTo(plan);
        assertThat(headV(open)).isLessThan(0.001);
        assertThat(Solved.of(open).in(Step.RUN).acrossV(TerminalRef.parse("side.a"), TerminalRef.parse("side.b")))
                .isGreaterThan(12);
        assertThat(headV(new WornContact("lights", HEAD, 2).applyTo(plan))).isCloseTo(12.6 / 2, within(0.2));
    }

    /** A diagnosis may find that the plan is wrong about a contact: sound, of other ohms, or never closing. */
    @ParameterizedTest
    @CsvSource({"stuck, 30, 56, 0", "open, 30, 56, 0", "worn, 30, 56, 2", "bridged, 58, 56, 0"})
    void whatThePlanStatesMayBeWrong(String state, String from, String to, double ohm) {
        Plan plan = lights("head", stated(state, from, to, ohm));
        List<SingleFault> all = ofLights(SingleFaults.listWithinParts(plan));
        assertThat(all).doesNotHaveDuplicates();
        SingleFault sound = all.stream()
                .filter(SoundContact.class::isInstance)
                .reduce((one, other) -> {
                    throw new AssertionError("two");
                })
                .orElseThrow();
        assertThat(sound.applyTo(plan)).isEqualTo(lights("head", ""));
        assertThat(Stream.of(ContactState.values()).map(Enum::name))
                .contains(((SoundContact) sound).stated().name());
        assertThat(SingleFaults.listContacts(plan)).noneMatch(SoundContact.class::isInstance);
    }
}
