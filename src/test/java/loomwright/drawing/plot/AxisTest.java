package loomwright.drawing.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Divisions of an axis: 1 equal steps, 2 equal factors, 3 how they are written. */
class AxisTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0.36, 0.1, 0.4",
        "0, 10, 2, 10",
        "200, 8000, 2000, 8000",
        "0, 3.96, 1, 4",
        "0, 0.00031, 0.00005, 0.00035",
        "-3, 11, 2, 12",
        "5, 5, 1, 10"
    })
    void stepsAreOneTwoOrFive(double from, double to, double step, double max) {
        Axis axis = Axis.linear("x", from, to);
        assertThat(axis.ticks().get(1) - axis.ticks().get(0)).isCloseTo(step, within(1e-12));
        assertThat(axis.max()).isEqualTo(max);
        assertThat(axis.min()).isLessThanOrEqualTo(from);
    }

    /** The ends are seen, the ends are divisions, and there are neither too few nor too many. */
    @Property(seed = "20260503")
    void everyRangeHasReadableDivisions(
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double from,
            @ForAll @DoubleRange(min = 1, max = 10) double mantissa,
            @ForAll @IntRange(min = -4, max = 6) int decade) {
        double span = mantissa * Math.pow(10, decade);
        Axis axis = Axis.linear("x", from, from + span);
        assertThat(axis.min()).isLessThanOrEqualTo(from + 1e-6 * span);
        assertThat(axis.max()).isGreaterThanOrEqualTo(from + span - 1e-6 * span);
        assertThat(axis.ticks()).hasSizeBetween(3, 10).isSorted();
        assertThat(axis.ticks().get(0)).isEqualTo(axis.min());
        assertThat(axis.fraction(axis.max())).isEqualTo(1);
    }

    @Test
    void manyDecadesAreDividedAtPowersOfTen() {
        Axis axis = Axis.logarithmic("s", 0.0012, 10_000);
        assertThat(axis.ticks()).containsExactly(0.001, 0.01, 0.1, 1.0, 10.0, 100.0, 1000.0, 10_000.0);
        assertThat(axis.between()).contains(0.002, 0.9, 9000.0).doesNotContain(0.1);
        assertThat(axis.fraction(1)).isCloseTo(3.0 / 7, within(1e-12));
    }

    @Test
    void fewDecadesAreDividedAtTwoAndFiveAsWell() {
        assertThat(Axis.logarithmic("A", 8, 400).ticks()).containsExactly(5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0);
    }

    @Property(seed = "20260504")
    void everyLogarithmicRangeIsCovered(
            @ForAll @DoubleRange(min = 1, max = 10) double mantissa,
            @ForAll @IntRange(min = -5, max = 4) int decade,
            @ForAll @DoubleRange(min = 1.01, max = 1e6) double factor) {
        double from = mantissa * Math.pow(10, decade);
        Axis axis = Axis.logarithmic("x", from, from * factor);
        assertThat(axis.min()).isLessThanOrEqualTo(from * (1 + 1e-9));
        assertThat(axis.max()).isGreaterThanOrEqualTo(from * factor * (1 - 1e-9));
        assertThat(axis.ticks())
                .hasSizeBetween(2, 14)
                .isSorted()
                .doesNotHaveDuplicates()
                .noneMatch(axis.between()::contains);
    }

    @Test
    void ticksAreWrittenWithoutExponentAndNeedlessZeros() {
        assertThat(List.of(0.1, 2.0, 10_000.0, 0.001, 0.0))
                .map(Axis::text)
                .containsExactly("0.1", "2", "10000", "0.001", "0");
    }

    @Test
    void linesAtTheEndsAreNotHiddenByTheFrame() {
        Axis axis = Axis.logarithmicAround("A", 10, 200);
        assertThat(axis.fraction(10)).isGreaterThan(0.02);
        assertThat(axis.fraction(200)).isLessThan(0.98);
    }
}
