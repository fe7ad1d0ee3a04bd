package loomwright.circuit.fault;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.TerminalRef;
import loomwright.message.MessageFinder;
import loomwright.operation.Solved;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each fault changes the circuit as its name says and leaves every id and terminal where it was. */
class SingleFaultTest {
    private static final Plan RELAYED = Plans.of(
            "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'fuse','id':'F1','ratingA':10},"
                    + "{'kind':'relay','id':'relay','coilResistanceOhm':85,'meantLive':[]},"
                    + "{'kind':'load','id':'pump','resistanceOhm':4,'meantLive':[]}",
            "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                    + "{'id':'W2','from':'battery.plus','to':'F1.a','resistanceOhm':0.01},"
                    + "{'id':'W3','from':'F1.b','to':'relay.30','resistanceOhm':0.01},"
                    + "{'id':'W4','from':'relay.87','to':'pump.a','resistanceOhm':0.01},"
                    + "{'id':'W5','from':'pump.b','to':'body.31','resistanceOhm':0.01},"
                    + "{'id':'W6','from':'battery.plus','to':'relay.86','resistanceOhm':0.01},"
                    + "{'id':'W7','from':'relay.85','to':'body.31','resistanceOhm':0.01}");

    private static final Batteries ONE = Batteries.of(RELAYED);

    private static double pumpV(SingleFault fault) {
        return acrossV(fault.applyTo(RELAYED), "pump.a", "pump.b");
    }

    private static double acrossV(Plan plan, String one, String other) {
        SolvedStep solved = Solved.of(plan).in(Step.RUN);
        return solved.acrossV(TerminalRef.parse(one), TerminalRef.parse(other));
    }

    @Test
    void aRelayStuckAtRestKeepsItsContactOpenThoughItsWindingIsFed() {
        StuckRelay stuck = new StuckRelay("relay", false);
        assertThat(acrossV(RELAYED, "pump.a", "pump.b")).isGreaterThan(12);
        assertThat(pumpV(stuck)).isZero();
        assertThat(acrossV(stuck.applyTo(RELAYED), "relay.86", "relay.85")).isGreaterThan(12);
    }

    @Test
    void aRelayStuckPulledInFeedsTheLoadWithItsWindingDead() {
        Plan unfed = new WireOff("W6", WireEnd.TO, TerminalRef.parse("relay.86")).applyTo(RELAYED);
        assertThat(acrossV(unfed, "pump.a", "pump.b")).isZero();
        assertThat(acrossV(new StuckRelay("relay", true).applyTo(unfed), "pump.a", "pump.b"))
                .isGreaterThan(12);
    }

    private static final Plan KEYED = Plans.of(
            "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                    + "{'kind':'switch','id':'key','terminals':['30','15','50','75'],'positions':["
                    + "{'name':'off','joins':[]},{'name':'on','joins':[['30','15','75']]},"
                    + "{'name':'start','joins':[['30','15','50']]}],"
                    + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'start','running':'on'}},"
                    + "{'kind':'load','id':'pump','resistanceOhm':4,'meantLive':['run','crank','running']},"
                    + "{'kind':'load','id':'valve','resistanceOhm':40,'meantLive':['crank']}",
            "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                    + "{'id':'W2','from':'battery.plus','to':'key.30','resistanceOhm':0.01},"
                    + "{'id':'W3','from':'key.15','to':'pump.a','resistanceOhm':0.01},"
                    + "{'id':'W4','from':'pump.b','to':'body.31','resistanceOhm':0.01},"
                    + "{'id':'W5','from':'key.50','to':'valve.a','resistanceOhm':0.01},"
                    + "{'id':'W6','from':'valve.b','to':'body.31','resistanceOhm':0.01}");

    private static double loadV(SingleFault fault, Step step, String load) {
        return Solved.of(fault.applyTo(KEYED))
                .in(step)
                .acrossV(TerminalRef.parse(load + ".a"), TerminalRef.parse(load + ".b"));
    }

    /** Only terminals with something on them: 75 has nothing. */
    @Test
    void theContactsOfAKeyWeldTouchOpenWearAndStay() {
        assertThat(SingleFaults.listContacts(KEYED))
                .containsExactly(
                        ShortBetween.of(TerminalRef.parse("key.30"), TerminalRef.parse("key.15")),
                        ShortBetween.of(TerminalRef.parse("key.30"), TerminalRef.parse("key.50")),
                        ShortBetween.of(TerminalRef.parse("key.15"), TerminalRef.parse("key.50")),
                        new OpenContact("key", List.of("30", "15")),
                        new WornContact("key", List.of("30", "15"), SingleFaults.TYPICAL_JOINT_OHM),
                        new OpenContact("key", List.of("30", "50")),
                        new WornContact("key", List.of("30", "50"), SingleFaults.TYPICAL_JOINT_OHM),
                        new StuckSwitch("key", "on"),
                        new StuckSwitch("key", "start"),
                        new StuckSwitch("key", ""));
    }

