package loomwright.backfeed.sneak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.InputError;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;

/** Too many combinations are refused by number, too long a search ends, progress is told and whoever is told can stop it. */
class K05_LimitsTest {
    private static final Plan TWELVE = RandomHarness.of(3, 12, 3);

    private static SneakSearch search(int maxCombinations, int maxCases, int threads, int timeMs) {
        return new SneakSearch(new SneakLimits(maxCombinations, maxCases, threads, timeMs), NetworkLimits.defaults());
    }

    @Test
    void tooManyCombinationsAreRefusedWithTheirNumber() {
        RejectedInput rejected = catchThrowableOfType(
                RejectedInput.class, () -> search(4_095, 100, 2, 60_000).find(TWELVE, Progress.UNWATCHED));
        assertThat(rejected.faults()).extracting(InputError::code).containsExactly(InputError.Code.OVER_LIMIT);
        assertThat(rejected.faults().get(0).value()).isEqualTo("4096 combinations");
    }

    @Test
    void aSearchThatTakesTooLongEndsAndSaysHowFarItGot() {
        assertThatThrownBy(() -> search(4_096, 100, 1, 1).find(TWELVE, Progress.UNWATCHED))
                .isInstanceOf(OutOfTime.class)
                .hasMessageContaining("of 4096 combinations");
    }

    @Test
    void progressEndsWithAllDone() {
        List<Long> done = new ArrayList<>();
        search(4_096, 100, 2, 600_000).find(TWELVE, (d, of) -> {
            assertThat(of).isEqualTo(4_096);
            done.add(d);
        });
        assertThat(done).isSorted().contains(4_096L);
    }

    @Test
    void aSearchThatHasEndedKeepsNoThread() throws InterruptedException {
        SneakSearch search = search(4_096, 100, 3, 600_000);
        search.find(TWELVE, Progress.UNWATCHED);
        Set<Thread> left = threads();
        assertThat(left).isNotEmpty();
        for (Thread thread : left) {
            thread.join(60_000);
        }
        assertThat(left).noneMatch(Thread::isAlive);
    }

    private static Set<Thread> threads() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().equals("sneak-search"))
                .collect(Collectors.toSet());
    }

    @Test
    void whatTheWatcherThrowsEndsTheSearch() {
        assertThatThrownBy(() -> search(4_096, 100, 2, 600_000).find(TWELVE, (done, of) -> {
                    throw new IllegalStateException("enough");
                }))
                .hasMessage("enough");
    }

    @Test
    void theAnswerDoesNotDependOnTheNumberOfThreads() {
        assertThat(search(4_096, 100, 1, 600_000).find(TWELVE, Progress.UNWATCHED))
                .isEqualTo(search(4_096, 100, 3, 600_000).find(TWELVE, Progress.UNWATCHED));
    }

    @Test
    void moreCasesThanAreFollowedMakeTheReportIncomplete() {
        SneakReport report = search(4_096, 1, 2, 600_000).find(TWELVE, Progress.UNWATCHED);
        assertThat(report.complete()).isFalse();
    }
}
