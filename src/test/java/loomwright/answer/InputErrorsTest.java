package loomwright.answer;

import static loomwright.message.Arg.plain;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;

/** All faults of an input are said at once; NaN and infinities are never in range. */
class InputErrorsTest {
    @Test
    void everyFaultIsInTheRejection() {
        InputErrors faults =
                new InputErrors().range("/a", -1, 0, 10).range("/b", 5, 0, 10).required("/c", null);
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, faults::reject);
        assertThat(rejected.faults())
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(InputError.Code.OUT_OF_RANGE, "/a"),
                        org.assertj.core.groups.Tuple.tuple(InputError.Code.MISSING, "/c"));
        assertThat(rejected.faults().get(0).accepted())
                .isEqualTo(Accepted.NUMBER.with(plain("min", 0), plain("max", 10)));
    }

    @Test
    void notANumberAndInfinityAreOutOfEveryRange() {
        assertThat(new InputErrors().range("/a", Double.NaN, -1e300, 1e300).isEmpty())
                .isFalse();
        assertThat(new InputErrors()
                        .range("/a", Double.POSITIVE_INFINITY, 0, 1e300)
                        .isEmpty())
                .isFalse();
    }

    @Test
    void aValueLeftOutIsNotOutOfRange() {
        Double absent = null;
        assertThat(new InputErrors().range("/a", absent, 0, 1).isEmpty()).isTrue();
    }
}