    @Test
    void aWeldedContactFeedsItsLoadWithTheKeyOffAndNothingElse() {
        SingleFault welded = ShortBetween.of(TerminalRef.parse("key.30"), TerminalRef.parse("key.15"));
        assertThat(loadV(welded, Step.OFF, "pump")).isGreaterThan(12);
        assertThat(loadV(welded, Step.OFF, "valve")).isZero();
    }

    @Test
    void bridgedNeighboursFollowEachOther() {
        SingleFault bridged = ShortBetween.of(TerminalRef.parse("key.15"), TerminalRef.parse("key.50"));
        assertThat(loadV(bridged, Step.RUN, "valve")).isGreaterThan(12);
        assertThat(loadV(bridged, Step.OFF, "valve")).isZero();
    }

    @Test
    void aBadJointTakesItsShareOfTheVoltage() {
        // 12.6 V over 0.01 (battery) + 0.001 + 0.01 + 0.005 (fuse) + 0.01 + 0.0015 (contact) + 0.01 + 0.01 + 3 + 4 ohm,
        // the 85 ohm of the winding beside it.
        assertThat(pumpV(new BadJoint("W4", 3))).isCloseTo(12.6 * 4 / 7.0575, within(0.01));
    }

    /** 11.025 V over 85 ohm of winding and 4 ohm of pump beside it, with 0.01 ohm inside the battery. */
    @Test
    void aDischargedBatteryIsLowWhateverIsSwitchedOn() {
        DischargedBattery flat = new DischargedBattery(ONE, 12.6, 0.02, 0.125);
        assertThat(flat.leftV()).isCloseTo(11.025, within(1e-9));
        assertThat(pumpV(flat)).isCloseTo(0.875 * acrossV(RELAYED, "pump.a", "pump.b"), within(1e-6));
    }

    /**
     * A 12 V battery has 12.24 V half charged and a cell 2.1 V (secondary tables, see {@link loomwright.circuit.BatteryLaw}): 12.5 V lacks
     * neither its charge nor a cell, 11.89 V is empty with all cells.
     */
    @ParameterizedTest
    @CsvSource({
        "12.5, 12.6, BATTERY_PARTLY_CHARGED",
        "12.3, 12.6, BATTERY_PARTLY_CHARGED",
        "12.2, 12.6, BATTERY_FLAT",
        "11.8, 12.6, BATTERY_FLAT",
        "11.5, 12.6, BATTERY_DISCHARGED",
        "10.5, 12.6, BATTERY_DISCHARGED",
        "6.2, 6.3, BATTERY_PARTLY_CHARGED",
        "5.2, 6.3, BATTERY_DISCHARGED",
        "24.9, 25.2, BATTERY_PARTLY_CHARGED"
    })
    void whatABatteryIsCalledGoesByItsVoltsAtRest(double leftV, double restV, FaultText called) {
        DischargedBattery battery = new DischargedBattery(ONE, restV, 0.005, 1 - leftV / restV);
        assertThat(FaultWording.of(battery, RELAYED).code()).isEqualTo(called);
    }

    /** 12.6 V over 0.5 + 0.01 ohm inside and 4.0475 ohm of leads and pump, the winding beside it. */
    @Test
    void aWornBatterySagsByItsOhmsTimesTheCurrent() {
        WornBattery worn = new WornBattery(ONE, 0.003, 0.5);
        assertThat(pumpV(worn)).isCloseTo(12.6 * 4 / 4.5575, within(0.08));
        assertThat(acrossV(worn.applyTo(new BlownFuse("F1").applyTo(RELAYED)), "battery.plus", "battery.minus"))
                .as("hardly any current, hardly any sag")
                .isCloseTo(12.6, within(0.1));
    }

    /** A row of two 6 V batteries hides which of them it is; two of 12 V side by side have one supply, so it is both. */
    @Test
    void onlyOfBatteriesInSeriesIsItSaidThatOneMayHaveIt() {
        for (String nominalV : List.of("6", "7.2")) {
            assertThat(arrangements(two(",'nominalVoltageV':" + nominalV))).containsOnly("row");
        }
        Plan sideBySide = two("");
        assertThat(Batteries.of(sideBySide).ids()).containsExactly("left", "right");
        assertThat(arrangements(sideBySide)).containsOnly("beside");
        assertThat(arrangements(RELAYED)).containsOnly("one");
    }

