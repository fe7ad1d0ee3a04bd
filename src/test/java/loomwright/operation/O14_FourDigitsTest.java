package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 14: figures of the working have four significant digits, as the format string of the library gives them. */
class O14_FourDigitsTest {
    private static String formatted(double figure) {
        return String.format(Locale.ROOT, "%.4g", figure);
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {
                0,
                -0.0,
                12.6,
                -12.6,
                0.01,
                9.9995,
                9.99949,
                99.995,
                999.94,
                999.95,
                999.96,
                0.001,
                0.00099996,
                0.0625,
                1000,
                12345,
                1e7,
                1e-7,
                4.9e-324
            })
    void atTheEdges(double figure) {
        assertThat(FourDigits.of(figure)).isEqualTo(formatted(figure));
    }

    @Property(seed = "141", tries = 2000)
    void whateverTheFigure(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        double figure = random.nextGaussian() * Math.pow(10, random.nextInt(9) - 4);
        double cut = Math.round(figure * 1e5) / 1e5;
        assertThat(FourDigits.of(figure)).isEqualTo(formatted(figure));
        assertThat(FourDigits.of(cut)).isEqualTo(formatted(cut));
    }
}
