package loomwright.service.form;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers leave with ten significant digits. */
class SignificantDigitsTest {
    @ParameterizedTest
    @CsvSource({
        "0.30000000000000004, 0.3",
        "2.6666666666666665, 2.666666667",
        "-1234.5678901234, -1234.56789",
        "12345678901.9, 12345678900",
        "9.99999999996, 10",
        "1e-320, 1e-320",
        "1.23456789012e200, 1.23456789e200"
    })
    void aNumberIsRounded(double value, double rounded) {
        assertThat(SignificantDigits.round(value)).isEqualTo(rounded);
    }

    @Test
    void minusZeroIsZero() {
        assertThat(Double.doubleToRawLongBits(SignificantDigits.round(-0.0))).isZero();
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void noNumberAtAllIsAFaultOfOurs(double value) {
        assertThatThrownBy(() -> SignificantDigits.round(value)).isInstanceOf(IllegalArgumentException.class);
    }

    @Property(seed = "20261125", tries = 20_000)
    void theFastWayAgreesWithExactArithmetic(@ForAll("doubles") double value) {
        BigDecimal exact = new BigDecimal(value);
        BigDecimal nearest = exact.round(new MathContext(SignificantDigits.DIGITS, RoundingMode.HALF_EVEN));
        double rounded = SignificantDigits.round(value);
        if (rounded != nearest.doubleValue()) {
            // Only next to a tie may it go the other way.
            BigDecimal digit = nearest.ulp();
            BigDecimal offTie = exact.subtract(nearest).abs().subtract(digit.multiply(new BigDecimal("0.5")));
            assertThat(offTie.abs()).isLessThan(digit.multiply(new BigDecimal("1e-5")));
            assertThat(new BigDecimal(rounded).subtract(nearest).abs())
                    .isLessThan(digit.multiply(new BigDecimal("1.001")));
        }
    }

    @Provide
    static Arbitrary<Double> doubles() {
        Arbitrary<Double> anyBits =
                Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite);
        Arbitrary<Double> usual = Arbitraries.longs()
                .between(-1_000_000_000_000_000L, 1_000_000_000_000_000L)
                .flatMap(mantissa ->
                        Arbitraries.integers().between(-20, 5).map(power -> mantissa * Math.pow(10, power)));
        return Arbitraries.oneOf(anyBits, usual);
    }
}
