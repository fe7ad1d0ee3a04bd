package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Sizing: 1 published examples, 2 what decides, 3 tables side by side, 4 faults, 5 monotone in every input. */
class ConductorSizingTest {
    /** FAA AC 43.13-1B paragraph 11-66 and figure 11-2, example 1: 28 V, 20 A, 50 ft, 20 C: between 10 and 8, take 8. */
    @Test
    void exampleOneOfTheAdvisoryCircular() {
        var result = solve(
                "currentA", 20.0,
                "lengthFt", 50.0,
                "returnPath", ReturnPath.NONE,
                "supplyV", 28.0,
                "limitV", 1.0,
                "temperatureC", 20.0);
        assertThat(result.byDrop().size()).isEqualTo("8 AWG");
        assertThat(result.byDrop().dropV())
                .as("the circular's tin-plated wire of 0.70 ohm/1000 ft drops 0.70 V")
                .isBetween(0.6, 0.7);
        assertThat(result.size()).isEqualTo("8 AWG");
    }

    @ParameterizedTest(
            name = "boat supplier''s example, CM = 10.75 I L / E: 10 A, 21 ft, {0} % of 12 V: {1} CM, {2} AWG")
    @CsvSource({"10, 1881, 16", "3, 6271, 12"})
    void circularMilsByBoatPractice(double percent, double circularMils, String gauge) {
        assertThat(ConductorSizing.circularMils(10, 21, percent / 100 * 12)).isCloseTo(circularMils, within(0.5));
        var rule = solve("currentA", 10.0, "lengthFt", 21.0, "returnPath", ReturnPath.NONE, "limitPercent", percent)
                .byCircularMils();
        assertThat(Objects.requireNonNull(rule).circularMils()).isCloseTo(circularMils, within(0.5));
        assertThat(rule.size()).isEqualTo(gauge + " AWG");
    }

    @Test
    void theSupplierReadsSaeWireWhereItsTableSaysTen() {
        var rule = solve(
                        "currentA", 10.0,
                        "lengthFt", 21.0,
                        "returnPath", ReturnPath.NONE,
                        "limitPercent", 3.0,
                        "system", SizeSystem.SAE)
                .byCircularMils();
        assertThat(Objects.requireNonNull(rule).size()).isEqualTo("SAE 10");
    }

    @Test
    void aLongRunIsDecidedByDropAndAShortOneByAmpacity() {
        var longRun = solve("currentA", 5.0, "lengthM", 20.0, "ampacityTable", AmpacityTable.US_33CFR183);
        assertThat(longRun.decider()).isEqualTo(ConductorSizing.Decider.DROP);
        var shortRun = solve("currentA", 50.0, "lengthM", 0.1, "ampacityTable", AmpacityTable.US_33CFR183);
        assertThat(shortRun.decider()).isEqualTo(ConductorSizing.Decider.AMPACITY);
        assertThat(shortRun.size()).isEqualTo("10 AWG");
    }

    /**
     * By hand: from 30 to 80 C 30 s of 150 A ask for 150 sqrt(30 / ln(314.5 / 264.5)) / 226 = 8.7 mm2, so 6 AWG. A table of
     * continuous current would ask for cables as no starter has them.
     */
    @Test
    void aStarterCableIsHeldToTheHeatOfOneGoNotToAContinuousCurrent() {
        var cable = solve("currentA", 150.0, "lengthM", 0.1, "circuit", CircuitKind.STARTER, "insulationC", 80.0);
        assertThat(Objects.requireNonNull(cable.byCrankingHeat()).size()).isEqualTo("6 AWG");
        assertThat(cable.size()).isEqualTo("6 AWG");
        assertThat(cable.decider()).isEqualTo(ConductorSizing.Decider.CRANKING_HEAT);
        var longer = solve("currentA", 150.0, "lengthM", 2.0, "circuit", CircuitKind.STARTER, "insulationC", 80.0);
        assertThat(longer.decider()).isEqualTo(ConductorSizing.Decider.DROP);
        var lasting = solve("currentA", 20.0, "lengthM", 2.0, "circuit", CircuitKind.GENERAL);
        assertThat(lasting.byCrankingHeat()).isNull();
    }

    @Test
    void allTablesStandSideBySideTheMostCautiousLeading() {
        var result = solve("currentA", 12.0, "lengthM", 0.1);
        assertThat(result.byAmpacity())
                .extracting(ConductorSizing.ByTable::table)
                .containsExactly(AmpacityTable.AC43_13, AmpacityTable.US_33CFR183);
        assertThat(result.byAmpacity())
                .extracting(ConductorSizing.ByTable::size)
                .containsExactly("12 AWG", "18 AWG");
        assertThat(result.size()).isEqualTo("12 AWG");
    }

