package loomwright.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.answer.Severity;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.DropRule;
import loomwright.judgement.Level;
import loomwright.message.Argument.Verbatim;
import loomwright.message.Message;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Voltage drop: 1 published examples, 2 ways back and joints, 3 temperature, 4 verdicts and remedies, 5 faults, 6 properties. */
class VoltageDropTest {
    private static final double FT = 0.3048;

    @ParameterizedTest(name = "FAA AC 43.13-1B tables 11-7 and 11-8: {0} AWG, {1} ft, {2} A, {3} ohm/ft: {4} V")
    @CsvSource({
        "6, 107, 20, 0.00044, 0.942",
        "4, 90, 20, 0.00028, 0.504",
        "14, 100, 20, 0.00306, 6.12",
        "12, 88, 20, 0.00202, 3.555",
        "10, 39, 20, 0.00126, 0.983",
        "10, 156, 20, 0.00126, 3.931",
        "10, 273, 20, 0.00126, 6.880",
        "10, 19.5, 20, 0.00126, 0.491"
    })
    void examplesOfTheAdvisoryCircular(int gauge, double ft, double currentA, double ohmPerFt, double dropV) {
        var result = solve(
                "size",
                gauge + " AWG",
                "lengthFt",
                ft,
                "currentA",
                currentA,
                "returnPath",
                ReturnPath.NONE,
                "temperatureC",
                20.0,
                "resistanceOhmPerKm20C",
                ohmPerFt / FT * 1000);
        assertThat(result.total().totalV()).isCloseTo(dropV, within(0.0006));
    }

    /** OpenStax College Physics 20.3: 20.0 m of solid 12-gauge copper: 0.104 ohm; vehicle wire has 1.08 times that. */
    @Test
    void resistanceOfALengthOfTwelveGauge() {
        var result = solve(
                "size",
                "12 AWG",
                "lengthM",
                20.0,
                "currentA",
                1.0,
                "returnPath",
                ReturnPath.NONE,
                "temperatureC",
                20.0);
        assertThat(result.total().totalOhm()).isCloseTo(1.08 * 0.104, within(0.0006));
    }

    /** FAA AC 43.13-1B paragraph 11-66: L2 = 254.5 L1 / (234.5 + T2); 100 ft at 20 C is 76.08 ft at 100 C. */
    @Test
    void longestRunShrinksWithTemperature() {
        assertThat(100 * longestM(100) / longestM(20)).isCloseTo(76.08, within(0.01));
    }

    @Test
    void outBackAndEachJointAddUp() {
        var result = solve(
                "size",
                "2.5 mm2",
                "lengthM",
                5.0,
                "currentA",
                10.0,
                "returnSize",
                "4 mm2",
                "returnLengthM",
                2.0,
                "temperatureC",
                20.0,
                "jointsOutOhm",
                List.of(0.001, 0.002),
                "jointsBackOhm",
                List.of(0.005));
        assertThat(result.drops().out().dropV()).isCloseTo(10 * 0.00798 * 5, within(1e-12));
        assertThat(Objects.requireNonNull(result.drops().back()).dropV()).isCloseTo(10 * 0.00495 * 2, within(1e-12));
        assertThat(result.drops().jointsOutV()).containsExactly(0.01, 0.02);
        assertThat(result.drops().jointsBackV()).containsExactly(0.05);
        assertThat(result.total().totalV()).isCloseTo(0.399 + 0.099 + 0.08, within(1e-12));
        assertThat(Objects.requireNonNull(result.largest()).part()).isEqualTo("out");
        assertThat(result.largest().most()).isTrue();
    }

    @Test
    void aChassisReturnHasItsUsualOhmsUnlessGiven() {
        assertThat(solve("size", "4 mm2", "lengthM", 1.0, "currentA", 10.0, "returnPath", ReturnPath.CHASSIS)
                        .drops()
                        .chassisV())
                .isCloseTo(0.1, within(1e-12));
        assertThat(solve(
                                "size",
                                "35 mm2",
                                "lengthM",
                                1.0,
                                "currentA",
                                200.0,
                                "returnPath",
                                ReturnPath.CHASSIS,
                                "circuit",
                                DropRule.STARTER)
                        .drops()
                        .chassisV())
                .isCloseTo(0.06, within(1e-12));
    }

    /** A 21 W signal lamp takes 25 W at 13.5 V (UN Regulation 37); by its name it is 21 W there, 1.56 A. */
    @Test
    void wattsOfALampFollowTheLawOfFilaments() {
        var lamp =
                solve("powerW", 21.0, "size", "1 mm2", "lengthM", 1.0, "supplyV", 13.5, "circuit", DropRule.SMALL_LAMP);
        assertThat(lamp.currentA()).isCloseTo(21 / 13.5, within(1e-9));
        assertThat(solve("powerW", 120.0, "size", "1 mm2", "lengthM", 1.0).currentA())
                .isCloseTo(10, within(1e-9));
    }