    private static List<String> arrangements(Plan plan) {
        return Stream.of(DischargedBattery.of(plan, Batteries.of(plan)), WornBattery.of(plan, Batteries.of(plan)))
                .map(fault -> MessageFinder.word(FaultWording.of(fault, plan), "arrangement"))
                .toList();
    }

    private static Plan two(String more) {
        return Plans.of("{'kind':'battery','id':'left'" + more + "},{'kind':'battery','id':'right'" + more + "}", "");
    }

    @Test
    void withTheEngineRunningTheChargingSystemHoldsTheVolts() {
        for (SingleFault fault : List.of(new DischargedBattery(ONE, 12.6, 0.02, 0.5), new WornBattery(ONE, 0.003, 1))) {
            assertThat(fault.applyTo(RELAYED).conditions().running())
                    .isEqualTo(RELAYED.conditions().running());
        }
    }

    @ForEachExample
    void withoutChargeTheBatteryFeedsTheRunningEngineAsItDoesWithTheKeyOn(String name) {
        Plan plan = Plans.example(name);
        SingleFault fault = SingleFaults.listWithinParts(plan).stream()
                .filter(f -> f.kind() == SingleFault.Kind.NOT_CHARGING)
                .findFirst()
                .orElseThrow();
        double atV = Math.abs(batteryV(fault.applyTo(plan)));
        assertThat(atV).isLessThan(1.01 * plan.supply(Condition.RUN).emfV());
        assertThat(Math.abs(batteryV(plan))).isGreaterThan(1.05 * atV);
    }

