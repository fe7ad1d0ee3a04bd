package loomwright.ignition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import loomwright.answer.Fault;
import loomwright.answer.RejectedInput;
import loomwright.ignition.Firing.Arrangement;
import loomwright.ignition.SwitchInput.DwellRule;
import loomwright.ignition.SwitchInput.Kind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A question about a spark that can't be answered: all faults together, each at its name. */
class SparkInputTest {
    private static List<String> pointers(SparkInput input) {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> Spark.calculate(input));
        assertThat(rejected).as("rejected").isNotNull();
        return rejected.faults().stream().map(Fault::pointer).toList();
    }

    private static SparkInput input(
            @Nullable Double rpm, SwitchInput primarySwitch, EngineInput engine, GapInput gap, SearchInput search) {
        return new SparkInput(
                rpm, FeedInput.COMMON, CoilInput.of(null), null, null, primarySwitch, engine, gap, null, search);
    }

    private static SparkInput with(SwitchInput primarySwitch) {
        return input(3000.0, primarySwitch, new EngineInput(4, 4, null), GapInput.of(null), SearchInput.COMMON);
    }

    private static SparkInput with(GapInput gap) {
        return input(3000.0, SwitchInput.breaker(null), new EngineInput(4, 4, null), gap, SearchInput.COMMON);
    }

    @Test
    void faultsOfAllPartsAreSaidTogether() {
        SparkInput input = new SparkInput(
                1e9,
                new FeedInput(-1.0, Double.NaN, 99.0, null),
                new CoilInput(null, -4.0, null, null, null, null, null, null),
                999.0,
                null,
                SwitchInput.breaker(0.0),
                new EngineInput(4, 3, null),
                GapInput.of(77.0),
                1.0,
                new SearchInput(0.5, null, null, null, new Sweep(-5, 1e6, 3), null));
        assertThat(pointers(input))
                .containsExactlyInAnyOrder(
                        "/speedRpm",
                        "/supplyV",
                        "/feedResistanceOhm",
                        "/ballastResistanceOhm",
                        "/primaryResistanceOhm",
                        "/coilTemperatureC",
                        "/strokes",
                        "/dwellDegrees",
                        "/reserveRatio",
                        "/gapMm",
                        "/burningV",
                        "/speedSweep/from",
                        "/speedSweep/to");
    }

    @Test
    void withoutASpeedTheSweepsStartIsTakenAndWithoutASweepItIsMissing() {
        SearchInput sweep = new SearchInput(null, null, null, null, new Sweep(800, 900, 1), null);
        EngineInput four = new EngineInput(4, 4, null);
        SparkInput swept = input(null, SwitchInput.breaker(null), four, GapInput.of(null), sweep);
        assertThat(Spark.calculate(swept).result().at().speedRpm()).isEqualTo(800);
        SparkInput missing = input(null, SwitchInput.breaker(null), four, GapInput.of(null), SearchInput.COMMON);
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> Spark.calculate(missing));
        assertThat(rejected.faults())
                .extracting(Fault::code, Fault::pointer)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(Fault.Code.MISSING, "/speedRpm"));
    }

    @Test
    void aDwellAngleThatNeverOpensIsAContradiction() {
        assertThat(pointers(with(SwitchInput.breaker(90.0)))).containsExactly("/dwellDegrees");
        assertThat(Spark.calculate(with(SwitchInput.breaker(89.0)))
                        .result()
                        .at()
                        .dutyFraction())
                .isLessThan(1);
    }

    @Test
    void contactsHaveNeitherALimitNorAnotherDwellLaw() {
        assertThat(pointers(with(new SwitchInput(Kind.BREAKER, null, 6.0, null, null, null, null))))
                .containsExactly("/currentLimitA");
        assertThat(pointers(with(new SwitchInput(Kind.BREAKER, null, null, DwellRule.CONSTANT_TIME, null, null, null))))
                .containsExactly("/dwellRule");
    }

    @Test
    void aModuleThatChargesToItsLimitNeedsOne() {
        assertThat(pointers(
                        with(new SwitchInput(Kind.MODULE, null, null, DwellRule.CURRENT_CONTROLLED, null, null, null))))
                .containsExactly("/currentLimitA");
    }

    @Test
    void pressureAndTemperatureGoTogetherAndExcludeCompression() {
        assertThat(pointers(with(new GapInput(null, 8e5, null, null, null, null, null, null, null))))
                .containsExactly("/temperatureC");
        assertThat(pointers(with(new GapInput(null, 8e5, 300.0, 9.0, null, null, null, null, null))))
                .containsExactly("/pressurePa");
    }

    @Test
    void aCoilAlreadyVeryHotIsNotHeatedFurther() {
        SparkInput hot = new SparkInput(
                3000.0,
                FeedInput.COMMON,
                CoilInput.of(null),
                180.0,
                5.0,
                SwitchInput.breaker(null),
                new EngineInput(4, 4, Arrangement.DISTRIBUTOR),
                GapInput.of(null),
                null,
                SearchInput.COMMON);
        assertThat(pointers(hot)).containsExactly("/coilTemperatureC");
    }

    @Test
    void aSweepThatDoesNotRiseIsRejected() {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> new Sweep(10, 10, 0));
        assertThat(rejected.faults()).extracting(Fault::pointer).containsExactly("/to", "/steps");
    }
}
