package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.readings.ReadingsAnswer;
import loomwright.readings.ReadingsQuestion;
import loomwright.readings.ReadingsSheet;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The few readings of the bench sheet: ten at most, of the circuits in question, in the order of the whole sheet. */
class BenchReadingsTest {
    private static ReadingsSheet sheet(String example) {
        return ReadingsAnswer.of(
                        ReadingsQuestion.of(Plans.example(example)), NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
    }

    private static List<String> examples() {
        return Plans.exampleNames();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void tenAtMostInTheOrderOfTheSheet(String example) {
        List<Reading> few = BenchReadings.of(sheet(example), List.of());

        assertThat(few)
                .hasSizeBetween(3, BenchReadings.MOST)
                .isSubsetOf(sheet(example).readings());
        assertThat(few).extracting(Reading::number).isSorted().doesNotHaveDuplicates();
        assertThat(few.get(0).purpose()).isEqualTo(Purpose.SUPPLY_BRIDGED);
    }

    @Test
    void onlyTheCircuitsAskedForWithThePointsThatHalveThem() {
        List<Reading> few = BenchReadings.of(sheet("sandpiper-as-built"), List.of("coil"));

        assertThat(few.stream().map(Reading::circuit).filter(circuit -> circuit != null))
                .isNotEmpty()
                .containsOnly("coil");
        assertThat(few).extracting(Reading::purpose).contains(Purpose.LOAD, Purpose.HALF_SPLIT);
    }
}
