package loomwright.ignition.ballast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.conductor.ConductorSize;
import loomwright.ignition.AssumedValue;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.ballast.BallastResult.Defect;
import loomwright.ignition.ballast.BallastResult.ElementFault;
import loomwright.ignition.ballast.FeedState.ElementState;
import loomwright.ignition.ballast.FeedState.Reading;
import loomwright.ignition.ballast.FeedState.Verdict;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.Verbatim;
import loomwright.message.Argument.Word;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.StepReadings;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * A ballast and its bypass: 1 facts of the trade, 2 bypass and tap, 3 what a meter shows, 4 end for end, 5 the same
 * figures from the plan, 6 faulty elements, 7 warming, 8 modules and wires, 9 what is rejected and what is said.
 */
class BallastFeedTest {
    private static final double TIGHT = 1e-9;

    private static BallastResult result(BallastInput input) {
        return BallastFeed.calculate(input).result();
    }

    private static FeedState without(BallastResult result, Condition condition) {
        return in(result, condition).withoutBypass();
    }

    private static FeedState with(BallastResult result, Condition condition) {
        return Objects.requireNonNull(in(result, condition).withBypass());
    }

    private static BallastResult.InCondition in(BallastResult result, Condition condition) {
        return result.conditions().stream()
                .filter(one -> one.condition() == condition)
                .findFirst()
                .orElseThrow();
    }

    // 1 facts of the trade

    @Test
    @DisplayName("6 to 8 V at a ballasted coil, key on, contacts closed, 12 V (common practice, no source)")
    void aBallastedCoilHasSixToEightVolts() {
        for (double coilOhm : List.of(1.2, 1.5, 1.8)) {
            BallastResult result = result(Feeds.with(List.of(coilOhm), null, coilOhm, null, 0.05, 0));
            assertThat(result.keyOn().coilKeyOnV()).isBetween(6.0, 8.0);
            assertThat(result.keyOn().verdict()).isEqualTo(Verdict.WITHIN_WINDOW);
        }
    }

    @Test
    @DisplayName(
            "an average is of a coil that goes on and off: not with the engine stopped; its heat is that of the closed"
                    + " contacts times the dwell")
    void onlyATurningEngineHasAverages() {
        List<Message> averages =
                BallastFeed.calculate(Feeds.with(List.of(1.5), null, 1.5, null, 0.05, 0)).working().stream()
                        .filter(line -> line.code() == BallastText.AVERAGE)
                        .toList();
        assertThat(averages)
                .extracting(line -> line.arguments().get("when"))
                .containsExactly(new Verbatim("crank"), new Verbatim("running"));
        for (Message line : averages) {
            assertThat(figure(line, "coilW"))
                    .isCloseTo(figure(line, "closedCoilW") * figure(line, "dwellFraction"), within(TIGHT));
            assertThat(figure(line, "averageA"))
                    .isCloseTo(figure(line, "currentA") * figure(line, "dwellFraction"), within(TIGHT));
        }
    }

    private static double figure(Message line, String name) {
        return ((Quantity) Objects.requireNonNull(line.arguments().get(name))).value();
    }

    @Test
    @DisplayName("the window goes with the nominal voltage, the coil's ohms with it (6 V: half, 24 V: 3.3 times)")
    void theWindowScalesWithTheNominalVoltage() {
        double twelve = result(Feeds.with(List.of(1.5), null, 1.5, null, 0.05, 0))
                .keyOn()
                .coilKeyOnV();
        for (double nominalV : List.of(6.0, 24.0)) {
            double same = result(Feeds.with(List.of(1.5), null, 1.5, nominalV, 0.05, 0))
                    .keyOn()
                    .coilKeyOnV();
            assertThat(same).isCloseTo(twelve * nominalV / 12, within(TIGHT));
            double ohm = nominalV == 6 ? 0.75 : 5;
            BallastResult ofItsVolts = result(Feeds.with(List.of(ohm), null, ohm, nominalV, 0.05, 0));
            assertThat(ofItsVolts.keyOn().verdict()).isEqualTo(Verdict.WITHIN_WINDOW);
        }
    }

