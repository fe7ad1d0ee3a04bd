package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import loomwright.answer.Fault;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;

/** Too many combinations are refused with their number; what is within the limit is solved whole. */
class B08_LimitsTest {
    @Test
    void tooManyCombinationsAreRefused() {
        BackfeedSearch search = new BackfeedSearch(new BackfeedLimits(5, 6, 40), NetworkLimits.defaults());
        RejectedInput rejected = catchThrowableOfType(
                RejectedInput.class, () -> search.find(Plans.example("sandpiper-as-built"), Progress.UNWATCHED));
        assertThat(rejected.faults()).extracting(Fault::code).containsExactly(Fault.Code.OVER_LIMIT);
        assertThat(rejected.faults().get(0).value()).startsWith("6 ");
    }

    @Test
    void everyCombinationOfSwitchAndContactsIsSolved() {
        // Lighting switch of three positions, contact points open or closed.
        assertThat(Searched.of(Plans.example("sandpiper-as-built")).report().combinations())
                .isEqualTo(6);
    }
}
