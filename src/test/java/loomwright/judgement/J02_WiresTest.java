package loomwright.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.wire.BudgetSplit;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.judgement.wire.WireLoadRule;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Wires and fuses: ampacity against printed tables, temperature, fuse against load and wire, split of a budget. */
class J02_WiresTest {
    private static double allowedA(double areaMm2, double insulationC, double ambientC, int bundle) {
        return WireAmpacity.of(areaMm2, new WireConditions(insulationC, ambientC, bundle))
                .allowedA();
    }

    @ParameterizedTest(name = "33 CFR 183.425 Table 5: {0} AWG")
    @CsvFileSource(resources = "/conductor/us-33cfr183-ampacity.csv", numLinesToSkip = 1)
    void thePrintedTableLeads(
            String gauge, double a60, double a75, double a80, double a90, double a105, double a125, double a200) {
        double area = ConductorSize.parse(gauge + " AWG").areaMm2();
        double[] classes = {60, 75, 80, 90, 105, 125, 200};
        double[] printed = {a60, a75, a80, a90, a105, a125, a200};
        for (int i = 0; i < classes.length; i++) {
            assertThat(allowedA(area, classes[i], 30, 1)).isEqualTo(printed[i], within(1e-9));
        }
    }

    /** DIN VDE 0100 group 3 (70 C, 30 C, single in air), quoted by a cable trade page: 0.5 to 120 mm2. */
    @ParameterizedTest(name = "{0} mm2: {1} A")
    @CsvSource({"0.5, 12", "0.75, 15", "1, 19", "1.5, 24", "2.5, 32", "4, 42", "6, 54", "10, 73", "25, 129", "50, 198"})
    void theLawStandsBesideTheGermanTable(double areaMm2, double printedA) {
        double lawA = WireAmpacity.of(areaMm2, new WireConditions(70, 30, 1)).lawA();
        assertThat(lawA / printedA).isBetween(0.865, 1.0);
    }

    /** IEC 60364-5-52, PVC 70 C: 0.87, 0.71, 0.50 at 40, 50, 60 C. */
    @ParameterizedTest(name = "{0} C: x {1}")
    @CsvSource({"30, 1", "40, 0.87", "50, 0.71", "60, 0.50"})
    void ambientFactors(double ambientC, double factor) {
        assertThat(allowedA(2.5, 70, ambientC, 1) / allowedA(2.5, 70, 30, 1)).isEqualTo(factor, within(0.01));
    }

    /** 33 CFR 183.425 Table 5 note 1: engine spaces, 50 C. */
    @ParameterizedTest(name = "{0} C insulation in an engine space: x {1}")
    @CsvSource({"60, 0.58", "80, 0.78", "90, 0.82", "105, 0.85", "125, 0.89"})
    void engineSpaces(double insulationC, double factor) {
        assertThat(allowedA(2.081, insulationC, 50, 1) / allowedA(2.081, insulationC, 30, 1))
                .isEqualTo(factor, within(0.012));
    }

    /** IEC 60364-5-52, bunched cables: 0.50 at 9, 0.45 at 12, 0.41 at 16, 0.38 at 20. */
    @ParameterizedTest(name = "{0} wires: x {1}")
    @CsvSource({"1, 1", "2, 0.80", "3, 0.70", "9, 0.50", "12, 0.45", "16, 0.41", "20, 0.38", "60, 0.38"})
    void bundleFactors(int wires, double factor) {
        assertThat(WireAmpacity.bundleFactor(wires)).isEqualTo(factor, within(0.012));
    }

    @Property(seed = "1901")
    void nothingJumpsBetweenSizes(
            @ForAll @DoubleRange(min = 0.13, max = 120) double areaMm2,
            @ForAll @DoubleRange(min = 60, max = 150) double insulationC) {
        double ratio = allowedA(areaMm2 * 1.01, insulationC, 30, 1) / allowedA(areaMm2, insulationC, 30, 1);
        assertThat(ratio).isBetween(1.0, 1.015);
    }

    @Property(seed = "1902")
    void hotterPlacesAndFullerBundlesOnlyTakeAway(
            @ForAll @DoubleRange(min = 0.13, max = 120) double areaMm2,
            @ForAll @DoubleRange(min = -20, max = 70) double ambientC) {
        double allowedA = allowedA(areaMm2, 80, ambientC, 1);
        assertThat(allowedA(areaMm2, 80, ambientC + 5, 1)).isLessThanOrEqualTo(allowedA);
        assertThat(allowedA(areaMm2, 80, ambientC, 2)).isLessThan(allowedA);
        assertThat(allowedA(areaMm2, 80, 85, 1)).isZero();
    }