    @Test
    void aDropThatEatsTheSupplyIsAResultAndNotAFault() {
        var result = solve("size", "24 AWG", "lengthM", 100.0, "currentA", 5.0);
        assertThat(result.findings()).extracting(Finding::code).contains("current-impossible");
        assertThat(result.total().loadV()).isNull();
        assertThat(result.total().maxCurrentA()).isLessThan(5);
    }

    @Test
    void aWireThatBurnsIsADanger() {
        var result = solve("size", "18 AWG", "lengthM", 1.0, "currentA", 60.0);
        assertThat(result.judged().wireVerdict().level()).isEqualTo(Level.DANGER);
        assertThat(result.findings())
                .filteredOn(f -> f.code().equals("wire-overloaded"))
                .singleElement()
                .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.DANGER));
    }

    @ParameterizedTest(name = "{0} at {1} V: {2} V")
    @CsvSource({
        "IGNITION_FEED, 12, 0.5",
        "IGNITION_FEED, 6, 0.25",
        "STARTER, 12.6, 0.8",
        "STARTER_CONTROL, 12, 1.0",
        "STARTER_CONTROL, 24, 2.0",
        "EARTH_JOINT, 12, 0.1",
        "HEADLAMP, 12, 1.0",
        "ELECTRONICS, 12, 0.6",
        "GENERAL, 12, 1.2"
    })
    void theLimitFollowsTheKindOfCircuit(DropRule circuit, double supplyV, double limitV) {
        var result = solve("size", "10 AWG", "lengthM", 1.0, "currentA", 1.0, "circuit", circuit, "supplyV", supplyV);
        assertThat(result.judged().limit().findingV()).isCloseTo(limitV, within(1e-12));
        assertThat(result.judged().verdict().level()).isEqualTo(Level.FITS);
    }

    @Test
    void aGivenLimitGoesBeforeThatOfTheCircuit() {
        assertThat(solve("size", "14", "lengthM", 10.0, "currentA", 10.0, "limitPercent", 5.0)
                        .judged()
                        .limit()
                        .findingV())
                .isCloseTo(0.6, within(1e-12));
        assertThat(solve("size", "14", "lengthM", 10.0, "currentA", 10.0, "limitV", 0.2, "circuit", DropRule.GENERAL)
                        .judged()
                        .verdict()
                        .level())
                .isEqualTo(Level.WARNING);
    }

    @Test
    void theAnswerCarriesItsCautionsAndSources() {
        var answer = VoltageDrop.calculate(Inputs.drop("size", "14", "lengthM", 1.0, "currentA", 1.0));
        assertThat(answer.cautions()).endsWith(Caution.LOCAL_CODES);
        assertThat(answer.basis()).isNotEmpty();
    }

    static Stream<Arguments> faults() {
        return Stream.of(
                fault("/currentA", InputError.Code.MISSING, "size", "14", "lengthM", 1.0),
                fault("/currentA", InputError.Code.OUT_OF_RANGE, "size", "14", "lengthM", 1.0, "currentA", 0.0),
                fault("/currentA", InputError.Code.OUT_OF_RANGE, "size", "14", "lengthM", 1.0, "currentA", Double.NaN),
                fault(
                        "/powerW",
                        InputError.Code.CONTRADICTION,
                        "size",
                        "14",
                        "lengthM",
                        1.0,
                        "currentA",
                        1.0,
                        "powerW",
                        5.0),
                fault("/size", InputError.Code.MISSING, "lengthM", 1.0, "currentA", 1.0),
                fault("/size", InputError.Code.OUT_OF_RANGE, "size", "30 AWG", "lengthM", 1.0, "currentA", 1.0),
                fault("/lengthM", InputError.Code.MISSING, "size", "14", "currentA", 1.0),
                fault("/lengthM", InputError.Code.OUT_OF_RANGE, "size", "14", "lengthM", 0.0, "currentA", 1.0),
                fault("/lengthFt", InputError.Code.OUT_OF_RANGE, "size", "14", "lengthFt", -2.0, "currentA", 1.0),
                faultOf("/lengthFt", InputError.Code.CONTRADICTION, "lengthFt", 3.0),
                faultOf("/chassisOhm", InputError.Code.CONTRADICTION, "chassisOhm", 0.1),
                faultOf("/returnSize", InputError.Code.MALFORMED, "returnSize", "10"),
                faultOf("/returnLengthM", InputError.Code.OUT_OF_RANGE, "returnLengthM", 0.0),
                faultOf("/jointsOutOhm/1", InputError.Code.OUT_OF_RANGE, "jointsOutOhm", List.of(0.1, -0.1)),
                faultOf("/temperatureC", InputError.Code.OUT_OF_RANGE, "temperatureC", 1000.0),
                faultOf("/ambientC", InputError.Code.CONTRADICTION, "ambientC", 110.0),
                faultOf("/ambientC", InputError.Code.OUT_OF_RANGE, "ambientC", Double.NaN),
                faultOf("/supplyV", InputError.Code.OUT_OF_RANGE, "supplyV", 0.0),
                faultOf("/limitPercent", InputError.Code.CONTRADICTION, "limitV", 0.5, "limitPercent", 3.0),
                faultOf("/limitV", InputError.Code.OUT_OF_RANGE, "limitV", 0.0),
                faultOf("/resistanceOhmPerKm20C", InputError.Code.OUT_OF_RANGE, "resistanceOhmPerKm20C", -1.0));
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("faults")
    void faultsNameTheirPlace(String pointer, InputError.Code code, Object[] values) {
        RejectedInput rejected =
                catchThrowableOfType(RejectedInput.class, () -> VoltageDrop.calculate(Inputs.drop(values)));
        assertThat(rejected.faults())
                .extracting(f -> f.pointer() + " " + f.code())
                .containsExactly(pointer + " " + code);
    }

    @Property(seed = "43")
    void theDropGrowsWithCurrentLengthAndTemperature(
            @ForAll @DoubleRange(min = 0.1, max = 15) double currentA,
            @ForAll @DoubleRange(min = 0.1, max = 50) double lengthM,
            @ForAll @DoubleRange(min = -40, max = 300) double temperatureC,
            @ForAll @DoubleRange(min = 1.01, max = 3) double more,
            @ForAll @IntRange(min = 0, max = 27) int index) {
        String size = ConductorSize.list(SizeSystem.AWG).get(index).name();
        double drop = dropV(size, currentA, lengthM, temperatureC);
        assertThat(dropV(size, currentA * more, lengthM, temperatureC)).isGreaterThan(drop);
        assertThat(dropV(size, currentA, lengthM * more, temperatureC)).isGreaterThan(drop);
        assertThat(dropV(size, currentA, lengthM, temperatureC + more)).isGreaterThan(drop);
        if (index < 27) {
            String thicker = ConductorSize.list(SizeSystem.AWG).get(index + 1).name();
            assertThat(dropV(thicker, currentA, lengthM, temperatureC)).isLessThan(drop);
        }
    }

    /** Second method: V = 10.371 I L / CM, L in ft out and back, the mil-foot of solid copper; wire has 1.08 times that. */
    @Property(seed = "45")
    void theMilFootGivesTheSameDrop(
            @ForAll @DoubleRange(min = 0.1, max = 100) double currentA,
            @ForAll @DoubleRange(min = 0.1, max = 100) double lengthFt,
            @ForAll @IntRange(min = 0, max = 27) int index) {
        ConductorSize size = ConductorSize.list(SizeSystem.AWG).get(index);
        double byMilFoot = 1.08 * 10.371 * currentA * 2 * lengthFt / size.circularMils();
        assertThat(dropV(size.name(), currentA, lengthFt * FT, 20)).isCloseTo(byMilFoot, within(1e-4 * byMilFoot));
    }

    /** The size that a remedy names is applied and judged again: no finding is left. */
    @Property(seed = "46", tries = 200)
    void theSizeThatARemedyNamesCuresTheRun(
            @ForAll @DoubleRange(min = 1, max = 60) double currentA,
            @ForAll @DoubleRange(min = 0.3, max = 10) double lengthM,
            @ForAll @IntRange(min = 0, max = 9) int index,
            @ForAll DropRule circuit) {
        String size = ConductorSize.list(SizeSystem.METRIC_ISO6722).get(index).name();
        var sick = solve("size", size, "lengthM", lengthM, "currentA", currentA, "circuit", circuit);
        for (Finding finding : sick.findings()) {
            Message remedy = Objects.requireNonNull(finding.remedy());
            if (remedy.code() == SizingText.FIT_SIZE) {
                String named =
                        ((Verbatim) Objects.requireNonNull(remedy.arguments().get("size"))).text();
                var cured = solve("size", named, "lengthM", lengthM, "currentA", currentA, "circuit", circuit);
                assertThat(cured.findings()).isEmpty();
            }
        }
    }

    private static double dropV(String size, double currentA, double lengthM, double temperatureC) {
        return solve("size", size, "lengthM", lengthM, "currentA", currentA, "temperatureC", temperatureC)
                .total()
                .totalV();
    }

    private static double longestM(double temperatureC) {
        return Objects.requireNonNull(solve(
                        "size", "10 AWG",
                        "lengthFt", 50.0,
                        "currentA", 20.0,
                        "limitV", 1.0,
                        "temperatureC", temperatureC)
                .maxLengthM());
    }

    private static VoltageDrop.Result solve(Object... namesAndValues) {
        return VoltageDrop.calculate(Inputs.drop(Inputs.insulation105C(namesAndValues)))
                .result();
    }

    private static Arguments fault(String pointer, InputError.Code code, Object... namesAndValues) {
        return Arguments.of(pointer, code, namesAndValues);
    }

    /** A fault of one value in an input that is sound otherwise. */
    private static Arguments faultOf(String pointer, InputError.Code code, Object... namesAndValues) {
        List<Object> all = new ArrayList<>(List.of("size", "14", "lengthM", 1.0, "currentA", 1.0));
        all.addAll(List.of(namesAndValues));
        return Arguments.of(pointer, code, all.toArray());
    }
}
