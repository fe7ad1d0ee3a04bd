package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import loomwright.answer.InputError;
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
        assertThat(rejected.faults()).extracting(InputError::code).containsExactly(InputError.Code.OVER_LIMIT);
        assertThat(rejected.faults().get(0).value()).startsWith("6 ");
    }

    @Test
    void everyCombinationOfSwitchAndContactsIsSolved() {
        // Lighting switch of three positions, contact points open or closed.
        assertThat(Searched.of(Plans.example("sandpiper-as-built")).report().combinations())
                .isEqualTo(6);
    }

    /** The parts of a remedy are named after the wire. */
    @Test
    void wiresWithTheLongestIdsHaveRemediesToo() throws Exception {
        String text = Files.readString(Path.of("src/main/resources/examples/sandpiper-unguarded-bypass.json"))
                .replace("'", "");
        String longest = "ballast-tap-to-starter-solenoid-contact1";
        assertThat(longest).hasSize(40);
        Searched found = Searched.of(Plans.parse(text.replace("\"W35\"", "\"" + longest + "\"")));
        assertThat(found.feed("solenoid").remedies())
                .extracting(BackfeedReport.Remedy::at)
                .containsOnly(longest);
        assertThat(found.feed("solenoid").remedies())
                .hasSameSizeAs(Searched.of(Plans.parse(text)).feed("solenoid").remedies());
    }
}
