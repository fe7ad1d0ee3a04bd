package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures and names as they stand on paper. */
class WordsTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "0.0049, 0",
        "-0.004, 0",
        "0.371, 0.37",
        "8.285, 8.29",
        "12.56, 12.6",
        "147.3, 147",
        "-10.04, -10.0"
    })
    void aFigureHasAsManyDigitsAsAMeterShows(double value, String written) {
        assertThat(Words.figure(value)).isEqualTo(written);
    }

    @ParameterizedTest
    @CsvSource({"12, 12", "12.0, 12", "6.5, 6.5", "24, 24", "0.001, 0.001"})
    void aNumberIsWrittenAsItWasGiven(double value, String written) {
        assertThat(Words.number(value)).isEqualTo(written);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    coilResistanceOhm 85, pullInV 8, ratingA 30 | coil resistance 85 Ω, pull in 8 V, rating 30 A
                    ratedV 12, ratedW 21                        | rated 12 V, rated 21 W
                    capacitanceUf 0.22                          | capacitance 0.22 µF
                    widthMm 6.3, form blade                     | width 6.3 mm, form blade
                    size 14 AWG                                 | size 14 AWG
                    """)
    void dataAreSaidInWordsWithUnits(String data, String said) {
        assertThat(Words.data(data)).isEqualTo(said);
    }
}
