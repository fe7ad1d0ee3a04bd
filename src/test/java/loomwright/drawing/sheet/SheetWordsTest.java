package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures as they stand on paper. */
class SheetWordsTest {
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
        assertThat(SheetWords.figure(value)).isEqualTo(written);
    }

    @ParameterizedTest
    @CsvSource({"12, 12", "12.0, 12", "6.5, 6.5", "24, 24", "0.001, 0.001"})
    void aNumberIsWrittenAsItWasGiven(double value, String written) {
        assertThat(SheetWords.number(value)).isEqualTo(written);
    }
}
