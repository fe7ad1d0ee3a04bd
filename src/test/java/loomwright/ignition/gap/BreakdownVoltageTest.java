package loomwright.ignition.gap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.Basis;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The voltage a gap asks for, by published formulas. */
class BreakdownVoltageTest {
    private static GapConditions gap(double mm, double bar, double kelvin) {
        return new GapConditions(mm, bar * 1e5, kelvin - 273.15);
    }

    @ParameterizedTest(name = "{0} bar, {1} K, {2} mm: Paschen; linear; uniform field; SAE 2000-01-0245")
    @CsvFileSource(resources = "/ignition/breakdown-voltage.csv", numLinesToSkip = 1)
    void eachFormulaGivesItsPublishedFigure(
            double bar, double kelvin, double mm, double paschen, double linear, double uniform, double engine) {
        GapConditions gap = gap(mm, bar, kelvin);
        assertThat(BreakdownFormula.PASCHEN.voltageV(gap) / 1e3).isCloseTo(paschen, within(0.005));
        assertThat(BreakdownFormula.LINEAR.voltageV(gap) / 1e3).isCloseTo(linear, within(0.005));
        assertThat(BreakdownFormula.UNIFORM_FIELD.voltageV(gap) / 1e3).isCloseTo(uniform, within(0.005));
        assertThat(BreakdownFormula.ENGINE_CORRELATION.voltageV(gap) / 1e3).isCloseTo(engine, within(0.005));
    }

    @Test
    @DisplayName("0.6 mm in free air: about 2 to 3 kV (abstract of a motor-vehicle technology textbook, ignition)")
    void inFreeAirTheEngineCorrelationIsNotTaken() {
        BreakdownVoltage free = BreakdownVoltage.of(gap(0.6, 1.01325, 293));
        assertThat(free.formula()).isNull();
        assertThat(free.voltageV()).isCloseTo((free.lowestV() + free.highestV()) / 2, within(1e-9));
        assertThat(free.lowestV()).isCloseTo(2940, within(5.0));
        assertThat(free.highestV()).isCloseTo(3330, within(5.0));
        assertThat(free.voltageV()).isBetween(2000.0, 3200.0);
        assertThat(free.withinRange()).isTrue();
        assertThat(BreakdownFormula.ENGINE_CORRELATION.covers(free.gap())).isFalse();
    }

    @Test
    void atCompressionTheMiddleOfAllIsTakenWithTheirSpreadAsUncertainty() {
        BreakdownVoltage compressed = BreakdownVoltage.of(gap(0.9, 12, 600));
        assertThat(compressed.formula()).isNull();
        assertThat(compressed.voltageV()).isCloseTo(16_510, within(5.0));
        assertThat(compressed.lowestV()).isCloseTo(12_850, within(5.0));
        assertThat(compressed.highestV()).isCloseTo(20_170, within(5.0));
    }

    @Test
    void aFormulaWantedOutsideItsRangeIsUsedAndSaidToBeOutside() {
        GapConditions free = gap(0.6, 1.01325, 293);
        BreakdownVoltage wanted = BreakdownVoltage.of(free, BreakdownFormula.ENGINE_CORRELATION);
        assertThat(wanted.withinRange()).isFalse();
        assertThat(wanted.voltageV()).isCloseTo(5440, within(5.0));
    }

    @Test
    void whereNoFormulaIsMeantForTheConditionsOneStillAnswersAndSaysSo() {
        BreakdownVoltage dense = BreakdownVoltage.of(gap(0.6, 200, 400));
        assertThat(dense.withinRange()).isFalse();
        assertThat(dense.voltageV()).isPositive();
    }

    @Test
    void rememberedFormulasAreMarkedAsRemembered() {
        assertThat(BreakdownFormula.ENGINE_CORRELATION.basis().status()).isEqualTo(Basis.Status.FROM_MEMORY);
        assertThat(BreakdownFormula.UNIFORM_FIELD.basis().status()).isEqualTo(Basis.Status.FROM_MEMORY);
    }

    @Property(seed = "20260301")
    void everyFormulaAsksForMoreWithAWiderGapHigherPressureAndColderGas(
            @ForAll @DoubleRange(min = 0.2, max = 2.8) double mm,
            @ForAll @DoubleRange(min = 0.5, max = 60) double bar,
            @ForAll @DoubleRange(min = 250, max = 1200) double kelvin) {
        for (BreakdownFormula formula : BreakdownFormula.values()) {
            double base = formula.voltageV(gap(mm, bar, kelvin));
            assertThat(base).isPositive();
            // Below its minimum Paschen's law falls: with these ends density times gap can come near to it.
            if (formula != BreakdownFormula.PASCHEN || bar >= 1) {
                assertThat(formula.voltageV(gap(mm * 1.05, bar, kelvin))).isGreaterThan(base);
                assertThat(formula.voltageV(gap(mm, bar * 1.05, kelvin))).isGreaterThan(base);
                assertThat(formula.voltageV(gap(mm, bar, kelvin * 1.05))).isLessThan(base);
            }
        }
    }

    @Property(seed = "20260302")
    void densityCountsNotPressure(
            @ForAll @DoubleRange(min = 1, max = 20) double bar, @ForAll @DoubleRange(min = 1, max = 3) double hotter) {
        for (BreakdownFormula formula : BreakdownFormula.values()) {
            double cold = formula.voltageV(gap(0.8, bar, 300));
            double hot = formula.voltageV(gap(0.8, bar * hotter, 300 * hotter));
            assertThat(hot).isCloseTo(cold, within(1e-9 * cold));
        }
    }
}
