package loomwright.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A fault can be seen from further out, and a rejection always says why. */
class InputErrorTest {
    @Test
    void aPrefixIsPutBeforeThePointer() {
        InputError inner =
                new InputError(InputError.Code.OUT_OF_RANGE, "/resistanceOhm", "-1", Accepted.ANY_NUMBER.with());
        assertThat(inner.under("/parts/3").pointer()).isEqualTo("/parts/3/resistanceOhm");
    }

    @Test
    void aRejectionWithoutAFaultIsAnErrorOfOurs() {
        assertThatThrownBy(() -> new RejectedInput(List.of())).isInstanceOf(IllegalArgumentException.class);
    }
}