    /** At its ampacity a conductor is as warm as its insulation stands; 1.35 times it: 113 C for 70 C PVC at 30 C. */
    @Test
    void temperatureUnderLoad() {
        WireAmpacity pvc = WireAmpacity.of(2.5, new WireConditions(70, 30, 1));
        assertThat(pvc.temperatureC(pvc.allowedA())).isEqualTo(70, within(1e-6));
        assertThat(pvc.temperatureC(1.35 * pvc.allowedA())).isEqualTo(113, within(0.5));
        WireAmpacity vehicle = WireAmpacity.of(2.5, new WireConditions(80, 30, 1));
        assertThat(vehicle.temperatureC(1.35 * vehicle.allowedA())).isEqualTo(138, within(0.5));
        assertThat(vehicle.temperatureC(0)).isEqualTo(30);
        assertThat(vehicle.temperatureC(5 * vehicle.allowedA())).isInfinite();
    }

    /** Second method: a first-order body that is on for t takes the steady current times 1 / sqrt(1 - e^(-t / tau)). */
    @Test
    void aShortLoadMayBeLarger() {
        WireAmpacity wire = WireAmpacity.of(1, new WireConditions(80, 30, 1));
        assertThat(wire.timeConstantS()).isEqualTo(25, within(1e-9));
        assertThat(wire.allowedForA(25)).isEqualTo(wire.allowedA() / Math.sqrt(1 - Math.exp(-1)), within(1e-9));
        assertThat(wire.allowedForA(1e6)).isEqualTo(wire.allowedA(), within(1e-9));
    }

    @Test
    void fuseAgainstWire() {
        assertThat(FuseRule.judgeWire(15, 20).level()).isEqualTo(Level.FITS);
        assertThat(FuseRule.judgeWire(15, 16).borderline()).isTrue();
        assertThat(FuseRule.judgeWire(21, 20).level()).isEqualTo(Level.NOTE);
        assertThat(FuseRule.judgeWire(25, 20).level()).isEqualTo(Level.WARNING);
        assertThat(FuseRule.judgeWire(31, 20).level()).isEqualTo(Level.DANGER);
        assertThat(FuseRule.judgeWire(1, 0).level()).isEqualTo(Level.DANGER);
        assertThat(WireLoadRule.judge(31, 20).level()).isEqualTo(Level.DANGER);
    }

    @Test
    void fuseAgainstLoad() {
        assertThat(FuseRule.smallest(7.5, true).orElseThrow().ratingA()).isEqualTo(10);
        assertThat(FuseRule.smallest(7.6, true).orElseThrow().ratingA()).isEqualTo(15);
        assertThat(FuseRule.smallest(18, false).orElseThrow().ratingA()).isEqualTo(20);
        assertThat(FuseRule.smallest(60, true).orElseThrow()).isEqualTo(new FuseRule.Rating(80, FuseRule.Kind.MAXI));
        assertThat(FuseRule.smallest(1000, true)).isEmpty();
        assertThat(FuseRule.judgeLoad(7.9, 10, true).level()).isEqualTo(Level.FITS);
        assertThat(FuseRule.judgeLoad(8.5, 10, true).level()).isEqualTo(Level.NOTE);
        assertThat(FuseRule.judgeLoad(9.9, 10, false).level()).isEqualTo(Level.FITS);
        assertThat(FuseRule.judgeLoad(10.5, 10, true).level()).isEqualTo(Level.WARNING);
    }

    /** Case budget-split: 20 A over 2 m, then 10 A over 3 m, 0.5 V: 0.24 and 0.26 V. No other split needs less copper. */
    @Test
    void aBudgetIsSplitForLeastCopper() {
        List<BudgetSplit.Run> runs = List.of(new BudgetSplit.Run(2, 20), new BudgetSplit.Run(3, 10));
        List<Double> split = BudgetSplit.splitV(0.5, runs);
        assertThat(split.get(0) / 0.5).isBetween(0.46, 0.51);
        double best = copper(runs, split);
        for (double feedV = 0.05; feedV < 0.5; feedV += 0.01) {
            assertThat(copper(runs, List.of(feedV, 0.5 - feedV))).isGreaterThanOrEqualTo(best * (1 - 1e-9));
        }
    }

    /** Volume of copper, in proportion: length times area, area = current times length over volts. */
    private static double copper(List<BudgetSplit.Run> runs, List<Double> volts) {
        double sum = 0;
        for (int i = 0; i < runs.size(); i++) {
            double lengthM = runs.get(i).lengthM();
            sum += lengthM * lengthM * runs.get(i).currentA() / volts.get(i);
        }
        return sum;
    }
}
