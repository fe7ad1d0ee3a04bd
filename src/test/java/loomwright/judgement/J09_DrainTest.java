package loomwright.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What flows with the key off. */
class J09_DrainTest {
    /** 0.4 of 60 Ah is 24 Ah (maker's bulletin on parasitic drain: 20 to 30 Ah). */
    @ParameterizedTest(name = "60 Ah, {0} A: {1} h")
    @DisplayName("60 Ah: 50 mA 480 h, 1 A 24 h, 4 A 6 h, 10 A 2 h")
    @CsvSource({"0.045, 533", "0.05, 480", "1, 24", "4, 6", "10, 2"})
    void hoursUntilItNoLongerStarts(double currentA, double hours) {
        assertThat(DrainRule.hours(currentA, 60)).isCloseTo(hours, within(0.1 * hours));
    }

    @ParameterizedTest(name = "{0} A, {1} A in a winding: {2}")
    @CsvSource({"0.01, 0, FITS", "0.045, 0, NOTE", "0.3, 0, WARNING", "4, 4, DANGER"})
    void levels(double currentA, double windingA, Level level) {
        assertThat(DrainRule.judge(currentA, windingA).level()).isEqualTo(level);
    }

    @Property(seed = "1920")
    void moreDrainIsFlatSooner(@ForAll @DoubleRange(min = 0.01, max = 20) double currentA) {
        assertThat(DrainRule.hours(1.1 * currentA, 60)).isLessThan(DrainRule.hours(currentA, 60));
    }
}