    @Test
    void noSuchSizeIsAResult() {
        assertThat(solve("currentA", 600.0, "lengthM", 0.1).decider()).isEqualTo(ConductorSizing.Decider.NO_SUCH_SIZE);
        var tooLong = solve("currentA", 10.0, "lengthM", 5000.0);
        assertThat(tooLong.size()).isNull();
        assertThat(tooLong.byDrop().size()).isNull();
        var joints = solve("currentA", 10.0, "lengthM", 1.0, "jointsOhm", 1.0);
        assertThat(joints.byCircularMils()).isNull();
        assertThat(joints.decider()).isEqualTo(ConductorSizing.Decider.NO_SUCH_SIZE);
    }

    @Test
    void theBundleIsACautionBelowFiftyVoltsAndARuleFromThereOn() {
        var low = solve("currentA", 20.0, "lengthM", 0.1, "bundleCount", 5, "ampacityTable", AmpacityTable.US_33CFR183);
        assertThat(low.size()).isEqualTo("18 AWG");
        assertThat(low.notes()).anyMatch(note -> note.contains("0.6") && note.endsWith("14 AWG"));
        var high = solve(
                "currentA", 20.0,
                "lengthM", 0.1,
                "bundleCount", 5,
                "supplyV", 60.0,
                "ampacityTable", AmpacityTable.US_33CFR183);
        assertThat(high.size()).isEqualTo("14 AWG");
    }

    @ParameterizedTest
    @EnumSource(SizeSystem.class)
    void everySystemCanBeChosenFrom(SizeSystem system) {
        var result = solve("currentA", 10.0, "lengthM", 3.0, "system", system);
        assertThat(ConductorSize.parse(Objects.requireNonNull(result.size())).system())
                .isEqualTo(system);
        assertThat(Objects.requireNonNull(result.dropV())).isLessThanOrEqualTo(0.36);
    }

    @Test
    void anInsulationNobodyNamedIsTakenAsCommonPvcAndSaidSo() {
        var result = ConductorSizing.size(
                        Inputs.sizing("currentA", 16.0, "lengthM", 0.1, "ampacityTable", AmpacityTable.US_33CFR183))
                .result();
        assertThat(result.size()).as("16 AWG carries 20 A at 80 C, 18 AWG 15 A").isEqualTo("16 AWG");
        assertThat(result.notes()).anyMatch(note -> note.contains("PVC"));
    }

    @Test
    void allFaultsAreSaidAtOnce() {
        RejectedInput rejected = catchThrowableOfType(
                RejectedInput.class,
                () -> solve("currentA", 0.0, "lengthM", -1.0, "bundleCount", 0, "supplyV", 1000.0, "ambientC", 500.0));
        assertThat(rejected.faults())
                .extracting(InputError::pointer)
                .containsExactly("/currentA", "/lengthM", "/supplyV", "/ambientC", "/bundleCount");
    }

    @Property(seed = "7")
    void moreOfAnythingNeverNeedsAThinnerWire(
            @ForAll SizeSystem system,
            @ForAll @DoubleRange(min = 0.1, max = 120) double currentA,
            @ForAll @DoubleRange(min = 0.1, max = 12) double lengthM,
            @ForAll @DoubleRange(min = 0, max = 90) double ambientC,
            @ForAll @DoubleRange(min = 1, max = 3) double more) {
        double area = areaMm2(system, currentA, lengthM, ambientC);
        assertThat(areaMm2(system, currentA * more, lengthM, ambientC)).isGreaterThanOrEqualTo(area);
        assertThat(areaMm2(system, currentA, lengthM * more, ambientC)).isGreaterThanOrEqualTo(area);
        assertThat(areaMm2(system, currentA, lengthM, ambientC + more)).isGreaterThanOrEqualTo(area);
    }

    /** Second method: the size before the chosen one fails, the chosen one passes, by {@link VoltageDrop} itself. */
    @Property(seed = "8")
    void theSizeByDropIsTheSmallestThatKeepsTheLimit(
            @ForAll @DoubleRange(min = 0.1, max = 60) double currentA,
            @ForAll @DoubleRange(min = 0.1, max = 20) double lengthM) {
        String size = solve(
                        "currentA",
                        currentA,
                        "lengthM",
                        lengthM,
                        "temperatureC",
                        20.0,
                        "system",
                        SizeSystem.METRIC_IEC60228)
                .byDrop()
                .size();
        for (ConductorSize each : ConductorSize.list(SizeSystem.METRIC_IEC60228)) {
            boolean thinner =
                    size == null || each.areaMm2() < ConductorSize.parse(size).areaMm2();
            var drop =
                    VoltageDrop.calculate(Inputs.drop("currentA", currentA, "lengthM", lengthM, "size", each.name()));
            assertThat(drop.result().totalV() <= 0.36).isEqualTo(!thinner);
        }
    }

    /** No such size counts as endless copper. */
    private static double areaMm2(SizeSystem system, double currentA, double lengthM, double ambientC) {
        String size = solve("currentA", currentA, "lengthM", lengthM, "ambientC", ambientC, "system", system)
                .size();
        return size == null
                ? Double.POSITIVE_INFINITY
                : ConductorSize.parse(size).areaMm2();
    }

    private static ConductorSizing.Result solve(Object... namesAndValues) {
        return ConductorSizing.size(Inputs.sizing(Inputs.insulation105C(namesAndValues)))
                .result();
    }
}
