package loomwright.ignition.primary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.ignition.primary.CoilData.Feed;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** What a coil makes of its primary current: stored energy, and the voltage that it can raise. */
class SecondaryVoltageTest {
    private static CoilData coil(double turnsRatio, double clampV) {
        return new CoilData(3, 0.008, turnsRatio, clampV, 80e-12, 0.5, Feed.DIRECT);
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/ignition/stored-energy.csv", numLinesToSkip = 1)
    void theStoredEnergyIsThePublishedOne(
            String source, double inductanceH, double currentA, double expectedJ, double toleranceJ) {
        assertThat(SparkEnergy.storedJ(inductanceH, currentA)).as(source).isCloseTo(expectedJ, within(toleranceJ));
    }

    @Test
    @DisplayName("40 mJ, efficiency 0.5, 80 pF: 22.36 kV (follows from the energy of a capacitance)")
    void theEnergyRaisesTheSecondaryCapacitance() {
        assertThat(SecondaryVoltage.of(coil(100, 400), 0.040).availableV()).isCloseTo(22_360, within(5.0));
    }

    @Test
    @DisplayName("primary kick 200 V, 100 to 1: 20 000 V (Army manual TM 9-8000, chapter 15)")
    void theClampTimesTheTurnsRatioIsTheOtherBound() {
        SecondaryVoltage secondary = SecondaryVoltage.of(coil(100, 200), 0.040);
        assertThat(secondary.byClampV()).isCloseTo(20_000, within(1e-9));
        assertThat(secondary.availableV()).isCloseTo(20_000, within(1e-9));
    }

    @Test
    void everyFigureOfACoilOutOfRangeIsNamed() {
        RejectedInput rejected = catchThrowableOfType(
                RejectedInput.class, () -> new CoilData(0, Double.NaN, 5, 9999, 0, 1.5, Feed.DIRECT));
        assertThat(rejected.faults())
                .extracting(InputError::pointer)
                .containsExactly(
                        "/primaryResistanceOhm",
                        "/inductanceH",
                        "/turnsRatio",
                        "/primaryClampV",
                        "/secondaryCapacitanceF",
                        "/efficiencyFraction");
    }

    @Test
    @DisplayName("presets lie in the usual ranges (common practice, no source)")
    void presetsLieInTheUsualRanges() {
        assertThat(CoilPreset.FOR_BALLAST.data().primaryResistanceOhm()).isBetween(1.2, 1.8);
        assertThat(CoilPreset.FOR_DIRECT_FEED.data().primaryResistanceOhm()).isBetween(2.8, 3.6);
        assertThat(CoilPreset.FOR_DIRECT_FEED_6V.data().primaryResistanceOhm()).isBetween(1.0, 1.6);
        assertThat(CoilPreset.HIGH_ENERGY.data().primaryResistanceOhm()).isBetween(0.4, 1.0);
        assertThat(Stream.of(CoilPreset.values()).map(CoilPreset::data)).allSatisfy(coil -> {
            assertThat(coil.turnsRatio()).isBetween(60.0, 150.0);
            assertThat(coil.secondaryCapacitanceF()).isBetween(50e-12, 100e-12);
            assertThat(coil.inductanceH()).isBetween(0.003, 0.012);
        });
    }
}
