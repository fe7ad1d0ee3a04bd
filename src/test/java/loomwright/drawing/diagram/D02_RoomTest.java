package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import loomwright.circuit.Plan;
import loomwright.drawing.diagram.DiagramOptions.Marks;
import loomwright.operation.Step;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** No text crosses a text, a symbol or a wire; no symbol lies on another; nothing lies outside of the sheet. */
class D02_RoomTest {
    static Stream<String> examples() {
        return Drawn.EXAMPLES.stream();
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(5, 9);
    }

    @ParameterizedTest
    @MethodSource("examples")
    void theDemoPlansHaveRoomForEverything(String name) {
        for (Step step : List.of(Step.OFF, Step.CRANK)) {
            assertThat(Room.overlaps(Drawn.example(name, step)))
                    .as(step.description())
                    .isEmpty();
        }
        assertThat(Room.overlaps(Drawn.example(name, Step.RUN, Marks.FINDINGS, Marks.BACKFEED)))
                .as("with marks")
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aRandomPlanOfFortyPartsAndSixtyWiresHasToo(long seed) {
        Plan plan = RandomPlan.of(seed);
        assertThat(plan.parts()).hasSize(40);
        assertThat(plan.wires()).hasSizeGreaterThanOrEqualTo(60);
        assertThat(Room.overlaps(Drawn.of(plan, Step.RUN))).isEmpty();
    }
}
