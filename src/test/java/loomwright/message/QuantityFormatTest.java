package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers for people: three digits, the resolution of a meter. */
class QuantityFormatTest {
    private static final Catalogue ENGLISH = Catalogue.english();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12.5678|V|12.6 V",
                "0.457|V|0.46 V",
                "0.0831|V|0.08 V",
                "0.0003|V|0 V",
                "-0.0003|V|0 V",
                "-12.04|V|-12 V",
                "12.04|V|12 V",
                "25300|V|25.3 kV",
                "9996|V|10 kV",
                "9990|V|9,990 V",
                "3.4|A|3.4 A",
                "168.3|A|168 A",
                "0.0213|A|21 mA",
                "0.0004|A|0 A",
                "0.0996|A|0.1 A",
                "84.96|Ω|85 Ω",
                "0.0123|Ω|12.3 mΩ",
                "5500|Ω|5,500 Ω",
                "12000|Ω|12 kΩ",
                "0.05|J|50 mJ",
                "0.0012|s|1.2 ms",
                "0.35|s|0.35 s",
                "3600|s|3,600 s",
                "5432|rpm|5,430 rpm",
                "104.6|°C|105 °C",
                "28.3|%|28 %",
                "2.54|%|2.5 %",
                "1.2556||1.26",
                "0.006627|Ω per m|6.63 mΩ/m",
                "2.651|W per m|2.65 W/m",
                "2.2e-7|F|0.22 µF",
                "2.2e-6|F|2.2 µF"
            })
    void aQuantityIsWrittenAsAMeterShowsIt(double value, String unit, String text) {
        String symbol = unit == null ? "" : unit;
        assertThat(ENGLISH.quantity(value, symbol)).isEqualTo(text);
    }

    @Property
    void noNumberHasMoreThanThreeSignificantDigits(@ForAll @DoubleRange(min = -1e9, max = 1e9) double value) {
        for (String unit : new String[] {"V", "A", "Ω", "W", "J", "s", "m", "mm²", "°C", "rpm", "%", ""}) {
            String text = ENGLISH.quantity(value, unit);
            String digits = text.replaceAll("[^0-9]", "").replaceAll("^0+", "").replaceAll("0+$", "");
            assertThat(digits.length()).as(text).isLessThanOrEqualTo(3);
            assertThat(text).doesNotContain("E").doesNotStartWith("-0 ");
        }
    }

    @Property
    void aNumberOfSomeSizeIsWithinHalfAPerCentOfWhatIsWritten(@ForAll @DoubleRange(min = 1, max = 9_000) double value) {
        String text = ENGLISH.quantity(value, "V");
        double written = Double.parseDouble(text.replace(" V", "").replace(",", ""));
        assertThat(written).isBetween(value * 0.995 - 1e-9, value * 1.005 + 1e-9);
    }
}
