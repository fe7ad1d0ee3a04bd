package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.answer.Basis;
import loomwright.answer.RejectedInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** All that is known of a size: figures at a temperature, neighbours in the other systems, printed ampacities. */
class ConductorsTest {
    @Test
    void fourteenGaugeInFull() {
        var figures = describe("14", 20);
        assertThat(figures.section().areaMm2()).isCloseTo(2.0809, within(1e-4));
        assertThat(figures.section().circularMils()).isCloseTo(4106.7, within(0.1));
        assertThat(figures.section().diameterMm()).isCloseTo(1.6277, within(1e-4));
        assertThat(figures.resistance().ohmPer1000Ft()).isCloseTo(2.5254, within(1e-4));
        assertThat(figures.resistance().tinnedOhmPerM()).isNull();
        assertThat(figures.neighbours())
                .contains(
                        new Conductors.Neighbour(SizeSystem.METRIC_IEC60228, "1.5 mm2", "2.5 mm2", "2.5 mm2"),
                        new Conductors.Neighbour(SizeSystem.METRIC_ISO6722, "ISO 2 mm2", "ISO 2.5 mm2", "ISO 2 mm2"),
                        new Conductors.Neighbour(SizeSystem.SAE, "SAE 14", "SAE 12", "SAE 14"));
    }

    @ParameterizedTest(name = "IEC 60228 class 5, tinned: {0} mm2, {2} ohm/km at 20 C")
    @CsvFileSource(resources = "/conductor/iec60228-class5.csv", numLinesToSkip = 1)
    void tinnedConductors(String areaMm2, double plain, double tinnedOhmPerKm) {
        Double tinned = describe(areaMm2 + " mm2", 20).resistance().tinnedOhmPerM();
        assertThat(Objects.requireNonNull(tinned) * 1000).isCloseTo(tinnedOhmPerKm, within(1e-9));
    }

    @Test
    void tinnedCopperWarmsAsPlainDoes() {
        var warm = describe("2.5 mm2", 75).resistance();
        var cold = describe("2.5 mm2", 20).resistance();
        assertThat(Objects.requireNonNull(warm.tinnedOhmPerM()) / Objects.requireNonNull(cold.tinnedOhmPerM()))
                .isCloseTo(warm.ohmPerM() / cold.ohmPerM(), within(1e-12))
                .isCloseTo(1 + 0.00393 * 55, within(1e-12));
    }

    @Test
    void whereItsFiguresComeFromIsSaid() {
        var answer = Conductors.describe(ConductorSize.parse("10 AWG"), 20);
        assertThat(answer.basis())
                .extracting(Basis::source)
                .anyMatch(source -> source.contains("title 33, section 183.425"))
                .anyMatch(source -> source.contains("AC 43.13-1B"))
                .doesNotHaveDuplicates();
        assertThat(answer.working()).hasSize(3);
    }

    @Test
    void atTheEndsOfASystemANeighbourIsMissing() {
        assertThat(describe("4/0", 20).neighbours())
                .contains(new Conductors.Neighbour(SizeSystem.SAE, "SAE 4/0", null, "SAE 4/0"));
        assertThat(describe("24 AWG", 20).neighbours())
                .contains(new Conductors.Neighbour(SizeSystem.SAE, null, "SAE 20", "SAE 20"));
    }

    @ParameterizedTest(name = "{0} at {1} C: {2} x the resistance at 20 C")
    @CsvSource({"20, 1", "100, 1.3144", "-40, 0.7642"})
    void resistanceAtTemperature(double temperatureC, double ratio) {
        assertThat(describe("2.5 mm2", temperatureC).resistance().ohmPerM()).isCloseTo(0.00798 * ratio, within(1e-9));
    }

    @Test
    void theAmpacitiesAreThePrintedOnes() {
        List<Ampacity> ampacities = describe("10 AWG", 20).ampacities();
        assertThat(ampacities)
                .extracting(Ampacity::allowedA)
                .containsExactly(40.0, 40.0, 50.0, 55.0, 60.0, 70.0, 70.0, 17.0, 26.0, 32.0);
        assertThat(ampacities).allMatch(a -> a.corrections().isEmpty());
    }

    @ParameterizedTest
    @EnumSource(SizeSystem.class)
    void everySizeCanBeDescribed(SizeSystem system) {
        for (ConductorSize size : ConductorSize.list(system)) {
            var answer = Conductors.describe(size, 20);
            // The sizes of the other systems; wire named by its strands has no sizes of its own for others.
            assertThat(answer.result().neighbours()).hasSize(system == SizeSystem.STRANDS ? 4 : 3);
            assertThat(answer.basis()).contains(size.basis());
        }
    }

    @Test
    void impossibleTemperaturesAreRefused() {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> describe("14", 1000));
        assertThat(rejected.faults().get(0).pointer()).isEqualTo("/temperatureC");
    }

    private static Conductors.Description describe(String size, double temperatureC) {
        return Conductors.describe(ConductorSize.parse(size), temperatureC).result();
    }
}
