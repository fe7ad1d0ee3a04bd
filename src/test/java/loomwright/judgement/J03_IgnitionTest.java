package loomwright.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.answer.Finding;
import loomwright.ignition.primary.EngineHeat;
import loomwright.judgement.ignition.IgnitionMistake;
import loomwright.judgement.ignition.IgnitionMistake.Kind;
import loomwright.judgement.ignition.IgnitionRemedy;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.judgement.ignition.PrimaryLoop;
import loomwright.judgement.ignition.RunningHeat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Coil, ballast, contacts and module: the table of combinations, the steps of a ballast, remedies judged again. */
class J03_IgnitionTest {
    private static final RunningHeat HEAT = EngineHeat.usual(PrimaryLoop.USUAL_DWELL, 1.5, null);

    private static PrimaryLoop points(double nominalV, double coilOhm, double ballastOhm) {
        return new PrimaryLoop(
                nominalV,
                14.2 * nominalV / 12,
                0.05,
                ballastOhm,
                false,
                coilOhm,
                new PrimaryLoop.PrimaryContact(0.15, false, null, null),
                HEAT);
    }

    private static PrimaryLoop module(double coilOhm, double ballastOhm, @Nullable Double limitA) {
        return new PrimaryLoop(
                12,
                14.2,
                0.05,
                ballastOhm,
                false,
                coilOhm,
                new PrimaryLoop.PrimaryContact(1.0, true, limitA, null),
                HEAT);
    }

    private static String worst(PrimaryLoop loop) {
        List<IgnitionMistake> mistakes = IgnitionRule.judge(loop);
        return mistakes.isEmpty()
                ? "right"
                : mistakes.get(0).kind().code() + " " + mistakes.get(0).level();
    }

    /** Table of combinations: common practice; currents and heat by Ohm's law. */
    @ParameterizedTest(name = "{0} V, coil {1} ohm, ballast {2} ohm: {3}")
    @CsvSource({
        "12, 3.0, 0, right",
        "12, 3.4, 0, right",
        "12, 3.0, 1.5, coil-weak WARNING",
        "12, 1.5, 1.5, right",
        "12, 1.5, 0, coil-overheats DANGER",
        "12, 1.5, 0.001, coil-overheats DANGER",
        "12, 1.5, 0.3, ballast-too-small WARNING",
        "12, 1.5, 0.5, ballast-too-small WARNING",
        "12, 1.3, 0, coil-overheats DANGER",
        "6, 1.6, 0, right",
        "12, 0.6, 0, no-current-limit DANGER",
        "24, 10, 0, right",
        "12, 10, 0, coil-weak WARNING"
    })
    void combinationsOnPoints(double nominalV, double coilOhm, double ballastOhm, String expected) {
        assertThat(worst(points(nominalV, coilOhm, ballastOhm))).isEqualTo(expected);
    }

    /**
     * An exponential rise with a time constant far below the dwell: mean of the square I^2 (t - 1.5 L/R) / T, the integral in
     * any book on circuits (OpenStax University Physics vol. 2, section 14.4).
     */
    @ParameterizedTest(name = "{0} ohm, {1} H: {2} W")
    @CsvSource({"2.8, 0.008, 33.2", "1.5, 0.006, 54.8", "3.2, 0.008, 30.0"})
    void theMeanHeatIsThatOfACurrentThatRises(double coilOhm, double inductanceH, double expectedW) {
        double totalOhm = coilOhm + 0.05;
        double closedA = (14.2 - 0.15) / totalOhm;
        double dwellS = 0.6 * 0.0375;
        double byHandW = closedA * closedA * coilOhm * (dwellS - 1.5 * inductanceH / totalOhm) / 0.0375;
        double meanW = EngineHeat.usual(0.6, coilOhm, inductanceH).meanW(points(12, coilOhm, 0));
        assertThat(meanW).isCloseTo(byHandW, within(0.01 * byHandW));
        assertThat(meanW).isCloseTo(expectedW, within(0.02 * expectedW));
    }

    @Property(seed = "1905")
    void theMeanHeatIsLessThanItsShareOfTheHeatWithThePrimaryClosed(
            @ForAll @DoubleRange(min = 0.4, max = 11) double coilOhm,
            @ForAll @DoubleRange(min = 0, max = 3) double ballastOhm) {
        PrimaryLoop loop = points(12, coilOhm, ballastOhm);
        double closedW = loop.runningA() * loop.runningA() * coilOhm;
        assertThat(HEAT.meanW(loop)).isBetween(0.0, PrimaryLoop.USUAL_DWELL * closedW);
    }