    @Test
    @DisplayName("series sum by hand: 12.6 V, 0.05 + 1.5 + 1.5 + 0.03 ohm: 4.0909 A, 6.136 V, coil 25.10 W")
    void theSeriesSumByHand() {
        FeedState keyOn = without(result(Feeds.with(List.of(1.5), null, 1.5, null, 0.05, 0)), Condition.RUN);
        assertThat(keyOn.electric().currentA()).isCloseTo(12.6 / 3.08, within(TIGHT));
        assertThat(keyOn.electric().coilV()).isCloseTo(12.6 * 1.5 / 3.08, within(TIGHT));
        assertThat(keyOn.heat().coilHeatW()).isCloseTo(1.5 * Math.pow(12.6 / 3.08, 2), within(1e-8));
        assertThat(keyOn.electric().averageA()).isCloseTo(0.6 * 12.6 / 3.08, within(TIGHT));
    }

    @Test
    @DisplayName("about 10 V or less at the battery while cranking (common practice, no source)")
    void theSupplyWhileCrankingIsJudged() {
        Message usual = result(Feeds.ideal(List.of(1.5), null, 1.5)).crankingSupply();
        assertThat(usual.arguments())
                .containsEntry("usualV", new Quantity(10, "V"))
                .containsEntry("usual", new Verbatim("yes"));
        assertThat(in(result(Feeds.ideal(List.of(1.5), null, 1.5)), Condition.CRANK)
                        .supplyV())
                .isEqualTo(10);
    }

    // 2 bypass and tap

    @Test
    @DisplayName("a bypass that shorts one of two equal elements raises the current as the series sum says")
    void aBypassPastOneOfTwoEqualElementsRaisesTheCurrentAsTheSeriesSumSays() {
        BallastResult result = result(Feeds.with(List.of(0.8, 0.8), 1, 1.5, null, 0.05, 0));
        double before = without(result, Condition.RUN).electric().currentA();
        double after = with(result, Condition.RUN).electric().currentA();
        assertThat(before).isCloseTo(12.6 / (0.05 + 1.6 + 1.5 + 0.03), within(TIGHT));
        assertThat(after).isCloseTo(12.6 / (0.8 + 1.5 + 0.03), within(1e-4));
        assertThat(result.bypassing().bypassedElements()).containsExactly(1);
    }

    @Test
    void theElementThatTheBypassTakesOutCarriesNothingAndHasTheSupplyOnBothEnds() {
        FeedState cranking = with(result(Feeds.with(List.of(0.9, 0.7), 1, 1.5, null, 0.05, 0)), Condition.CRANK);
        ElementState out = cranking.elements().get(0);
        assertThat(out.carriesNothing()).isTrue();
        assertThat(out.currentA()).isCloseTo(0, within(1e-4));
        assertThat(volts(cranking, "ballast.a")).isCloseTo(10, within(1e-4));
        assertThat(volts(cranking, "ballast.tap1")).isCloseTo(10, within(1e-4));
        assertThat(cranking.elements().get(1).carriesNothing()).isFalse();
    }

    @Test
    @DisplayName("a bypass of 0.1 ohm divides with the first element as two parallel paths do, by hand")
    void aPoorBypassDividesWithTheElement() {
        FeedState cranking = with(result(Feeds.with(List.of(0.8, 0.8), 1, 1.5, null, 0.05, 0.1)), Condition.CRANK);
        double parallel = 1 / (1 / 0.85 + 1 / 0.1);
        double currentA = 10 / (parallel + 0.8 + 1.5 + 0.03);
        assertThat(cranking.electric().currentA()).isCloseTo(currentA, within(1e-5));
        assertThat(cranking.elements().get(0).currentA()).isCloseTo(currentA * 0.1 / 0.95, within(1e-5));
        assertThat(cranking.elements().get(0).carriesNothing()).isFalse();
    }

