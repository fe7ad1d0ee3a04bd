package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.RejectedInput;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What melts or overheats a wire: Onderdonk, Preece, fusible links, the adiabatic limit, the time constant. */
class FusingTest {
    private static final double MM2_PER_CM = Math.PI / 4 * 0.0254 * 0.0254;

    /** Onderdonk's equation: 16 AWG taken as 2581 CM, 5 s, 25 C: 168.9 A; a posted 178 A has 234 - 25 for 234 + 25. */
    @Test
    void onderdonk() {
        assertThat(FusingCurrent.onderdonkA(2581 * MM2_PER_CM, 5, 25)).isCloseTo(168.9, within(0.05));
    }

    @ParameterizedTest(name = "Preece''s equation, copper, {0} in: {1} A")
    @CsvSource({"0.0524, 122.9", "0.0508, 117.3"})
    void preece(double diameterIn, double currentA) {
        assertThat(FusingCurrent.preeceA(diameterIn * 25.4)).isCloseTo(currentA, within(0.06));
    }

    /** 10244 / 25.4^1.5 = 80.0 for a diameter in mm. */
    @Test
    void preeceInMillimetres() {
        assertThat(FusingCurrent.preeceA(1)).isCloseTo(80.0, within(0.05));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.009, 101})
    void preeceIsForWires(double diameterMm) {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> FusingCurrent.preeceA(diameterMm));
        assertThat(rejected.faults().get(0).pointer()).isEqualTo("/diameterMm");
    }

    /** IEC 60949: I^2 t = K^2 S^2 ln((limit + beta) / (start + beta)), K = 226, beta = 234.5 C for copper (constants from memory). */
    @ParameterizedTest(name = "{0} mm2 bears {1} A for {2} s, one go of the starter: {3}")
    @CsvSource({"25, 300, 102.21, true", "10, 220, 30.41, true", "10, 222, 29.87, false"})
    void crankingHeatsTheWholeWire(double areaMm2, double currentA, double timeS, boolean bears) {
        ConductorSize size = ConductorSize.parse(areaMm2 + " mm2");
        double time = CrankingHeat.timeS(size, currentA, 20, 105);
        assertThat(time).isCloseTo(timeS, Percentage.withPercentage(0.1));
        assertThat(CrankingHeat.bears(time)).isEqualTo(bears);
        assertThat(CrankingHeat.bears(CrankingHeat.GO_S)).isTrue();
    }

    @Test
    void outsideTheShortTimesOnderdonkIsRefused() {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> FusingCurrent.onderdonkA(1, 11, 25));
        assertThat(rejected.faults().get(0).pointer()).isEqualTo("/timeS");
    }

    @ParameterizedTest(name = "trade practice, four numbers smaller: {0} takes a link of {1}")
    @CsvFileSource(resources = "/conductor/fusible-links.csv", numLinesToSkip = 1)
    void fusibleLinks(String wire, String link) {
        LinkRating found = LinkRating.find(ConductorSize.parse(wire), 25).orElseThrow();
        assertThat(found.size()).isEqualTo(link);
        assertThat(found.areaRatio()).isCloseTo(0.4, within(0.01));
        assertThat(found.minLengthM()).isEqualTo(0.15);
        assertThat(found.maxLengthM()).isEqualTo(0.23);
    }

    @ParameterizedTest(name = "{0} takes a link of {1}")
    @CsvSource({"20 AWG, 24 AWG", "1/0 AWG, 4 AWG", "SAE 14, SAE 18", "2.5 mm2, 0.75 mm2", "ISO 3 mm2, ISO 1 mm2"})
    void linksOfOtherSizes(String wire, String link) {
        assertThat(LinkRating.find(ConductorSize.parse(wire), 25).map(LinkRating::size))
                .contains(link);
    }

    @Test
    void theThinnestWiresHaveNoLink() {
        assertThat(LinkRating.find(ConductorSize.parse("21 AWG"), 25)).isEmpty();
        assertThat(LinkRating.find(ConductorSize.parse("SAE 18"), 25)).isEmpty();
    }

    /** IEC 60364-4-43 table 43A, from memory: k = 115 for copper in PVC, 70 to 160 C; 143 from 90 to 250 C. */
    @ParameterizedTest(name = "IEC 60364-4-43: k = {2} A sqrt(s)/mm2 from {0} to {1} C")
    @CsvSource({"70, 160, 115", "90, 250, 143"})
    void adiabaticConstants(double startC, double limitC, double k) {
        assertThat(Math.sqrt(AdiabaticLimit.timeS(1, 1, startC, limitC))).isCloseTo(k, within(0.7));
    }

    /** Second method: heat the copper in small steps, c dT = I^2 rho(T) / S^2 dt. */
    @Property(seed = "60949", tries = 50)
    void theAdiabaticTimeIsWhatStepByStepHeatingGives(
            @ForAll @DoubleRange(min = 0.2, max = 100) double areaMm2,
            @ForAll @DoubleRange(min = 1, max = 1000) double currentA,
            @ForAll @DoubleRange(min = -20, max = 100) double startC,
            @ForAll @DoubleRange(min = 10, max = 150) double riseK) {
        int steps = 2000;
        double timeS = 0;
        for (int i = 0; i < steps; i++) {
            double temperatureC = startC + riseK * (i + 0.5) / steps;
            double ohmPerMm = 17.241e-6 * (234.5 + temperatureC) / 254.5 / areaMm2;
            timeS += 3.45e-3 * areaMm2 * (riseK / steps) / (currentA * currentA * ohmPerMm);
        }
        assertThat(AdiabaticLimit.timeS(areaMm2, currentA, startC, startC + riseK))
                .as("K = 226 is rounded")
                .isCloseTo(timeS, within(0.005 * timeS));
    }

    /** Second method: C dT/dt = P - G (T - Tambient) in small steps. */
    @Property(seed = "1", tries = 50)
    void theTimeWithHeatLossIsWhatStepByStepHeatingGives(
            @ForAll @DoubleRange(min = 1.2, max = 8) double loadFraction,
            @ForAll @DoubleRange(min = 1, max = 300) double timeConstantS) {
        double endC = 30 + 75 * loadFraction * loadFraction;
        double temperatureC = 40;
        double stepS = timeConstantS / 20000;
        double timeS = 0;
        while (temperatureC < 105) {
            temperatureC += (endC - temperatureC) / timeConstantS * stepS;
            timeS += stepS;
        }
        assertThat(WireHeating.timeToLimitS(40, 105, endC, timeConstantS))
                .isCloseTo(timeS, within(2 * stepS + 0.001 * timeS));
    }

    @Test
    void withinTheAmpacityTheLimitIsNeverReached() {
        assertThat(WireHeating.timeToLimitS(30, 105, 105, 40)).isInfinite();
        assertThat(WireHeating.timeToLimitS(106, 105, 300, 40)).isZero();
    }
}
