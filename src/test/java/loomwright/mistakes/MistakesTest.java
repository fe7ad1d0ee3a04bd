package loomwright.mistakes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.WholeCar;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.message.Message;
import loomwright.message.MessageFinder;
import loomwright.mistakes.MistakesReport.Effect;
import loomwright.mistakes.MistakesReport.Limit;
import loomwright.mistakes.MistakesReport.Mistake;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What an owner notices of each mistake, what it overloads, and how dangerous that is. */
class MistakesTest {
    private static final MistakesOptions ALL = new MistakesOptions(10_000, Severity.NOTE, true);

    private static final MistakesReport MODULE = report(Plans.example("sandpiper-electronic-module"));
    private static final MistakesReport AS_BUILT = report(Plans.example("sandpiper-as-built"));

    /** Two connectors of one form: one carries the starter's control, the other a lamp that is on with the key. */
    private static final Plan TWO_ALIKE = Plans.parse("{'schema':'loomwright/plan/1','name':'two alike',"
            + "'system':{'nominalVoltageV':12},'parts':[{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
            + "{'kind':'switch','id':'key','terminals':['30','15','50'],'positions':["
            + "{'name':'off','joins':[]},{'name':'on','joins':[['30','15']]},{'name':'start','joins':[['30','15','50']]}],"
            + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'start','running':'on'}},"
            + half("a1", "male") + half("a2", "female") + half("b1", "male") + half("b2", "female")
            + "{'kind':'solenoid','id':'solenoid','holdInResistanceOhm':1.5,'meantLive':['crank']},"
            + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':5,'meantLive':['run','crank','running']}],"
            + "'wires':["
            + wire("W1", "battery.minus", "body.31")
            + wire("W2", "battery.plus", "key.30")
            + wire("W3", "key.50", "a1.1")
            + wire("W4", "a2.1", "solenoid.50")
            + wire("W5", "solenoid.31", "body.31")
            + wire("W6", "key.15", "b1.1")
            + wire("W7", "b2.1", "lamp.a")
            + "{'id':'W8','from':'lamp.b','to':'body.31','resistanceOhm':0.01}],"
            + "'connectors':[{'id':'A','halves':['a1','a2']},{'id':'B','halves':['b1','b2']}]}");

    private static String half(String id, String gender) {
        return "{'kind':'connector-half','id':'" + id + "','terminals':['1'],'form':'blade','widthMm':6.3,'gender':'"
                + gender + "'},";
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.01},";
    }

    private static MistakesReport report(Plan plan) {
        return MistakesAnswer.of(plan, ALL, NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
    }

    private static Mistake of(MistakesReport report, Kind kind, String... named) {
        return report.mistakes().stream()
                .filter(m ->
                        m.kind() == kind && MessageFinder.names(m.description()).containsAll(List.of(named)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aBallastTurnedEndForEndMakesNoDifference() {
        Plan plain = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'ballast','id':'ballast','elementsOhm':[1.5]},"
                        + "{'kind':'coil','id':'coil','primaryResistanceOhm':1.5,'meantLive':['run']}",
                wire("W1", "battery.minus", "body.31")
                        + wire("W2", "battery.plus", "ballast.a")
                        + wire("W3", "ballast.b", "coil.15")
                        + "{'id':'W4','from':'coil.1','to':'body.31','resistanceOhm':0.01}");
        Mistake turned = of(report(plain), Kind.LEADS_SWAPPED, "ballast", "a");
        assertThat(turned.severity()).isEqualTo(Severity.NOTE);
        assertThat(turned.summary()).extracting(Message::code).containsExactly(MistakeText.NO_DIFFERENCE);
    }

    @Test
    void aCoilTurnedRoundRunsWithTheSparkOfWrongPolarity() {
        Mistake turned = of(AS_BUILT, Kind.LEADS_SWAPPED, "coil", "15");
        assertThat(turned.notices()).isEmpty();
        assertThat(turned.notes()).extracting(Message::code).containsExactly(MistakeText.SPARK_POLARITY);
    }

    /** Not seen in any lamp; with an alternator or module in the plan its silicon makes a danger of it. */
    @Test
    void aBatteryTurnedRoundIsNeverOfNoMatter() {
        Mistake plain = of(report(TWO_ALIKE), Kind.LEADS_SWAPPED, "battery", "plus");
        assertThat(plain.severity()).isEqualTo(Severity.WARNING);
        assertThat(plain.summary()).extracting(Message::code).contains(MistakeText.BATTERY_REVERSED);
        Mistake withCharging = of(AS_BUILT, Kind.LEADS_SWAPPED, "battery", "plus");
        assertThat(withCharging.severity()).isEqualTo(Severity.DANGER);
        assertThat(withCharging.notes()).extracting(Message::code).contains(MistakeText.SPARK_POLARITY);
    }

    /** The breaker can no longer interrupt the primary current, which the steady currents do not show. */
    @ParameterizedTest
    @CsvSource({"coil, 1", "points, 1", "condenser, a"})
    void whatJoinsTheBreakersSideOfTheCoilToTheChassisEndsTheSpark(String part, String terminal) {
        Mistake shorted = of(AS_BUILT, Kind.SHORT_TO_EARTH, part, terminal);
        assertThat(shorted.severity()).isEqualTo(Severity.WARNING);
        assertThat(shorted.notes()).anySatisfy(note -> {
            assertThat(note.code()).isEqualTo(MistakeText.NO_SPARK);
            assertThat(note.ids()).containsExactly("coil");
        });
        assertThat(shorted.summary()).extracting(Message::code).doesNotContain(MistakeText.NO_DIFFERENCE);
    }

    @Test
    void aShortOnTheFeedSideOfTheCoilIsNoMatterOfTheBreaker() {
        assertThat(of(AS_BUILT, Kind.SHORT_TO_EARTH, "coil", "15").notes())
                .noneMatch(note -> note.code() == MistakeText.NO_SPARK);
    }

    @ParameterizedTest
    @ValueSource(strings = {"W12", "W13"})
    void aCondenserThatIsOffBurnsTheContacts(String wire) {
        assertThat(of(AS_BUILT, Kind.WIRE_OFF, wire).notes())
                .anyMatch(note -> note.code() == MistakeText.CAPACITOR_OFF);
    }

    @Test
    void anAlternatorWhoseOutputIsOffChargesNothingAndMakesPeaks() {
        Mistake off = of(AS_BUILT, Kind.WIRE_OFF, "W19");
        assertThat(off.severity()).isEqualTo(Severity.DANGER);
        assertThat(off.notes()).anyMatch(note -> note.code() == MistakeText.NO_CHARGE);
    }

    @Test
    void withoutItsWarningLampAnAlternatorMayNotBeginToCharge() {
        assertThat(of(AS_BUILT, Kind.WIRE_OFF, "W22").notes()).anyMatch(note -> note.code() == MistakeText.NO_FIELD);
    }

    /** What touches neither the ignition nor the charging says nothing of them. */
    @Test
    void aHeadlampsLooseWireIsNoMatterOfSparkAndCharge() {
        assertThat(of(AS_BUILT, Kind.WIRE_OFF, "head-left").notes())
                .extracting(Message::code)
                .doesNotContain(
                        MistakeText.NO_SPARK,
                        MistakeText.SPARK_POLARITY,
                        MistakeText.CAPACITOR_OFF,
                        MistakeText.NO_CHARGE,
                        MistakeText.NO_FIELD);
    }

    @Test
    void aModuleFedBackwardsBurnsAndTheCurrentIsSaid() {
        Mistake turned = of(MODULE, Kind.LEADS_SWAPPED, "module", "15", "31");
        assertThat(turned.severity()).isEqualTo(Severity.DANGER);
        assertThat(turned.overloads())
                .filteredOn(o -> o.kind() == Limit.REVERSED_ELECTRONICS)
                .singleElement()
                .satisfies(o -> {
                    assertThat(o.id()).isEqualTo("module");
                    assertThat(o.figure()).isGreaterThan(20);
                });
    }

    @Test
    void aShortBehindAFuseBlowsItAndIsNoFire() {
        Mistake shorted = of(MODULE, Kind.SHORT_TO_EARTH, "head-left", "a");
        assertThat(shorted.fusesBlown()).containsExactly("F1");
        assertThat(shorted.severity()).isEqualTo(Severity.WARNING);
        assertThat(shorted.overloads()).isNotEmpty().allMatch(o -> o.endedByFuse());
        assertThat(shorted.notices()).anyMatch(n -> n.effect() == Effect.STOPS && n.id().equals("tail"));
    }

    @Test
    void aShortOfTheBatteryCableIsADanger() {
        assertThat(of(MODULE, Kind.SHORT_TO_EARTH, "battery", "plus").severity())
                .isEqualTo(Severity.DANGER);
    }

    @Test
    void aStuckSolenoidTurnsTheEngineUnasked() {
        Mistake stuck = of(AS_BUILT, Kind.RELAY_STUCK_CLOSED, "solenoid");
        assertThat(stuck.severity()).isEqualTo(Severity.DANGER);
        assertThat(stuck.notices()).anyMatch(n -> n.effect() == Effect.UNINTENDED && n.id().equals("starter"));
    }

    @Test
    void aFaultOfTheHeadlampsIsNoticedThoughTheLightsAreDrawnOut() {
        Mistake off = of(AS_BUILT, Kind.WIRE_OFF, "head-left", "a");
        assertThat(off.notices()).singleElement().satisfies(n -> {
            assertThat(n.effect()).isEqualTo(Effect.STOPS);
            assertThat(n.when())
                    .allSatisfy(when -> assertThat(when.switches())
                            .singleElement()
                            .satisfies(at -> {
                                assertThat(at.operated().id()).isEqualTo("lights");
                                assertThat(at.position()).isEqualTo("head");
                            }));
        });
    }

    /** Two lights on one switch, which swapped leads light in each other's stead, and a pump on the key. */
    private static Plan lightsAndPump(String electrics) {
        String always =
                "'meantLive':['off','accessory','run','crank','running'],'meantLiveWhen':[{'switches':{'lights':";
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'switch','id':'lights','terminals':['30','56','58'],'positions':["
                        + "{'name':'out','joins':[]},{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','56']]}]},"
                        + "{'kind':'switch','id':'key','terminals':['30','15','15r'],'positions':["
                        + "{'name':'off','joins':[]},{'name':'on','joins':[['30','15','15r']]}],"
                        + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}},"
                        + "{'id':'head'," + electrics + "," + always + "['head']}}]},"
                        + "{'id':'side'," + electrics + "," + always + "['side']}}]},"
                        + "{'kind':'load','id':'pump','resistanceOhm':3,'meantLive':['run','crank','running']}",
                wire("W1", "battery.minus", "body.31")
                        + wire("W2", "battery.plus", "lights.30")
                        + wire("W3", "lights.56", "head.a")
                        + wire("W4", "head.b", "body.31")
                        + wire("W5", "lights.58", "side.a")
                        + wire("W6", "side.b", "body.31")
                        + wire("W7", "battery.plus", "key.30")
                        + wire("W8", "key.15", "pump.a")
                        + "{'id':'W9','from':'pump.b','to':'body.31','resistanceOhm':0.01}");
    }

    /** What a load is for its kind does not say: a lamp without a filament is one. */
    @ParameterizedTest
    @ValueSource(strings = {"'kind':'lamp','ratedV':12,'ratedW':48", "'kind':'load','resistanceOhm':3"})
    void whatAnotherPositionOfTheSwitchMayLightAnywayIsNoDanger(String electrics) {
        Mistake swapped = of(report(lightsAndPump(electrics)), Kind.LEADS_SWAPPED, "lights", "56", "58");
        assertThat(swapped.notices()).anyMatch(n -> n.effect() == Effect.UNINTENDED && n.id().equals("head"));
        assertThat(swapped.severity()).isEqualTo(Severity.WARNING);
    }

    @Test
    void aLoadThatWorksWhenThePlanNeverWantsItIsOne() {
        Mistake misplaced =
                of(report(lightsAndPump("'kind':'load','resistanceOhm':3")), Kind.WIRE_MISPLACED, "W8", "key", "30");
        assertThat(misplaced.notices()).anyMatch(n -> n.effect() == Effect.UNINTENDED && n.id().equals("pump"));
        assertThat(misplaced.severity()).isEqualTo(Severity.DANGER);
    }

    @Test
    void theWorstComeFirst() {
        assertThat(AS_BUILT.mistakes()).extracting(Mistake::severity).isSorted();
    }

    @Test
    void connectorsThatMateWithEachOtherCanBeCrossedAndAnotherWidthPreventsIt() {
        MistakesReport report = report(TWO_ALIKE);
        Mistake crossed = of(report, Kind.CONNECTORS_CROSSED);
        assertThat(crossed.severity()).isEqualTo(Severity.DANGER);
        assertThat(crossed.notices()).anyMatch(n -> n.effect() == Effect.UNINTENDED && n.id().equals("solenoid"));
        assertThat(report.keying()).singleElement().satisfies(k -> {
            assertThat(k.connectors()).containsExactly("A", "B");
            assertThat(MessageFinder.quantity(Objects.requireNonNull(k.change()), "widthMm"))
                    .isEqualTo(4.8);
        });
    }

    @Test
    void withTheWidthAdvisedNothingCanBeCrossed() {
        Plan keyed = TWO_ALIKE;
        for (String id : new String[] {"b1", "b2"}) {
            ConnectorHalf half = (ConnectorHalf) keyed.findPart(id).orElseThrow();
            keyed = keyed.withPart(new ConnectorHalf(
                    id, half.label(), half.terminals(), half.form(), 4.8, half.gender(), half.ratingA()));
        }
        MistakesReport report = report(keyed);
        assertThat(report.mistakes()).noneMatch(m -> m.kind() == Kind.CONNECTORS_CROSSED);
        assertThat(report.keying()).isEmpty();
    }

    @Test
    void whoeverWatchesMayCallTimeAndIsToldHowManyAreLeft() {
        MistakesReport whole = report(TWO_ALIKE);
        assertThat(whole.left()).isZero();
        MistakesReport cut = MistakesAnswer.of(TWO_ALIKE, ALL, NetworkLimits.defaults(), (done, of) -> {
                    if (done >= 7) {
                        throw OutOfTime.afterMs(1);
                    }
                })
                .result();
        // Each thread ends what it has begun.
        int looked = cut.mistakes().size();
        assertThat(looked).isBetween(7, 7 + Runtime.getRuntime().availableProcessors());
        assertThat(cut.left()).isEqualTo(whole.mistakes().size() - looked);
        assertThat(whole.mistakes()).containsAll(cut.mistakes());
        assertThat(cut.mistakes()).extracting(Mistake::severity).isSorted();
    }

    /** A load that is dead or only glows in one situation is not told once more to get too little in another. */
    @Test
    void noLoadIsToldToBeOutAndToGetTooLittle() {
        List<Mistake> both = AS_BUILT.mistakes().stream()
                .filter(mistake -> ids(mistake, Effect.STOPS).stream()
                        .anyMatch(id -> mistake.notices().stream()
                                .anyMatch(n -> n.id().equals(id) && n.effect() == Effect.UNDERVOLTAGE)))
                .toList();
        assertThat(both)
                .isNotEmpty()
                .allSatisfy(mistake -> assertThat(ids(mistake, Effect.UNDERVOLTAGE))
                        .doesNotContainAnyElementsOf(ids(mistake, Effect.STOPS)));
    }

    private static List<String> ids(Mistake mistake, Effect effect) {
        return mistake.summary().stream()
                .filter(message -> message.code() == effect)
                .flatMap(message -> message.ids().stream())
                .toList();
    }

    @Test
    void onlyAsMuchIsToldAsIsAskedForAndHowMuchIsNot() {
        MistakesReport whole = report(TWO_ALIKE);
        MistakesReport some = told(new MistakesOptions(4, Severity.NOTE, false));
        assertThat(some.mistakes()).hasSize(4);
        assertThat(some.notListed()).isEqualTo(whole.mistakes().size() - 4);
        for (int i = 0; i < 4; i++) {
            assertThat(some.mistakes().get(i).summary())
                    .isEqualTo(whole.mistakes().get(i).summary());
            assertThat(some.mistakes().get(i).notices()).isEmpty();
        }
        MistakesReport serious = told(new MistakesOptions(10_000, Severity.WARNING, true));
        assertThat(serious.mistakes())
                .isNotEmpty()
                .isEqualTo(whole.mistakes().stream()
                        .filter(mistake -> mistake.severity() != Severity.NOTE)
                        .toList());
        assertThat(serious.mistakes().size() + serious.notListed())
                .isEqualTo(whole.mistakes().size());
        assertThat(serious.keying()).isEqualTo(whole.keying());
    }

    private static MistakesReport told(MistakesOptions options) {
        return MistakesAnswer.of(TWO_ALIKE, options, NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
    }

    /** 2,000 mistakes times settings and more were refused once. */
    @Test
    void aWholeCarIsTaken() {
        Plan car = WholeCar.of(120, 10, 0);
        MistakesReport report = MistakesAnswer.of(car, ALL, NetworkLimits.defaults(), (done, of) -> {
                    if (done >= 3) {
                        throw OutOfTime.afterMs(1);
                    }
                })
                .result();
        assertThat(report.settings()).isEqualTo(11);
        assertThat((report.left() + report.mistakes().size()) * report.settings())
                .isGreaterThan(2_000);
    }

    /** The dynamo stands before the battery in the plan, and stands still while the battery is shorted. */
    private static final Plan DYNAMO = Plans.parse("{'schema':'loomwright/plan/1','name':'dynamo',"
            + "'system':{'nominalVoltageV':12},'parts':[{'kind':'dynamo','id':'dynamo'},"
            + "{'kind':'control-box','id':'box'},{'kind':'battery','id':'small','capacityAh':20},"
            + "{'kind':'battery','id':'battery','capacityAh':60},"
            + "{'kind':'earth','id':'body'},"
            + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':5,'meantLive':['off','run','crank','running']}],"
            + "'wires':["
            + wire("W1", "battery.minus", "body.31")
            + wire("W2", "battery.plus", "box.A")
            + wire("W3", "dynamo.D", "box.D")
            + wire("W4", "dynamo.F", "box.F")
            + wire("W5", "box.E", "body.31")
            + wire("W6", "box.A", "lamp.a")
            + wire("W7", "lamp.b", "body.31")
            + wire("W9", "small.plus", "battery.plus")
            + wire("W10", "small.minus", "body.31")
            + "{'id':'case','from':'dynamo.E','to':'body.31','resistanceOhm':0.002}]}");

    @Test
    void aBatteryDeliversAShortCircuitAndNotTheStandingDynamo() {
        List<MistakesReport.Overload> shorts = report(DYNAMO).mistakes().stream()
                .flatMap(mistake -> mistake.overloads().stream())
                .filter(overload -> overload.kind() == Limit.DEAD_SHORT)
                .toList();
        assertThat(shorts)
                .isNotEmpty()
                .allSatisfy(overload -> assertThat(overload.id()).isIn("battery", "small"));
    }

    @Test
    void aCaseLosesItsEarthButSitsOnNoWrongTerminal() {
        List<Mistake> ofCase = report(DYNAMO).mistakes().stream()
                .filter(mistake -> mistake.ids().contains("case"))
                .toList();
        assertThat(ofCase)
                .extracting(mistake -> mistake.kind())
                .containsExactlyInAnyOrder(Kind.WIRE_OFF, Kind.BAD_JOINT);
        assertThat(report(DYNAMO).mistakes())
                .filteredOn(mistake ->
                        mistake.kind() == Kind.LEADS_SWAPPED && mistake.ids().contains("dynamo"))
                .hasSize(1);
    }
}
