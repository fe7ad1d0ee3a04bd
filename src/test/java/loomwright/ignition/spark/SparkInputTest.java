package loomwright.ignition.spark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Random;
import loomwright.answer.Answer;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.ignition.primary.Firing.Arrangement;
import loomwright.ignition.spark.SwitchInput.DwellRule;
import loomwright.ignition.spark.SwitchInput.Kind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A question about a spark that can't be answered: all faults together, each at its name. */
class SparkInputTest {
    private static List<String> pointers(SparkInput input) {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> Spark.calculate(input));
        assertThat(rejected).as("rejected").isNotNull();
        return rejected.faults().stream().map(InputError::pointer).toList();
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
                new FeedInput(-1.0, Double.NaN, 99.0, null, null),
                new CoilInput(null, -4.0, null, null, null, null, null, null),
                999.0,
                null,
                SwitchInput.breaker(0.0),
                new EngineInput(4, 3, null),
                GapInput.of(77.0),
                1.0,
                new SearchInput(0.5, null, null, null, new SweepRange(-5, 1e6, 3), null));
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
        SearchInput sweep = new SearchInput(null, null, null, null, new SweepRange(800, 900, 1), null);
        EngineInput four = new EngineInput(4, 4, null);
        SparkInput swept = input(null, SwitchInput.breaker(null), four, GapInput.of(null), sweep);
        assertThat(Spark.calculate(swept).result().at().speedRpm()).isEqualTo(800);
        SparkInput missing = input(null, SwitchInput.breaker(null), four, GapInput.of(null), SearchInput.COMMON);
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> Spark.calculate(missing));
        assertThat(rejected.faults())
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(InputError.Code.MISSING, "/speedRpm"));
    }

    @Test
    void aDwellAngleThatNeverOpensIsAContradiction() {
        assertThat(pointers(with(SwitchInput.breaker(90.0)))).containsExactly("/dwellDegrees");
        assertThat(Spark.calculate(with(SwitchInput.breaker(89.0)))
                        .result()
                        .at()
                        .timing()
                        .dutyFraction())
                .isLessThan(1);
    }

    @Test
    void contactsHaveNeitherALimitNorAnotherDwellLaw() {
        assertThat(pointers(with(new SwitchInput(Kind.CONTACT_BREAKER, null, 6.0, null, null, null, null, null, null))))
                .containsExactly("/currentLimitA");
        assertThat(pointers(with(new SwitchInput(
                        Kind.CONTACT_BREAKER, null, null, DwellRule.CONSTANT_TIME, null, null, null, null, null))))
                .containsExactly("/dwellRule");
    }

    @Test
    void aModuleThatChargesToItsLimitNeedsOne() {
        assertThat(pointers(with(new SwitchInput(
                        Kind.MODULE, null, null, DwellRule.CURRENT_CONTROLLED, null, null, null, null, null))))
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

    /** Ends and middles of all ranges, thrown together: an answer without a hole in it, or faults; nothing else. */
    @Test
    void anyInputIsAnsweredInFiniteNumbersOrRejected() {
        Random random = new Random(20260319);
        int answered = 0;
        for (int i = 0; i < 3000; i++) {
            SparkInput input = thrownTogether(random);
            Answer<SparkResult> answer;
            try {
                answer = Spark.calculate(input);
            } catch (RejectedInput rejected) {
                assertThat(rejected.faults()).isNotEmpty();
                continue;
            }
            answered++;
            assertThat(answer.result().toString()).doesNotContain("NaN", "Infinity");
            assertThat(answer.result().at().timing().dutyFraction()).isBetween(0.0, 1.0);
            assertThat(answer.result().ends().startsAboveV().value()).isBetween(0.0, 60.0);
        }
        assertThat(answered).isGreaterThan(1000);
    }

    private static SparkInput thrownTogether(Random random) {
        SwitchInput closing = random.nextBoolean()
                ? SwitchInput.breaker(null)
                : new SwitchInput(
                        Kind.MODULE,
                        pick(random, 0, 5),
                        pick(random, 0.5, 30),
                        any(random, DwellRule.values()),
                        null,
                        pick(random, 1e-4, 0.1),
                        pick(random, 0.05, 0.98),
                        pick(random, 0.5, 60),
                        pick(random, 0, 60));
        boolean measured = random.nextBoolean();
        return new SparkInput(
                pick(random, 20, 20_000),
                new FeedInput(
                        pick(random, 1, 60), pick(random, 0, 10), pick(random, 0, 20), random.nextBoolean(), null),
                new CoilInput(
                        null,
                        pick(random, 0.05, 20),
                        pick(random, 2e-4, 0.1),
                        pick(random, 20, 400),
                        pick(random, 50, 1000),
                        pick(random, 1e-11, 1e-9),
                        pick(random, 0.05, 1),
                        null),
                pick(random, -40, 150),
                random.nextBoolean() ? pick(random, 0, 1000) : null,
                closing,
                new EngineInput(
                        1 + random.nextInt(16), random.nextBoolean() ? 2 : 4, any(random, Arrangement.values())),
                measured
                        ? GapInput.of(pick(random, 0.2, 3), pick(random, 5e4, 5e7), pick(random, -60, 1500))
                        : new GapInput(
                                pick(random, 0.2, 3),
                                null,
                                null,
                                pick(random, 4, 25),
                                pick(random, 25_000, 400_000),
                                pick(random, -40, 150),
                                pick(random, 1.1, 1.4),
                                pick(random, 0, 60),
                                null),
                pick(random, 200, 10_000),
                SearchInput.COMMON);
    }

    private static <T> T any(Random random, T[] choices) {
        return choices[random.nextInt(choices.length)];
    }

    private static double pick(Random random, double min, double max) {
        return switch (random.nextInt(6)) {
            case 0 -> min;
            case 1 -> max;
            default -> min + (max - min) * random.nextDouble();
        };
    }

    @Test
    void aSweepThatDoesNotRiseIsRejected() {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> new SweepRange(10, 10, 0));
        assertThat(rejected.faults()).extracting(InputError::pointer).containsExactly("/to", "/steps");
    }
}
