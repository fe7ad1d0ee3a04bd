package loomwright.service.form;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers of everyday size are written digit by digit. */
class PlainDecimalTest {
    private static String text(double value) {
        char[] text = new char[PlainDecimal.LONGEST];
        int start = PlainDecimal.write(value, text);
        return start < 0 ? "" : new String(text, start, text.length - start);
    }

    @ParameterizedTest
    @CsvSource({
        "0.30000000000000004, 0.3",
        "2.6666666666666665, 2.666666667",
        "-1234.5678901234, -1234.56789",
        "9.99999999996, 10",
        "-1, -1",
        "1500, 1500",
        "0.00123456789012, 0.00123456789",
        "0.0099999999999999, 0.01",
        "12345678.25, 12345678.25",
        "9999999999, 9999999999",
        "9999999999.7, 10000000000"
    })
    void aNumberIsWrittenRounded(double value, String written) {
        assertThat(text(value)).isEqualTo(written);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.0, 1e-4, 1e10, -2e300, Double.NaN, Double.POSITIVE_INFINITY})
    void othersAreLeftToTheExponent(double value) {
        assertThat(text(value)).isEmpty();
    }

    @Property(seed = "20261126", tries = 3_000)
    void whatIsWrittenReadsBackAsTheRoundedNumber(@ForAll("values") double value) {
        assertThat(Double.parseDouble(text(value))).isEqualTo(SignificantDigits.round(value));
    }

    @Provide
    static Arbitrary<Double> values() {
        return Arbitraries.longs()
                .between(-9_999_999_999_999L, 9_999_999_999_999L)
                .flatMap(mantissa ->
                        Arbitraries.integers().between(-15, -3).map(power -> mantissa * Math.pow(10, power)))
                .filter(value -> Math.abs(value) >= 1e-3);
    }
}
