package loomwright.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;

/** All faults of an input are said at once; NaN and infinities are never in range. */
class FaultsTest {
    @Test
    void everyFaultIsInTheRejection() {
        Faults faults =
                new Faults().range("/a", -1, 0, 10).range("/b", 5, 0, 10).required("/c", null);
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, faults::reject);
        assertThat(rejected.faults())
                .extracting(Fault::code, Fault::pointer)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(Fault.Code.OUT_OF_RANGE, "/a"),
                        org.assertj.core.groups.Tuple.tuple(Fault.Code.MISSING, "/c"));
        assertThat(rejected.faults().get(0).accepted()).isEqualTo("a number from 0 to 10");
    }

    @Test
    void notANumberAndInfinityAreOutOfEveryRange() {
        assertThat(new Faults().range("/a", Double.NaN, -1e300, 1e300).isEmpty())
                .isFalse();
        assertThat(new Faults().range("/a", Double.POSITIVE_INFINITY, 0, 1e300).isEmpty())
                .isFalse();
    }

    @Test
    void aValueLeftOutIsNotOutOfRange() {
        Double absent = null;
        assertThat(new Faults().range("/a", absent, 0, 1).isEmpty()).isTrue();
    }
}
