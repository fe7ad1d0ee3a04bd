package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** Placing the parts of a large plan takes longest of all; it ends when its time is up. */
class D06_EndOfTimeTest {
    @Test
    void placingPartsEndsWhenTheProgressSaysSo() {
        Plan plan = Plans.example("sandpiper-as-built");
        Scene scene = new Scene(
                plan,
                Diagram.of(Diagram.readings(plan, NetworkLimits.defaults(), Progress.UNWATCHED), Step.RUN),
                List.of(),
                Set.of(),
                Map.of(),
                Map.of());
        assertThatThrownBy(() -> Layout.place(List.of(scene), (done, of) -> {
                    throw OutOfTime.afterMs(1);
                }))
                .isInstanceOf(OutOfTime.class);
    }
}
