package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lengths, values and colours as people write them. One inch is 25.4 mm by definition (ISO 80000-3). */
class L02_QuantitiesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "0.3 m|0.3",
                "0,3m|0.3",
                "30 cm|0.3",
                "300mm|0.3",
                "1 ft|0.3048",
                "2 ft 6|0.762",
                "2 ft 6 in|0.762",
                "4' 6\"|1.3716",
                "18 in|0.4572",
                "9\"|0.2286",
                "5 feet|1.524",
                "2.5 metres|2.5"
            })
    void lengths(String text, double metres) {
        assertThat(Quantities.lengthM(text, "").orElseThrow()).isCloseTo(metres, Offset.offset(1e-12));
    }

    @ParameterizedTest
    @ValueSource(strings = {"long", "2 m 6", "3 kg", "", "1..2 m"})
    void whatIsNoLength(String text) {
        assertThat(Quantities.lengthM(text, "m")).isEqualTo(OptionalDouble.empty());
    }

    @ParameterizedTest
    @CsvSource({
        "12 V 75 Ah,V,12",
        "12 V 75 Ah,Ah,75",
        "12V 45/40W,W,45",
        "1.5 ohm,ohm,1.5",
        "15A,A,15",
        "0.22 uF,uF,0.22",
        "4.7 kohm,ohm,4700",
        "3 x 10 W,W,10"
    })
    void values(String text, String unit, double value) {
        assertThat(Quantities.values(text).in(unit)).hasValue(value);
    }

    @ParameterizedTest
    @ValueSource(strings = {"key 15a", "lighting switch 58R", "relay 87a", "dip switch 56a"})
    void aTerminalIsNoValue(String text) {
        assertThat(Quantities.besideName(text).isEmpty()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "brown,BN",
        "Brown/white,BNWH",
        "white with black tracer,WHBK",
        "RD,RD",
        "GY/BK,GYBK",
        "BNWH,BNWH",
        "purple,VT",
        "light green,GN",
        "bare,''",
        "yelow,YE"
    })
    void colours(String text, String code) {
        assertThat(Colours.read(text, false)).hasValue(code);
    }

    /** BS AU 7: the first letter is the main colour, the second the tracer; LG is one colour. */
    @ParameterizedTest
    @CsvSource({"N,BN", "GN,GNBN", "GY,GNYE", "GLG,GNGN", "UW,BUWH", "BN,BKBN", "P,VT", "RK,RDPK"})
    void britishLetters(String text, String code) {
        assertThat(Colours.read(text, true)).hasValue(code);
    }

    @ParameterizedTest
    @ValueSource(strings = {"N", "P/W", "mauve"})
    void lettersWithoutALegendAreNotGuessed(String text) {
        assertThat(Colours.read(text, false)).isEqualTo(Optional.empty());
    }
}