    @Test
    void aBypassAtTheCoilEndTakesOutTheWholeBallast() {
        BallastResult result = result(Feeds.ideal(List.of(0.8, 0.8), 2, 1.5));
        assertThat(result.bypassing().bypassedElements()).containsExactly(1, 2);
        assertThat(with(result, Condition.CRANK).electric().coilV()).isCloseTo(10 * 1.5 / 1.53, within(1e-4));
    }

    // 3 what a meter shows

    private static double volts(FeedState state, String terminal) {
        return reading(state, terminal).contactsClosedV();
    }

    private static Reading reading(FeedState state, String terminal) {
        return state.readings().stream()
                .filter(one -> one.terminal().equals(terminal))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void withTheContactsOpenThereIsFullSupplyEverywhere() {
        FeedState keyOn = without(result(Feeds.with(List.of(0.8, 0.8), 1, 1.5, null, 0.05, 0)), Condition.RUN);
        for (String terminal : List.of("battery.plus", "ballast.a", "ballast.tap1", "ballast.b", "coil.15", "coil.1")) {
            assertThat(reading(keyOn, terminal).contactsOpenV()).as(terminal).isCloseTo(12.6, within(TIGHT));
        }
        assertThat(reading(keyOn, "breaker.31").contactsOpenV()).isZero();
    }

    @Test
    void withTheContactsClosedItIsDivided() {
        FeedState keyOn = without(result(Feeds.with(List.of(0.8, 0.8), 1, 1.5, null, 0.05, 0)), Condition.RUN);
        double currentA = 12.6 / 3.18;
        assertThat(volts(keyOn, "ballast.a")).isCloseTo(12.6 - 0.05 * currentA, within(1e-4));
        assertThat(volts(keyOn, "ballast.tap1")).isCloseTo(12.6 - 0.85 * currentA, within(1e-4));
        assertThat(volts(keyOn, "coil.15")).isCloseTo(1.53 * currentA, within(1e-4));
        assertThat(volts(keyOn, "coil.1")).isCloseTo(0.03 * currentA, within(1e-4));
    }

    // 4 end for end

    @Property(seed = "20261125", tries = 60)
    void aTwoTerminalBallastEndForEndGivesTheIdenticalAnswer(
            @ForAll @DoubleRange(min = 0.1, max = 5) double first,
            @ForAll @DoubleRange(min = 0.1, max = 5) double second,
            @ForAll @DoubleRange(min = 0.3, max = 5) double coil) {
        BallastInput input = Feeds.with(List.of(first, second), null, coil, null, 0.05, 0);
        BallastResult result = result(input);
        assertThat(result.turning().turned().sameAnswer()).isTrue();
        assertThat(result(Feeds.turned(input)).keyOn().coilKeyOnV())
                .isCloseTo(result.keyOn().coilKeyOnV(), within(TIGHT));
        assertThat(result.turning().polarity().code()).isEqualTo(BallastText.TURNED);
    }

    @Test
    void aTappedBallastEndForEndSwapsTheElementThatStaysIn() {
        BallastInput input = Feeds.with(List.of(1.0, 0.5), 1, 1.5, null, 0.05, 0);
        BallastResult result = result(input);
        assertThat(result.bypassing().bypassedElements()).containsExactly(1);
        assertThat(result.turning().turned().bypassedElements()).containsExactly(2);
        assertThat(result.turning().turned().sameAnswer()).isFalse();
        assertThat(result.turning().turned().keyOnCoilV())
                .isCloseTo(result.keyOn().coilKeyOnV(), within(TIGHT));
        BallastResult turned = result(Feeds.turned(input));
        assertThat(with(turned, Condition.CRANK).electric().coilV())
                .isCloseTo(result.turning().turned().crankingCoilV(), within(TIGHT));
        assertThat(with(turned, Condition.CRANK).electric().coilV()).isCloseTo(10 * 1.5 / 2.53, within(1e-4));
        assertThat(result.turning().polarity().code()).isEqualTo(BallastText.TURNED_WITH_TAP);
        assertThat(result.turning().polarity().arguments())
                .containsEntry("asMounted", new Listing(List.of(new Count(1))))
                .containsEntry("turned", new Listing(List.of(new Count(2))));
    }

    // 5 the same figures from the plan

    @Property(seed = "20261125", tries = 40)
    void thePlanOfTheFeedGivesTheSameNumbers(
            @ForAll @DoubleRange(min = 0.1, max = 3) double first,
            @ForAll @DoubleRange(min = 0.1, max = 3) double second,
            @ForAll @DoubleRange(min = 0.3, max = 5) double coil,
            @ForAll @DoubleRange(min = 0, max = 0.5) double bypass) {
        BallastResult result = result(Feeds.with(List.of(first, second), 1, coil, null, 0.05, bypass));
        for (StepReadings step :
                PlanAnswer.of(result.plan(), NetworkLimits.defaults()).result().steps()) {
            FeedState state = switch (step.step()) {
                case RUN -> without(result, Condition.RUN);
                case CRANK -> with(result, Condition.CRANK);
                case RUNNING -> without(result, Condition.RUNNING);
                default -> null;
            };
            if (state != null) {
                assertThat(Objects.requireNonNull(part(step, "coil").acrossV()))
                        .isCloseTo(state.electric().coilV(), within(TIGHT));
                assertThat(part(step, "ballast").branches().get(1).currentA())
                        .isCloseTo(state.electric().currentA(), within(TIGHT));
                assertThat(part(step, "ballast").powerW())
                        .isCloseTo(state.heat().ballastHeatW(), within(1e-8));
            }
        }
    }

    private static PartReading part(StepReadings step, String id) {
        return step.parts().stream()
                .filter(part -> part.part().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Property(seed = "20261125", tries = 40)
    void theHeatsAddUpToWhatTheBatteryGives(
            @ForAll @DoubleRange(min = 0.1, max = 3) double first,
            @ForAll @DoubleRange(min = 0.3, max = 5) double coil,
            @ForAll @DoubleRange(min = 0, max = 0.5) double bypass) {
        FeedState state = with(result(Feeds.with(List.of(first, 1.0), 1, coil, null, 0.05, bypass)), Condition.CRANK);
        double wires = 0.05 * state.electric().feedA() * state.electric().feedA()
                + bypass * state.electric().bypassA() * state.electric().bypassA();
        assertThat(state.heat().supplyPowerW())
                .isCloseTo(10 * (state.electric().feedA() + state.electric().bypassA()), within(1e-8));
        assertThat(state.heat().wireHeatW()).isCloseTo(wires, within(1e-3));
        assertThat(state.heat().coilHeatW()
                        + state.heat().ballastHeatW()
                        + state.heat().switchHeatW()
                        + state.heat().wireHeatW())
                .isCloseTo(state.heat().supplyPowerW(), within(1e-8));
    }

    @Property(seed = "20261125", tries = 40)
    void theCoilCurrentRisesWithTheSupplyAndFallsWithTheBallast(
            @ForAll @DoubleRange(min = 4, max = 20) double supplyV,
            @ForAll @DoubleRange(min = 0.1, max = 5) double ballastOhm) {
        double here =
                result(Feeds.warm(supplyV, ballastOhm, 0, null, null)).keyOn().coilKeyOnV();
        assertThat(result(Feeds.warm(supplyV + 0.1, ballastOhm, 0, null, null))
                        .keyOn()
                        .coilKeyOnV())
                .isGreaterThan(here);
        assertThat(result(Feeds.warm(supplyV, ballastOhm + 0.1, 0, null, null))
                        .keyOn()
                        .coilKeyOnV())
                .isLessThan(here);
    }

    // 6 faulty elements

    @Test
    void aFaultyElementReadsAsTheSeriesSumSays() {
        List<ElementFault> faults =
                result(Feeds.with(List.of(0.8, 0.8), 1, 1.5, null, 0.05, 0)).elementFaults();
        assertThat(faults).extracting(ElementFault::defect).startsWith(Defect.values());
        assertThat(faults.get(0).currentA()).isCloseTo(12.6 / (0.05 + 1.2 + 1.53), within(TIGHT));
        assertThat(faults.get(1).currentA()).isCloseTo(12.6 / (0.05 + 0.8 + 1.53), within(1e-4));
        assertThat(faults.get(1).ballastOhm()).isCloseTo(0.8, within(1e-4));
        assertThat(faults.get(2).currentA()).isZero();
        assertThat(faults.get(2).ballastOhm()).isNull();
        assertThat(faults.get(2).effect().arguments()).containsEntry("bypassed", new Verbatim("yes"));
        assertThat(faults.get(5).effect().arguments()).containsEntry("bypassed", new Verbatim("no"));
    }

    // 7 warming

    @Test
    @DisplayName("a coil that warms alone settles where the one-part fixed point does (second method)")
    void aCoilThatWarmsAloneSettlesWhereTheOnePartFixedPointDoes() {
        Warming warming = Objects.requireNonNull(
                result(Feeds.warm(12.6, 1.5, 0, null, 3.0)).warming());
        SelfHeating coil = new SelfHeating(1.5, SelfHeating.COPPER_PER_K, 3, 20);
        SelfHeating.End end = coil.solve(r -> 0.6 * r * Math.pow(14.2 / (0.05 + 1.5 + r + 0.03), 2), 200);
        assertThat(warming.hotIdle().coilC()).isCloseTo(end.last().temperatureC(), within(1e-6));
        assertThat(warming.hotIdle().coilOhm()).isCloseTo(end.last().resistanceOhm(), within(1e-8));
        assertThat(warming.coldStart().coilC()).isEqualTo(20);
    }

    @Test
    void ballastAndCoilTogetherAreAFixedPoint() {
        Warming warming = Objects.requireNonNull(
                result(Feeds.warm(12.6, 0.7, 0.0065, 15.0, 3.0)).warming());
        Warming.End hot = warming.hotIdle();
        assertThat(hot.ballastC()).isCloseTo(20 + 15 * hot.ballastHeatW(), within(1e-6));
        assertThat(hot.coilC()).isCloseTo(20 + 3 * hot.coilHeatW(), within(1e-6));
        assertThat(hot.currentA()).isCloseTo(14.2 / (0.05 + hot.ballastOhm() + hot.coilOhm() + 0.03), within(1e-8));
    }

    @Test
    @DisplayName("an iron-wire ballast steadies the current against the supply (common practice, no source)")
    void anIronWireBallastSteadiesTheCurrent() {
        double iron = ratio(0.0065, 15.0);
        double steady = ratio(0, null);
        assertThat(iron).isLessThan(steady);
    }

    private static double ratio(double perK, @Nullable Double kPerW) {
        Warming low = Objects.requireNonNull(
                result(Feeds.warm(11, 0.7, perK, kPerW, 0.0)).warming());
        Warming high = Objects.requireNonNull(
                result(Feeds.warm(14, 0.7, perK, kPerW, 0.0)).warming());
        return high.keyLeftOn().currentA() / low.keyLeftOn().currentA();
    }

    // 8 modules and wires

    @Test
    void aModuleTakesItsDropAndHoldsItsLimit() {
        FeedState free = without(result(Feeds.module(12.6, 1.5, 1, null)), Condition.RUN);
        // The module's own 0.1 A at 12 V, which is 120 ohm, flows in the return too.
        double ownA = 12.6 / 120;
        assertThat(free.electric().currentA())
                .isCloseTo((11.6 - 0.02 * ownA) / (0.05 + 1.5 + 1.5 + 0.02 + 0.01), within(1e-5));
        FeedState held = without(result(Feeds.module(12.6, 0.2, 1, 5.0)), Condition.RUN);
        assertThat(held.electric().currentA()).isCloseTo(5, within(1e-9));
        assertThat(held.heat().coilHeatW()
                        + held.heat().ballastHeatW()
                        + held.heat().switchHeatW()
                        + held.heat().wireHeatW())
                .isCloseTo(held.heat().supplyPowerW(), within(1e-8));
    }

    @Test
    @DisplayName("a feed by size and length has the resistance of its table")
    void aFeedBySizeAndLengthHasTheResistanceOfItsTable() {
        double ohm = ConductorSize.parse("14 AWG").resistanceOhmPerM(20) * 3.048;
        assertThat(result(Feeds.byWire("14 AWG", null, 10.0)).keyOn().coilKeyOnV())
                .isCloseTo(12.6 * 1.5 / (ohm + 3.03), within(TIGHT));
        assertThat(result(Feeds.byWire("14 AWG", 3.048, null)).keyOn().coilKeyOnV())
                .isCloseTo(12.6 * 1.5 / (ohm + 3.03), within(TIGHT));
    }

    // 9 what is rejected and what is said

    @Test
    void allFaultsAreSaidTogether() {
        BallastInput wrong = Feeds.with(List.of(0.8, -1.0), 3, 0, 13.0, -1, 99);
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> BallastFeed.calculate(wrong));
        assertThat(rejected.faults())
                .extracting(InputError::pointer)
                .containsExactlyInAnyOrder(
                        "/elementsOhm/1",
                        "/bypassTap",
                        "/coilPrimaryOhm",
                        "/nominalVoltageV",
                        "/feedResistanceOhm",
                        "/bypassResistanceOhm");
    }

    @Test
    void theWorkingShowsTheNumbersAndTheCautionsApply() {
        Answer<BallastResult> answer = BallastFeed.calculate(Feeds.with(List.of(1.5), null, 1.5, null, 0.05, 0));
        assertThat(answer.working())
                .anySatisfy(line -> {
                    assertThat(line.code()).isEqualTo(BallastText.CURRENT_WITH_CONTACTS);
                    assertThat(line.arguments())
                            .containsEntry("when", new Verbatim("run"))
                            .containsEntry("ballastOhm", new Quantity(1.5, "Ω"));
                    assertThat(((Quantity) Objects.requireNonNull(
                                            line.arguments().get("currentA")))
                                    .value())
                            .isCloseTo(4.091, within(5e-4));
                })
                .anySatisfy(line -> {
                    assertThat(line.code()).isEqualTo(BallastText.COIL_VOLTAGE);
                    assertThat(((Quantity) Objects.requireNonNull(
                                            line.arguments().get("coilV")))
                                    .value())
                            .isCloseTo(6.136, within(5e-4));
                })
                .anySatisfy(line -> assertThat(line.arguments())
                        .containsEntry("what", new Word(AssumedValue.SUPPLY_AT_REST))
                        .containsEntry("value", new Quantity(12.6, "V")));
        assertThat(answer.cautions())
                .contains(Caution.HIGH_TENSION, Caution.HOT_BALLAST, Caution.KEY_LEFT_ON, Caution.LOCAL_CODES);
    }

    /** R = 0.5 (1 + 0.0065 x 380) = 1.735 ohm hot; half of it 0.8675 ohm; 12.6 V over it and 1.5 ohm. */
    @Test
    void theFaultsOfAHotElementAreThoseOfTheElementAsItIs() {
        List<ElementFault> faults = result(Feeds.hotIron(0.5, 400)).elementFaults();
        assertThat(faults)
                .extracting(ElementFault::defect)
                .containsExactly(Defect.HALF_SHORTED, Defect.SHORTED, Defect.OPEN);
        assertThat(faults.get(0).ballastOhm()).isCloseTo(0.8675, within(1e-6));
        assertThat(faults.get(0).currentA()).isCloseTo(12.6 / 2.3675, within(1e-3));
        assertThat(faults.get(1).currentA()).isCloseTo(12.6 / 1.5, within(1e-3));
        assertThat(faults.get(2).currentA()).isZero();
        assertThat(faults.get(2).ballastOhm()).isNull();
    }
}
