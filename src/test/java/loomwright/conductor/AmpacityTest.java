package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Continuous current: 1 the printed figures, 2 corrections, 3 conductors and insulations the tables do not list. */
class AmpacityTest {
    @ParameterizedTest(name = "33 CFR 183.425 Table 5: {0} AWG at 60 to 200 C: {1} {2} {3} {4} {5} {6} {7} A")
    @CsvFileSource(resources = "/conductor/us-33cfr183-ampacity.csv", numLinesToSkip = 1)
    void codeOfFederalRegulations(
            String gauge, double a60, double a75, double a80, double a90, double a105, double a125, double a200) {
        double[] printed = {a60, a75, a80, a90, a105, a125, a200};
        List<Integer> classes = AmpacityTable.US_33CFR183.classesC();
        assertThat(classes).containsExactly(60, 75, 80, 90, 105, 125, 200);
        for (int i = 0; i < printed.length; i++) {
            assertThat(allowedA(gauge + " AWG", AmpacityTable.US_33CFR183, classes.get(i), 30))
                    .contains(printed[i]);
        }
    }

    @ParameterizedTest(
            name = "AC 43.13-1B table 11-9: {0} AWG at 105, 150, 200 C: {1} {2} {3} A, {4} ohm/1000 ft, {5} CM")
    @CsvFileSource(resources = "/conductor/ac43-ampacity.csv", numLinesToSkip = 1)
    void advisoryCircular(String gauge, double a105, double a150, double a200, double ohmPer1000Ft, double mils) {
        assertThat(allowedA(gauge + " AWG", AmpacityTable.AC43_13, 105, 70)).contains(a105);
        assertThat(allowedA(gauge + " AWG", AmpacityTable.AC43_13, 150, 70)).contains(a150);
        assertThat(allowedA(gauge + " AWG", AmpacityTable.AC43_13, 200, 70)).contains(a200);
        ReferenceTable table = AmpacityTable.AC43_13.table();
        List<String> row = table.findRow(gauge).orElseThrow();
        assertThat(table.getNumber(row, "maxOhmPer1000Ft20C")).isEqualTo(ohmPer1000Ft);
        assertThat(table.getNumber(row, "circularMils")).isEqualTo(mils);
    }

    @ParameterizedTest(name = "33 CFR 183.425 Table 5 note 1: engine space, {0} C insulation: x {1}")
    @CsvSource({"60, 0.58", "75, 0.75", "80, 0.78", "90, 0.82", "105, 0.85", "125, 0.89", "200, 1.00"})
    void engineSpaces(int classC, double factor) {
        Ampacity ampacity = Ampacity.find(
                        ConductorSize.parse("14"),
                        AmpacityTable.US_33CFR183,
                        new Ampacity.Conditions(classC, 30, true, 1, false))
                .orElseThrow();
        assertThat(ampacity.allowedA() / ampacity.tableA()).isCloseTo(factor, within(1e-12));
        if (classC < 200) {
            double law = Math.sqrt((classC - 50.0) / (classC - 30.0));
            assertThat(law).as("the square-root law to two figures").isCloseTo(factor, within(0.0065));
        }
    }

    @ParameterizedTest(name = "33 CFR 183.425 Table 5 note 2: {0} wires in a bundle: x {1}")
    @CsvSource({"1, 1", "2, 1", "3, 0.70", "4, 0.60", "6, 0.60", "7, 0.50", "24, 0.50", "25, 0.40", "200, 0.40"})
    void bundles(int conductors, double factor) {
        assertThat(Ampacity.bundleFactor(conductors)).isEqualTo(factor);
        Ampacity.Conditions asked = new Ampacity.Conditions(105, 30, false, conductors, true);
        Ampacity.Conditions notAsked = new Ampacity.Conditions(105, 30, false, conductors, false);
        ConductorSize size = ConductorSize.parse("14");
        assertThat(Ampacity.find(size, AmpacityTable.US_33CFR183, asked).map(Ampacity::allowedA))
                .contains(35 * factor);
        assertThat(Ampacity.find(size, AmpacityTable.US_33CFR183, notAsked).map(Ampacity::allowedA))
                .contains(35.0);
    }

    /** FAA AC 43.13-1B paragraph 11-67, example 2, first part: 47 A in free air, 20,000 ft, bundle of 8. */
    @Test
    void exampleOfTheCircularForAMixedBundle() {
        assertThat(derated(47, 0.91)).isCloseTo(42.77, within(0.005));
        assertThat(derated(47, 0.91, 0.6)).as("printed as 26 A").isCloseTo(25.66, within(0.005));
    }

