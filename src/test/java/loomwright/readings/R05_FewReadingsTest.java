package loomwright.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Few readings: ten at most, of the circuits in question, as the whole sheet has them and in its order. */
class R05_FewReadingsTest {
    private static List<Reading> few(String example, List<String> loads) {
        return ReadingsAnswer.ofFew(
                        ReadingsQuestion.of(Plans.example(example)),
                        loads,
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result()
                .readings();
    }

    private static List<String> examples() {
        return Plans.exampleNames();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void tenAtMostAsTheWholeSheetHasThem(String example) {
        List<Reading> few = few(example, List.of());
        List<Reading> whole = Sheets.of(Plans.example(example)).readings();

        assertThat(few).hasSizeBetween(3, FewReadings.MOST);
        assertThat(few).extracting(Reading::number).startsWith(1, 2, 3).isSorted();
        assertThat(few.get(0).purpose()).isEqualTo(Purpose.SUPPLY_BRIDGED);
        assertThat(whole)
                .usingRecursiveFieldByFieldElementComparatorIgnoringFields("number")
                .containsSubsequence(few);
    }

    @Test
    void onlyTheCircuitsAskedForWithThePointsThatHalveThem() {
        List<Reading> few = few("sandpiper-as-built", List.of("coil"));

        assertThat(few.stream().map(Reading::circuit).filter(circuit -> circuit != null))
                .isNotEmpty()
                .containsOnly("coil");
        assertThat(few).extracting(Reading::purpose).contains(Purpose.LOAD, Purpose.HALF_SPLIT);
    }
}
