package loomwright.ignition.spark;

import static loomwright.message.Arg.arg;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.ignition.AssumedValue;
import loomwright.ignition.SelfHeating.Settled;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.gap.GapText;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.primary.Firing.Arrangement;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.Verbatim;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * The spark of a whole ignition: 1 facts of the trade, 2 where the margin ends, 3 sweeps, 4 the warm coil, 5 what the
 * answer carries, 6 remedies.
 */
class SparkTest {
    private static final EngineInput FOUR = new EngineInput(4, 4, Arrangement.DISTRIBUTOR);
    private static final EngineInput EIGHT = new EngineInput(8, 4, Arrangement.DISTRIBUTOR);

    private static SparkInput input(
            double rpm, FeedInput feed, CoilInput coil, SwitchInput primarySwitch, EngineInput engine, double gapMm) {
        return new SparkInput(
                rpm, feed, coil, null, null, primarySwitch, engine, GapInput.of(gapMm), null, SearchInput.COMMON);
    }

    /** Contacts and a coil for direct feed. */
    private static SparkInput stock(double rpm, double gapMm) {
        return input(
                rpm,
                FeedInput.COMMON,
                CoilInput.of(CoilPreset.FOR_DIRECT_FEED),
                SwitchInput.breaker(null),
                FOUR,
                gapMm);
    }

    private static SparkInput plainCoil(double inductanceH, double rpm, EngineInput engine, double gapMm) {
        CoilInput coil = new CoilInput(CoilPreset.FOR_DIRECT_FEED, 4.0, inductanceH, null, null, null, null, null);
        return input(rpm, FeedInput.COMMON, coil, SwitchInput.breaker(null), engine, gapMm);
    }

    private static SparkInput highEnergy(double rpm, EngineInput engine, double gapMm) {
        return input(
                rpm,
                FeedInput.COMMON,
                CoilInput.of(CoilPreset.HIGH_ENERGY),
                SwitchInput.limitingModule(6.5),
                engine,
                gapMm);
    }

    private static SparkInput ballasted(boolean bypassed) {
        return input(
                1000,
                new FeedInput(12.6, 0.05, 1.5, bypassed, null),
                CoilInput.of(CoilPreset.FOR_BALLAST),
                SwitchInput.breaker(55.0),
                FOUR,
                0.65);
    }

    private static SparkInput with(SparkInput input, @Nullable Double thermalKPerW, SearchInput search) {
        return new SparkInput(
                input.speedRpm(),
                input.feed(),
                input.coil(),
                input.coilTemperatureC(),
                thermalKPerW,
                input.primarySwitch(),
                input.engine(),
                input.gap(),
                input.burningV(),
                search);
    }

    private static SparkResult result(SparkInput input) {
        return Spark.calculate(input).result();
    }

    // 1 facts of the trade

    @Test
    @DisplayName("systems give 8 to 20 kV (abstract of a motor-vehicle technology textbook); 8:1 and 0.65 mm: 13.3 kV")
    void aStockGapAsksForThirteenKilovolts() {
        assertThat(result(stock(3000, 0.65)).at().margin().requiredV()).isBetween(12_800.0, 13_800.0);
    }

    @Test
    @DisplayName("a wider gap asks for more (common practice, no source)")
    void aWiderGapAsksForMore() {
        double stockV = result(stock(3000, 0.65)).at().margin().requiredV();
        double wideV = result(stock(3000, 1.15)).at().margin().requiredV();
        assertThat(wideV).isGreaterThan(stockV + 2500);
    }

    @Test
    @DisplayName("a gap of 1.1 to 1.2 mm needs a coil and module made for it (common practice, no source)")
    void aWideGapNeedsACoilAndModuleMadeForIt() {
        for (double gapMm : List.of(1.1, 1.2)) {
            for (double inductanceH : List.of(0.006, 0.009)) {
                assertThat(result(plainCoil(inductanceH, 6000, FOUR, gapMm))
                                .at()
                                .margin()
                                .marginRatio())
                        .isLessThan(1.5);
                assertThat(result(plainCoil(inductanceH, 6000, EIGHT, gapMm))
                                .at()
                                .margin()
                                .marginRatio())
                        .isLessThan(1);
            }
            assertThat(result(highEnergy(6000, FOUR, gapMm)).at().margin().marginRatio())
                    .isGreaterThan(1.5);
            assertThat(result(highEnergy(6000, EIGHT, gapMm)).at().margin().marginRatio())
                    .isGreaterThan(1.2);
        }
        assertThat(result(stock(3000, 0.65)).at().margin().marginRatio()).isGreaterThan(1.5);
    }