    /** FAA AC 43.13-1B paragraph 11-69, harness example 1, from memory: sizes 20 and 22 at 60,000 ft. */
    @Test
    void exampleOfTheCircularForAHarness() {
        double size20 = derated(21.5, 0.52, 0.79);
        double size22 = derated(16.2, 0.52, 0.79);
        assertThat(size20).isCloseTo(8.8, within(0.05));
        assertThat(size22).isCloseTo(6.6, within(0.06));
        assertThat((25 * 6.6 + 10 * 8.8) * 0.20).isCloseTo(50.6, within(0.001));
    }

    @Test
    void noCreditIsGivenForAColdAmbient() {
        assertThat(allowedA("14", AmpacityTable.US_33CFR183, 105, -40)).contains(35.0);
        assertThat(allowedA("14", AmpacityTable.AC43_13, 105, 20)).contains(10.0);
    }

    @Test
    void aHotAmbientTakesAwayByTheSquareRootLaw() {
        assertThat(allowedA("14", AmpacityTable.US_33CFR183, 105, 86.25).orElseThrow())
                .as("a quarter of the rise, half of the current")
                .isCloseTo(17.5, within(1e-9));
    }

    @Test
    void anInsulationBetweenTwoColumnsTakesTheLowerOne() {
        assertThat(allowedA("14", AmpacityTable.US_33CFR183, 85, 30)).contains(25.0);
    }

    @ParameterizedTest(name = "{0} takes the row of {1} AWG")
    @CsvSource({"15 AWG, 16", "2.5 mm2, 14", "SAE 14, 16", "ISO 3 mm2, 14", "120 mm2, 4/0"})
    void aConductorNotListedTakesTheNextGaugeWithNoMoreCopper(String size, String gauge) {
        Ampacity ampacity = Ampacity.find(
                        ConductorSize.parse(size), AmpacityTable.US_33CFR183, Ampacity.Conditions.of(105, 30))
                .orElseThrow();
        assertThat(ampacity.gauge()).isEqualTo(gauge);
        assertThat(ampacity.ownRow()).isFalse();
    }

    @Test
    void outsideATableThereIsNoFigure() {
        assertThat(allowedA("20 AWG", AmpacityTable.US_33CFR183, 105, 30)).isEmpty();
        assertThat(allowedA("ISO 0.13 mm2", AmpacityTable.AC43_13, 105, 70)).isEmpty();
    }

    @Test
    void insulationRatedBelowTheFirstColumnIsJudgedByItWithTheSquareRootLaw() {
        assertThat(allowedA("14", AmpacityTable.AC43_13, 80, 71.25).orElseThrow())
                .as("a quarter of the rise of the column, half of its current")
                .isCloseTo(5, within(1e-9));
        assertThat(allowedA("14", AmpacityTable.AC43_13, 80, 30))
                .as("no credit")
                .contains(10.0);
        assertThat(allowedA("14", AmpacityTable.US_33CFR183, 50, 42.5).orElseThrow())
                .isCloseTo(10, within(1e-9));
    }

    @Test
    void aHotEngineSpaceTakesTheFactorOfTheNoteAndThenTheLaw() {
        Ampacity ampacity = Ampacity.find(
                        ConductorSize.parse("14"),
                        AmpacityTable.US_33CFR183,
                        new Ampacity.Conditions(105, 91.25, true, 1, false))
                .orElseThrow();
        assertThat(ampacity.allowedA()).isCloseTo(35 * 0.85 / 2, within(1e-9));
    }

    @Test
    void anEngineSpaceIsAtLeastFiftyDegreesForEveryTable() {
        ConductorSize size = ConductorSize.parse("14");
        Ampacity ampacity = Ampacity.find(
                        size, AmpacityTable.AC43_13, new Ampacity.Conditions(58.75, 30, true, 1, false))
                .orElseThrow();
        assertThat(ampacity.allowedA()).as("10 A, a quarter of the rise").isCloseTo(5, within(1e-9));
    }

    private static Optional<Double> allowedA(String size, AmpacityTable table, double insulationC, double ambientC) {
        return Ampacity.find(ConductorSize.parse(size), table, Ampacity.Conditions.of(insulationC, ambientC))
                .map(Ampacity::allowedA);
    }

    private static double derated(double currentA, double... factors) {
        return Ampacity.derated(
                currentA,
                Arrays.stream(factors)
                        .mapToObj(f -> new Ampacity.Correction(
                                ConductorText.AS_PRINTED.with(), f, Basis.verified("factor", "AC 43.13-1B")))
                        .toList());
    }
}
