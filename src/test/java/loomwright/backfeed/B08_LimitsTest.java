package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Extent;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;

/** What is beyond a limit is left out and said, never refused; whoever watches can stop a search. */
class B08_LimitsTest {
    private static final Plan TWELVE = RandomHarness.of(3, 12, 3);

    private static BackfeedSearch search(int combinations, int timeMs) {
        return new BackfeedSearch(new BackfeedLimits(combinations, 16, 6, 2, timeMs), NetworkLimits.defaults());
    }

    @Test
    void beyondTheLimitSomeSwitchesAreHeldAndNamed() {
        Extent extent = search(5, 20_000)
                .find(Plans.example("sandpiper-as-built"), Progress.UNWATCHED)
                .extent();
        assertThat(extent.combinations()).isEqualTo(6);
        assertThat(extent.combinationsSearched()).isEqualTo(2);
        assertThat(extent.heldSwitches()).containsExactly("lights");
        assertThat(extent.searchedAll()).isFalse();
    }

    @Test
    void aSearchOutOfTimeTellsWhatItFoundAndHowMuchItDidNotLookAt() {
        Extent extent = search(4_096, 1).find(TWELVE, Progress.UNWATCHED).extent();
        assertThat(extent.combinations()).isEqualTo(4_096);
        assertThat(extent.combinationsSearched()).isLessThan(4_096);
        assertThat(extent.switchMovesComplete()).isFalse();
    }

    /** A watcher whose time is up ends the search, not the answer. */
    @Test
    void whoeverWatchesMayCallTime() {
        Extent extent = search(65_536, 600_000)
                .find(RandomHarness.of(3, 16, 3), (done, of) -> {
                    if (done > of / 10) {
                        throw OutOfTime.afterMs(1);
                    }
                })
                .extent();
        assertThat(extent.searchedAll()).isFalse();
    }

    @Test
    void whateverElseTheWatcherThrowsEndsIt() {
        assertThatThrownBy(() -> search(4_096, 600_000).find(TWELVE, (done, of) -> {
                    throw new IllegalStateException("hung up");
                }))
                .hasMessage("hung up");
    }

    @Test
    void aSearchThatHasEndedKeepsNoThread() throws InterruptedException {
        Set<Thread> seen = new HashSet<>();
        search(4_096, 600_000)
                .find(
                        TWELVE,
                        (done, of) -> Thread.getAllStackTraces().keySet().stream()
                                .filter(thread -> thread.getName().equals("backfeed-search"))
                                .forEach(seen::add));
        assertThat(seen).isNotEmpty();
        for (Thread thread : seen) {
            thread.join(60_000);
        }
        assertThat(seen).noneMatch(Thread::isAlive);
    }

    @Test
    void theAnswerIsTheSameEachTime() {
        assertThat(search(4_096, 600_000).find(TWELVE, Progress.UNWATCHED))
                .isEqualTo(search(4_096, 600_000).find(TWELVE, Progress.UNWATCHED));
    }

    @Test
    void everyCombinationOfSwitchAndContactsIsSearched() {
        // Lighting switch of three positions, contact points open or closed.
        Extent extent =
                Searched.of(Plans.example("sandpiper-as-built")).report().extent();
        assertThat(extent.combinations()).isEqualTo(6);
        assertThat(extent.searchedAll()).isTrue();
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
