package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import loomwright.OtherJava;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import org.junit.jupiter.api.Test;

/** As many combinations as are searched at most, 262,144, are searched in a heap of 512 MB: in a Java of its own that has no more. */
class B27_HeapTest {
    private static final int SWITCHES = 18;
    private static final String HEAP = "-Xmx512m";

    /** What the other Java runs. */
    public static void main(String[] args) {
        Plan plan = PlanAnswer.requireSound(RandomHarness.of(3, SWITCHES, 3));
        FeedSearch.Found found = new FeedSearch(
                        new BackfeedLimits(1 << SWITCHES, 64, 6, 0, 3_600_000), NetworkLimits.defaults())
                .find(plan, new SearchClock(Progress.UNWATCHED, Long.MAX_VALUE, 1 << SWITCHES));
        System.out.println(
                found.extent().combinationsSearched() + " " + found.cases().size());
    }

    @Test
    void allCombinationsAreSearchedInAHeapOf512Megabytes() throws IOException, InterruptedException {
        String said = OtherJava.said(OtherJava.of(List.of(HEAP, "-XX:+UseSerialGC"), B27_HeapTest.class));
        // Loads are found fed, so that there was something to keep.
        assertThat(said.strip()).matches("262144 [1-9][0-9]*");
    }
}
