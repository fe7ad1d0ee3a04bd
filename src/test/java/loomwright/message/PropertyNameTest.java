package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names of the contract in words, with their units. */
class PropertyNameTest {
    @ParameterizedTest(name = "{0} is {1} in {2}")
    @CsvSource({
        "pullInV, pull in, V",
        "resistanceOhm, resistance, Ω",
        "areaMm2, area, mm²",
        "widthMm, width, mm",
        "lengthM, length, m",
        "dwellMs, dwell, ms",
        "inductanceMh, inductance, mH",
        "capacitanceUf, capacitance, µF",
        "temperatureC, temperature, °C",
        "tolerancePercent, tolerance, %",
        "onderdonk10sA, onderdonk10s, A"
    })
    void aNameEndsInTheUnitOfItsValue(String name, String words, String unit) {
        assertThat(PropertyName.of(name)).isEqualTo(new PropertyName(words, unit));
    }

    @ParameterizedTest(name = "{0} is {1} in {2}")
    @CsvSource({
        "heatWPerM, heat, W per m",
        "tinnedOhmPerM, tinned, Ω per m",
        "ohmPer1000Ft, '', Ω per 1000 ft",
        "ballastThermalResistanceKPerW, ballast thermal resistance, K per W",
        "ballastCoefficientPerK, ballast coefficient, per K"
    })
    void aUnitMayBeCountedByAnother(String name, String words, String unit) {
        assertThat(PropertyName.of(name)).isEqualTo(new PropertyName(words, unit));
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "turnsRatio, turns ratio",
        "bundleCount, bundle count",
        "from, from",
        "a, a",
        "conductsWhenStopped, conducts when stopped"
    })
    void aNameWithoutAUnitIsWordsAlone(String name, String words) {
        assertThat(PropertyName.of(name)).isEqualTo(new PropertyName(words, null));
    }

    @ParameterizedTest(name = "{0} is headed {1}")
    @CsvSource(
            delimiter = ';',
            value = {"averageCoilV; average coil, V", "ohmPerM; Ω per m", "state; state"})
    void aColumnIsHeadedByWordsAndUnit(String name, String heading) {
        assertThat(PropertyName.of(name).heading()).isEqualTo(heading);
    }
}
