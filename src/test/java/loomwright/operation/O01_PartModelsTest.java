package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.Arrays;
import loomwright.circuit.Part;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every kind of part has an electrical model; that of some is the same in all steps. */
class O01_PartModelsTest {
    @Test
    void theModelsAreThoseOfTheClosedSetOfParts() {
        assertThat(PartModels.kinds())
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(
                                Part.class.getAnnotation(JsonSubTypes.class).value())
                        .<Class<? extends Part>>map(t -> t.value().asSubclass(Part.class))
                        .toList());
    }

    /** They are made once and used in all steps, so they must not hang on the step or on the state. */
    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-as-built", "sandpiper-bypass-relay", "otter-6v-positive-earth"})
    void aLastingPartIsTheSameInAllStepsAndStates(String example) {
        Wiring wiring = Wiring.of(Plans.example(example));
        assertThat(wiring.plan().parts()).anyMatch(PartModels::isLasting);
        for (Part part : wiring.plan().parts()) {
            if (PartModels.isLasting(part)) {
                StepNetwork.PartElements first = StepNetwork.of(wiring, Step.OFF, part, false);
                for (Step step : Step.values()) {
                    assertThat(StepNetwork.of(wiring, step, part, false)).isEqualTo(first);
                    assertThat(StepNetwork.of(wiring, step, part, true)).isEqualTo(first);
                }
            }
        }
    }
}