    /** The live pole feeds the lamp, which hangs on D+; the field winding ends on the pole that is on the chassis. */
    @ParameterizedTest
    @CsvSource({"negative, plus, minus, B+, B-", "positive, minus, plus, B-, B+"})
    void theChargeLampOfAnAlternatorThatGivesNothingStaysLit(
            String earth, String livePost, String earthedPost, String livePole, String earthedPole) {
        Plan plan = Plans.of(
                12,
                earth,
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'alternator','id':'generator'},"
                        + "{'kind':'lamp','id':'telltale','ratedV':12,'ratedW':2.2,'meantLive':['run']}",
                "{'id':'W1','from':'battery." + earthedPost + "','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'generator." + earthedPole + "','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'battery." + livePost + "','to':'generator." + livePole
                        + "','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'battery." + livePost + "','to':'telltale.a','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'telltale.b','to':'generator.D+','resistanceOhm':0.01}");
        Plan faulty = NotCharging.of(plan).applyTo(plan);
        assertThat(lampV(plan, Step.RUN)).isGreaterThan(11);
        assertThat(lampV(plan, Step.RUNNING)).as("sound, it goes out").isLessThan(1);
        assertThat(lampV(faulty, Step.RUN)).isCloseTo(lampV(plan, Step.RUN), within(0.01));
        assertThat(lampV(faulty, Step.RUNNING)).as("without charge it does not").isGreaterThan(11);
    }

    private static double lampV(Plan plan, Step step) {
        return Math.abs(
                Solved.of(plan).in(step).acrossV(TerminalRef.parse("telltale.a"), TerminalRef.parse("telltale.b")));
    }

    @Test
    void severalThatDoNotChargeAreAllNamed() {
        Plan two = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'alternator','id':'left'},{'kind':'alternator','id':'right'}",
                "");
        for (Plan plan : List.of(two, two(""))) {
            assertThat(MessageFinder.words(FaultWording.of(NotCharging.of(plan), plan), "parts"))
                    .containsExactly("left", "right");
        }
    }

    private static double batteryV(Plan plan) {
        return Solved.of(plan)
                .in(Step.RUNNING)
                .acrossV(TerminalRef.parse("battery.plus"), TerminalRef.parse("battery.minus"));
    }

    @Test
    void aLoadThatIsOpenInsideTakesNoCurrentAndGetsItsVolts() {
        Plan faulty = new OpenInside("pump", "pump is open inside.").applyTo(RELAYED);
        assertThat(acrossV(faulty, "pump.a", "pump.b")).isGreaterThan(12.5);
        assertThat(acrossV(faulty, "F1.b", "pump.a")).isCloseTo(0, within(1e-6));
    }

    /** A mistake is what somebody makes; what wears out within a part is only looked for by a meter. */
    @Test
    void whatWearsOutWithinAPartIsNoMistake() {
        List<SingleFault> mistakes = SingleFaults.list(RELAYED);
        List<SingleFault> all = SingleFaults.listWithinParts(RELAYED);
        assertThat(all).startsWith(mistakes.toArray(SingleFault[]::new));
        assertThat(all.subList(mistakes.size(), all.size()))
                .extracting(SingleFault::kind)
                .contains(
                        SingleFault.Kind.OPEN_INSIDE,
                        SingleFault.Kind.SHORT_INSIDE,
                        SingleFault.Kind.VALUE_OFF,
                        SingleFault.Kind.CONTACTS_WORN,
                        SingleFault.Kind.BATTERY_DISCHARGED,
                        SingleFault.Kind.BATTERY_WORN,
                        SingleFault.Kind.NOT_CHARGING);
    }

    private static Offset<Double> within(double offset) {
        return Offset.offset(offset);
    }

    @Test
    void aLostEarthLeavesTheWiresOnItJoined() {
        Plan faulty = new LostEarth("body").applyTo(RELAYED);
        // Battery and loads share the bolt, so they still work, though the chassis is dead.
        assertThat(acrossV(faulty, "pump.a", "pump.b")).isGreaterThan(12);
    }

    @Test
    void aBlownFuseAndALooseWireStopTheCurrent() {
        assertThat(pumpV(new BlownFuse("F1"))).isZero();
        WireOff off = new WireOff("W4", WireEnd.TO, TerminalRef.parse("pump.a"));
        assertThat(pumpV(off)).isZero();
        Plan faulty = off.applyTo(RELAYED);
        assertThat(acrossV(faulty, off.looseEnd(RELAYED).toString(), "body.31"))
                .as("the loose end is live")
                .isGreaterThan(12);
    }

    @Test
    void aShortToEarthPullsItsTerminalDown() {
        Plan faulty = new ShortToEarth(TerminalRef.parse("pump.a")).applyTo(RELAYED);
        assertThat(acrossV(faulty, "pump.a", "body.31")).isLessThan(4);
    }

    @Test
    void aWireOnTheWrongTerminalFeedsWhatIsThere() {
        MisplacedWire wrong =
                new MisplacedWire("W4", WireEnd.FROM, TerminalRef.parse("relay.87"), TerminalRef.parse("relay.87a"));
        assertThat(pumpV(wrong)).isZero();
    }

    @ForEachExample
    void everyFaultOfTheExamplesKeepsAllIdsAndTerminals(String name) {
        Plan plan = Plans.example(name);
        List<SingleFault> faults = SingleFaults.listWithinParts(plan);
        assertThat(faults).doesNotHaveDuplicates().hasSizeGreaterThan(90);
        for (SingleFault fault : faults) {
            Plan faulty = fault.applyTo(plan);
            assertThat(faulty).as(fault.toString()).isNotEqualTo(plan);
            plan.parts()
                    .forEach(part -> assertThat(
                                    faulty.findPart(part.id()).orElseThrow().terminals())
                            .isEqualTo(part.terminals()));
            plan.wires().forEach(wire -> assertThat(faulty.findWire(wire.id())).isPresent());
        }
    }

    @Test
    void swappingTwiceGivesThePlanBack() {
        SwappedLeads swapped = new SwappedLeads(TerminalRef.parse("pump.a"), TerminalRef.parse("pump.b"));
        assertThat(swapped.applyTo(swapped.applyTo(RELAYED))).isEqualTo(RELAYED);
    }

    /** Vehicles with every kind of part. */
    @ParameterizedTest
    @ValueSource(longs = {20, 21, 22, 23, 24, 25, 26, 27})
    void everyFaultOfAVehicleIsNamedWithWhatItIsAt(long seed) {
        Plan plan = RandomVehicle.of(seed, 16);
        assertThat(SingleFaults.listWithinParts(plan))
                .allSatisfy(
                        fault -> assertThat(FaultWording.of(fault, plan).text()).isNotBlank());
    }

    /** Windings of one kind differ by a tenth (common practice, no source), so one 7 % off is sound. */
    @Test
    void aValueWithinItsToleranceIsNoFault() {
        OffValue winding = SingleFaults.listWithinParts(Plans.example("sandpiper-as-built")).stream()
                .filter(OffValue.class::isInstance)
                .map(OffValue.class::cast)
                .filter(off -> off.what() == OffValue.What.WINDING && off.more())
                .findFirst()
                .orElseThrow();
        assertThat(winding.withSize(0.07).factor()).isGreaterThan(1.1);
    }
}