    @Test
    @DisplayName("6 to 8 V at a ballasted coil with the key on and contacts closed (common practice, no source)")
    void aBallastedCoilShowsSixToEightVoltsWithTheContactsClosed() {
        assertThat(result(ballasted(false)).closed().coilV()).isBetween(6.0, 8.0);
    }

    @Test
    void bypassingTheBallastRaisesTheSparkAndTheHeatOfTheCoil() {
        SparkPoint through = result(ballasted(false)).at();
        SparkPoint bypassed = result(ballasted(true)).at();
        assertThat(bypassed.build().peakA()).isGreaterThan(through.build().peakA());
        assertThat(bypassed.heat().coilHeatW()).isGreaterThan(through.heat().coilHeatW());
        assertThat(bypassed.heat().ballastHeatW()).isZero();
        assertThat(through.heat().ballastHeatW()).isPositive();
    }

    @Test
    void aWastedSparkHasToCrossASecondGap() {
        EngineInput wasted = new EngineInput(4, 4, Arrangement.WASTED_SPARK);
        SparkResult two = result(highEnergy(3000, wasted, 1.0));
        SparkResult one = result(highEnergy(3000, FOUR, 1.0));
        assertThat(two.demand().secondGapV()).isBetween(1000.0, 4000.0);
        assertThat(two.at().margin().requiredV())
                .isCloseTo(one.at().margin().requiredV() + two.demand().secondGapV(), within(1e-6));
        assertThat(two.at().means().allCoilsA()).isCloseTo(2 * two.at().means().averageA(), within(1e-12));
    }

    // 2 where the margin ends

    @Test
    void theSpeedAtWhichTheMarginEndsHasMarginAndTheNextOneHasNot() {
        SparkInput wide = plainCoil(0.009, 1000, EIGHT, 1.15);
        Boundary ends = result(with(wide, null, new SearchInput(1.0, null, null, null, null, null)))
                .ends()
                .marginEndsRpm();
        assertThat(ends.kind()).isEqualTo(Boundary.Kind.AT);
        assertThat(result(plainCoil(0.009, ends.value(), EIGHT, 1.15))
                        .at()
                        .margin()
                        .marginV())
                .isNotNegative();
        assertThat(result(plainCoil(0.009, ends.value() + 1, EIGHT, 1.15))
                        .at()
                        .margin()
                        .marginV())
                .isNegative();
    }

    @Test
    void aMarginThatNeverEndsAndOneThatIsNeverThereAreToldApart() {
        assertThat(result(highEnergy(3000, FOUR, 0.7)).ends().marginEndsRpm())
                .isEqualTo(new Boundary(Boundary.Kind.NOT_REACHED, 8000));
        SparkInput weak = input(
                3000,
                new FeedInput(4.0, null, null, null, null),
                CoilInput.of(CoilPreset.FOR_DIRECT_FEED),
                SwitchInput.breaker(null),
                FOUR,
                1.2);
        assertThat(result(weak).ends().marginEndsRpm()).isEqualTo(new Boundary(Boundary.Kind.NEVER_THERE, 200));
        assertThat(result(weak).at().margin().marginV()).isNegative();
        assertThat(result(weak).findings()).anyMatch(found -> found.kind() == SparkFinding.NO_SPARK);
    }

    @Test
    void belowTheStartingSupplyTheSparkFailsAtCrankingSpeedAndAboveItDoesNot() {
        Boundary starts = result(stock(3000, 0.65)).ends().startsAboveV();
        assertThat(starts.kind()).isEqualTo(Boundary.Kind.AT);
        assertThat(atSupply(starts.value()).margin().marginV()).isNotNegative();
        assertThat(atSupply(starts.value() - 0.001).margin().marginV()).isNegative();
    }

    private static SparkPoint atSupply(double supplyV) {
        return result(input(
                        200,
                        new FeedInput(supplyV, null, null, null, null),
                        CoilInput.of(CoilPreset.FOR_DIRECT_FEED),
                        SwitchInput.breaker(null),
                        FOUR,
                        0.65))
                .at();
    }

    @Test
    void aBypassLowersTheSupplyNeededToStart() {
        Boundary without = result(ballasted(false)).ends().startsAboveV();
        SearchInput bypassedWhileCranking = new SearchInput(null, null, null, true, null, null);
        Boundary with = result(with(ballasted(false), null, bypassedWhileCranking))
                .ends()
                .startsAboveV();
        assertThat(with.value()).isLessThan(without.value());
    }

    // 3 sweeps

