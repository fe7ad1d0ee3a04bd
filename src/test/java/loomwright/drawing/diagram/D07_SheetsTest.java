package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Wire;
import loomwright.drawing.diagram.CircuitSheet.Purpose;
import loomwright.drawing.diagram.DiagramOptions.Marks;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A plan that is too large for one page, on several: each wire once, and references where a circuit goes on. */
class D07_SheetsTest {
    static Stream<String> examples() {
        return Drawn.EXAMPLES.stream();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void eachWireIsOnOneSheetAndEachSheetIsSmall(String name) {
        dividesFairly(Plans.example(name));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void soIsThatOfPlansMadeAtRandom(long seed) {
        dividesFairly(RandomPlan.of(seed));
    }

    private static void dividesFairly(Plan plan) {
        List<CircuitSheet> sheets = CircuitSheets.of(plan);
        if (sheets.isEmpty()) {
            return;
        }
        List<String> drawn = new ArrayList<>();
        sheets.forEach(sheet -> drawn.addAll(sheet.wires()));
        assertThat(drawn)
                .doesNotHaveDuplicates()
                .containsExactlyInAnyOrderElementsOf(
                        plan.wires().stream().map(Wire::id).toList());
        for (CircuitSheet sheet : sheets) {
            for (String id : sheet.parts()) {
                Set<String> here = new HashSet<>(sheet.wires());
                boolean elsewhere = plan.wires().stream()
                        .filter(wire -> wire.from().part().equals(id)
                                || wire.to().part().equals(id))
                        .anyMatch(wire -> !here.contains(wire.id()));
                boolean earth = plan.findPart(id).orElseThrow() instanceof EarthPoint;
                // Where wires of a part are elsewhere, the reader is told on which sheet.
                assertThat(sheet.others(id, sheets).isEmpty() && elsewhere && !earth)
                        .isFalse();
            }
        }
    }

    @Test
    void theDemoCarHasItsStartingIgnitionChargingAndLightingOnSheetsOfTheirOwn() {
        List<CircuitSheet> sheets = CircuitSheets.of(Plans.example("sandpiper-as-built"));

        assertThat(sheets.get(0).purposes()).containsExactly(Purpose.SUPPLY);
        Set<Purpose> purposes = new HashSet<>();
        sheets.forEach(sheet -> purposes.addAll(sheet.purposes()));
        assertThat(purposes).contains(Purpose.STARTING, Purpose.IGNITION, Purpose.CHARGING, Purpose.LIGHTING);
        assertThat(sheets)
                .allSatisfy(sheet -> assertThat(sheet.wires()).hasSizeLessThanOrEqualTo(CircuitSheets.MOST_WIRES));
        assertThat(sheets).anySatisfy(sheet -> assertThat(sheet.parts()).contains("head-left", "head-right"));
    }

    @Test
    void aSheetHasTheFiguresOfTheWholeAndNamesTheOtherSheets() {
        Plan plan = Plans.example("sandpiper-as-built");
        CircuitSheet lighting = CircuitSheets.of(plan).stream()
                .filter(sheet -> sheet.parts().contains("head-left"))
                .findFirst()
                .orElseThrow();
        StepDrawings drawn = Diagram.of(
                plan,
                Drawn.options(Step.RUN, Marks.NONE).ofSheet(lighting.number()),
                Drawn.LIMITS,
                NetworkLimits.defaults(),
                Progress.UNWATCHED);

        // The meanings of lines are lines of no wire.
        List<Drawing.Line> lines = drawn.drawing().wires().stream()
                .filter(line -> !line.said().id().isEmpty())
                .toList();
        assertThat(lines.stream().map(l -> l.said().id()).toList())
                .containsExactlyInAnyOrderElementsOf(lighting.wires());
        Drawing whole = Drawn.of(plan, Step.RUN, Marks.NONE);
        for (Drawing.Line line : lines) {
            assertThat(line.said().does())
                    .isEqualTo(Drawn.wire(whole, line.said().id()).said().does());
        }
        List<String> shared = lighting.parts().stream()
                .filter(part -> !lighting.others(part, drawn.sheets()).isEmpty())
                .filter(part -> !(plan.findPart(part).orElseThrow() instanceof EarthPoint))
                .toList();
        assertThat(shared).isNotEmpty();
        for (String part : shared) {
            String reference = Wordings.reference(lighting.others(part, drawn.sheets()));
            assertThat(String.join(" ", Drawn.texts(drawn.drawing(), part))).contains(reference);
        }
    }

    @Test
    void aSheetThatThereIsNotIsRefused() {
        Plan plan = Plans.example("sandpiper-as-built");
        assertThatThrownBy(() -> Diagram.of(
                        plan,
                        Drawn.options(Step.RUN, Marks.NONE).ofSheet(99),
                        Drawn.LIMITS,
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED))
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        rejected ->
                                assertThat(rejected.faults().get(0).pointer()).isEqualTo("/sheet"));
    }
}