    /** 12.6 V squared over 3.05 ohm squared times 3 ohm are 51 W: sound, but not to be left on. */
    @Test
    void aSoundCoilIsNotToBeLeftOn() {
        assertThat(IgnitionRule.level(points(12, 3, 0))).isEqualTo(Level.FITS);
        assertThat(IgnitionRule.findings(points(12, 3, 0)))
                .extracting(Finding::code)
                .containsExactly("key-not-to-be-left-on");
        assertThat(IgnitionRule.findings(points(12, 1.5, 1.5))).isEmpty();
        assertThat(IgnitionRule.findings(module(3, 0, null))).isEmpty();
    }

    @Test
    void modules() {
        assertThat(worst(module(0.6, 0, 7.0))).isEqualTo("right");
        assertThat(worst(module(0.6, 1.5, 7.0))).isEqualTo("limit-not-reached WARNING");
        assertThat(worst(module(0.6, 0, null))).isEqualTo("no-current-limit DANGER");
        assertThat(worst(module(3.2, 0, 6.0))).isEqualTo("coil-of-little-use NOTE");
    }

    @Test
    void aBypassLeftOnIsCalledThatAndFreed() {
        PrimaryLoop loop = new PrimaryLoop(
                12, 14.2, 0.05, 1.5, true, 1.5, new PrimaryLoop.PrimaryContact(0.15, false, null, null), HEAT);
        IgnitionMistake mistake = IgnitionRule.judge(loop).get(0);
        assertThat(mistake.kind()).isEqualTo(Kind.BYPASS_LEFT_ON);
        assertThat(mistake.level()).isEqualTo(Level.DANGER);
        assertThat(mistake.value()).isBetween(8.9, 9.2);
        assertThat(mistake.remedies())
                .extracting(IgnitionRemedy::kind)
                .containsExactly(IgnitionRemedy.Kind.FREE_BYPASS);
    }

    /** 1.5 ohm: 95 W at rest and 9.0 A running without ballast, 67 and 55 W with 0.3 and 0.5 ohm, 25 W with 1.5 ohm. */
    @ParameterizedTest(name = "ballast {0} ohm: {1} W, {2} A")
    @CsvSource({"0.001, 96, 9.0", "0.3, 67, 7.6", "0.5, 55, 6.8", "1.5, 25, 4.6"})
    void heatAndCurrent(double ballastOhm, double heatW, double currentA) {
        PrimaryLoop loop = points(12, 1.5, ballastOhm);
        assertThat(loop.restHeatW()).isBetween(heatW - 2, heatW + 2);
        assertThat(loop.runningA()).isBetween(currentA - 0.1, currentA + 0.1);
    }

    @Property(seed = "1903")
    void moreBallastNeverMakesItHotter(
            @ForAll @DoubleRange(min = 0.4, max = 2.1) double coilOhm,
            @ForAll @DoubleRange(min = 0, max = 2) double ballastOhm) {
        PrimaryLoop less = points(12, coilOhm, ballastOhm);
        PrimaryLoop more = points(12, coilOhm, ballastOhm + 0.2);
        assertThat(heat(more)).isLessThanOrEqualTo(heat(less));
    }

    /** The worst level of what is said about too much current; too much ballast is a weak spark instead. */
    private static Level heat(PrimaryLoop loop) {
        return IgnitionRule.judge(loop).stream()
                .filter(mistake -> mistake.kind() != Kind.BALLAST_TOO_LARGE && mistake.kind() != Kind.COIL_WEAK)
                .map(IgnitionMistake::level)
                .reduce(Level.FITS, Level::worse);
    }

    /** Every remedy is applied and judged again: nothing as serious is left. Every danger has one. */
    @Property(seed = "1904", tries = 2000)
    void remediesLeaveNothingAsSerious(
            @ForAll @DoubleRange(min = 0.4, max = 11) double coilOhm,
            @ForAll @DoubleRange(min = 0, max = 2) double ballastOhm,
            @ForAll boolean bypassed,
            @ForAll boolean module) {
        PrimaryLoop loop = new PrimaryLoop(
                12,
                14.2,
                0.05,
                ballastOhm,
                bypassed,
                coilOhm,
                new PrimaryLoop.PrimaryContact(module ? 1.0 : 0.15, module, null, null),
                HEAT);
        for (IgnitionMistake mistake : IgnitionRule.judge(loop)) {
            if (mistake.kind() != Kind.COIL_OF_LITTLE_USE && mistake.kind() != Kind.BYPASS_LEFT_ON) {
                assertThat(mistake.remedies()).as(mistake.kind().code()).isNotEmpty();
            }
            mistake.remedies()
                    .forEach(remedy ->
                            assertThat(IgnitionRule.level(remedy.cured())).isLessThan(mistake.level()));
        }
    }

    /** Of contacts the remedy is never a relay; there is none among the kinds. */
    @Test
    void noRemedyIsARelay() {
        assertThat(IgnitionRemedy.Kind.values()).extracting(Enum::name).noneMatch(name -> name.contains("RELAY"));
    }
}