    @Test
    void aSweepHoldsItsEndsAndEachRowIsTheSinglePoint() {
        SearchInput sweeps =
                new SearchInput(null, null, null, null, new SweepRange(500, 6500, 12), new SweepRange(6, 16, 4));
        SparkResult swept = result(with(stock(3000, 0.65), null, sweeps));
        assertThat(swept.speedSweep()).hasSize(13);
        assertThat(swept.supplySweep()).hasSize(5);
        assertThat(swept.speedSweep().get(12))
                .isEqualTo(result(stock(6500, 0.65)).at());
        assertThat(swept.supplySweep().get(4).supplyV()).isEqualTo(16);
        assertThat(swept.supplySweep().get(4).speedRpm()).isEqualTo(3000);
    }

    // 4 the warm coil

    @Test
    void aWarmCoilTakesLessCurrentAndGivesLessSpark() {
        SparkResult.HotCoil hot = Objects.requireNonNull(
                result(with(stock(3000, 0.65), 5.0, SearchInput.COMMON)).hotCoil());
        SparkPoint atHot = Objects.requireNonNull(hot.atHot());
        SparkPoint cold = result(stock(3000, 0.65)).at();
        assertThat(hot.end()).isInstanceOf(Settled.class);
        Settled settled = (Settled) hot.end();
        assertThat(settled.hot().temperatureC())
                .isCloseTo(20 + 5.0 * settled.hot().powerW(), within(1e-6));
        assertThat(settled.cold().powerW()).isCloseTo(cold.heat().coilHeatW(), within(1e-9));
        assertThat(atHot.build().peakA()).isLessThan(cold.build().peakA());
        assertThat(atHot.margin().marginRatio()).isLessThan(cold.margin().marginRatio());
    }

    // 5 what the answer carries

    @Test
    void highTensionIsAlwaysCautionedTheOthersWhereTheyApply() {
        assertThat(Spark.calculate(ballasted(false)).cautions())
                .containsExactly(Caution.HIGH_TENSION, Caution.KEY_LEFT_ON, Caution.HOT_BALLAST, Caution.LOCAL_CODES);
        assertThat(Spark.calculate(highEnergy(3000, FOUR, 0.7)).cautions())
                .containsExactly(Caution.HIGH_TENSION, Caution.LOCAL_CODES);
    }

    @Test
    void theWorkingShowsTheFormulasWithTheNumbersInThem() {
        Answer<SparkResult> answer = Spark.calculate(new SparkInput(
                3000.0,
                new FeedInput(12.15, 0.0, null, null, null),
                new CoilInput(null, 4.0, 0.006, 100.0, 300.0, 80e-12, 0.5, null),
                null,
                null,
                SwitchInput.breaker(50.0),
                FOUR,
                GapInput.of(0.65, 800_000, 276.85),
                null,
                SearchInput.COMMON));
        assertThat(answer.working())
                .anySatisfy(line -> says(line, SparkText.FINAL_CURRENT, "finalA", 3))
                .anySatisfy(line -> says(line, SparkText.TIME_CONSTANT, "timeConstantS", 0.0015))
                .anySatisfy(line -> says(line, SparkText.DWELL_BY_ANGLE, "dwellS", 0.005556))
                .anySatisfy(line -> says(line, GapText.REQUIRED_BY_FORMULA, "required", 9.341))
                .anySatisfy(line -> says(line, GapText.REQUIRED_MIDDLE, "required", 10.49));
        assertThat(answer.basis()).extracting(basis -> basis.source()).anyMatch(s -> s.contains("SAE 2000-01-0245"));
    }

    @Test
    void aValueTakenForTheCallerIsSaid() {
        assertThat(Spark.calculate(stock(3000, 0.65)).working())
                .contains(
                        AssumedValue.ASSUMED.with(
                                arg("what", AssumedValue.SUPPLY), arg("value", new Quantity(14.2, "V"))),
                        AssumedValue.ASSUMED.with(
                                arg("what", AssumedValue.COMPRESSION_RATIO), arg("value", new Quantity(8, ""))));
    }

    private static void says(Message line, MessageCode code, String name, double value) {
        assertThat(line.code()).isEqualTo(code);
        assertThat(((Quantity) Objects.requireNonNull(line.arguments().get(name))).value())
                .isCloseTo(value, within(1e-3 * value));
    }

    @Test
    void mismatchesOfCoilAndFeedAreNoted() {
        assertThat(codes(ballasted(true))).contains("bypass-left-on");
        SparkInput weak = input(
                3000,
                new FeedInput(14.2, 0.05, 1.5, false, null),
                CoilInput.of(CoilPreset.FOR_DIRECT_FEED),
                SwitchInput.breaker(null),
                FOUR,
                0.65);
        assertThat(codes(weak)).contains("coil-weak").doesNotContain("coil-overheats");
        SparkInput burns = input(
                1000, FeedInput.COMMON, CoilInput.of(CoilPreset.HIGH_ENERGY), SwitchInput.breaker(null), FOUR, 0.65);
        assertThat(codes(burns)).contains("no-current-limit");
    }

