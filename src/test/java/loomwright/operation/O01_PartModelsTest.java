package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.Arrays;
import loomwright.circuit.Part;
import org.junit.jupiter.api.Test;

/** Every kind of part has an electrical model. */
class O01_PartModelsTest {
    @Test
    void theModelsAreThoseOfTheClosedSetOfParts() {
        assertThat(PartModels.kinds())
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(
                                Part.class.getAnnotation(JsonSubTypes.class).value())
                        .<Class<? extends Part>>map(t -> t.value().asSubclass(Part.class))
                        .toList());
    }
}