    private static List<String> codes(SparkInput input) {
        return result(input).findings().stream().map(Finding::code).toList();
    }

    @Test
    void aFormulaOutsideItsRangeIsNoted() {
        SparkInput free = new SparkInput(
                3000.0,
                FeedInput.COMMON,
                CoilInput.of(null),
                null,
                null,
                SwitchInput.breaker(null),
                FOUR,
                new GapInput(0.6, 101_325.0, 20.0, null, null, null, null, null, BreakdownFormula.ENGINE_CORRELATION),
                null,
                SearchInput.COMMON);
        assertThat(result(free).findings()).anyMatch(found -> found.kind() == SparkFinding.OUTSIDE_FORMULA_RANGE);
    }

    // 6 what is offered helps

    @Test
    void theGapOfferedLeavesTheReserveAndNoneIsOfferedWhereNoneDoes() {
        SparkInput wide = stock(5500, 1.1);
        Message remedy = remedy(wide, SparkFinding.NO_SPARK, SparkFinding.RESERVE_MISSED);
        assertThat(remedy.code()).isEqualTo(SparkFinding.RAISE_SPARK);
        double gapMm = ((Quantity) Objects.requireNonNull(remedy.arguments().get("gapMm"))).value();
        assertThat(gapMm).isBetween(0.5, 1.05);
        assertThat(codes(stock(5500, gapMm))).doesNotContain("no-spark", "reserve-missed");
        assertThat(codes(stock(5500, gapMm + 0.05))).contains("reserve-missed");

        SparkInput weak = fed(3.5, SwitchInput.breaker(null), 0.65);
        assertThat(says(remedy(weak, SparkFinding.NO_SPARK), "gap")).isEqualTo("no");
        assertThat(says(remedy(weak, SparkFinding.NO_SPARK), "volts")).isEqualTo("yes");
        assertThat(codes(fed(3.5, SwitchInput.breaker(null), 0.5))).contains("no-spark");
    }

    @Test
    void besideADeadModuleItsSupplyIsRaisedAndNotTheGapNarrowed() {
        SwitchInput module = SwitchInput.limitingModule(6.5);
        SparkInput dead = fed(5.5, module, 1.1);
        assertThat(remedy(dead, SparkFinding.NO_SPARK).code()).isEqualTo(SparkFinding.RAISE_SUPPLY);
        assertThat(codes(dead)).doesNotContain("gap-needs-other-coil");
        assertThat(codes(fed(5.5, module, 0.5))).contains("no-spark");
        assertThat(codes(fed(14.2, module, 0.65))).doesNotContain("no-spark", "reserve-missed");

        SwitchInput of24V = new SwitchInput(SwitchInput.Kind.MODULE, null, 6.5, null, null, null, null, null, 18.0);
        assertThat(remedy(fed(14.2, of24V, 0.65), SparkFinding.NO_SPARK).code())
                .isEqualTo(SparkFinding.FIT_MODULE_FOR_SYSTEM);
    }

    @Test
    void moreVoltsAreNotOfferedWhereTheModuleHoldsItsCurrentAnyway() {
        SparkInput wide = fed(14.2, SwitchInput.limitingModule(3.0), 2.5);
        Message remedy = remedy(wide, SparkFinding.NO_SPARK, SparkFinding.RESERVE_MISSED);
        assertThat(says(remedy, "volts")).isEqualTo("no");
        assertThat(result(fed(15.7, SwitchInput.limitingModule(3.0), 2.5))
                        .at()
                        .margin()
                        .availableV())
                .isCloseTo(result(wide).at().margin().availableV(), within(1.0));
    }

    private static SparkInput fed(double supplyV, SwitchInput primarySwitch, double gapMm) {
        return input(
                1500,
                new FeedInput(supplyV, null, null, null, 12),
                CoilInput.of(
                        primarySwitch.kind() == SwitchInput.Kind.MODULE
                                ? CoilPreset.HIGH_ENERGY
                                : CoilPreset.FOR_DIRECT_FEED),
                primarySwitch,
                FOUR,
                gapMm);
    }

    private static Message remedy(SparkInput input, SparkFinding... kinds) {
        return Objects.requireNonNull(result(input).findings().stream()
                .filter(found -> List.of(kinds).contains(found.kind()))
                .findFirst()
                .orElseThrow()
                .remedy());
    }

    private static String says(Message message, String argument) {
        return ((Verbatim) Objects.requireNonNull(message.arguments().get(argument))).text();
    }
}
