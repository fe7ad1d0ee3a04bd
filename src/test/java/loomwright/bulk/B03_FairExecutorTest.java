package loomwright.bulk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Runs share the threads fairly: each gets one piece of its work done in turn. */
class B03_FairExecutorTest {
    private final List<String> done = new ArrayList<>();
    private final Deque<Runnable> asked = new ArrayDeque<>();
    private final List<Future<?>> answers = new ArrayList<>();
    private final FairExecutor turns = new FairExecutor(asked::add);

    private void submit(FairExecutor.Share share, String name, int count) {
        for (int i = 1; i <= count; i++) {
            String piece = name + i;
            answers.add(share.submit(() -> done.add(piece)));
        }
    }

    private void work() {
        while (!asked.isEmpty()) {
            asked.remove().run();
        }
    }

    @Test
    void whoHasMuchWaitingDoesNotHoldUpWhoHasLittle() {
        submit(turns.share(), "a", 4);
        submit(turns.share(), "b", 1);
        submit(turns.share(), "c", 2);
        work();
        assertThat(done).containsExactly("a1", "b1", "c1", "a2", "c2", "a3", "a4");
        assertThat(answers).allMatch(Future::isDone);
    }

    @Test
    void whoComesLaterIsNextAfterThoseWhoWait() {
        FairExecutor.Share first = turns.share();
        submit(first, "a", 3);
        asked.remove().run();
        submit(turns.share(), "b", 1);
        work();
        assertThat(done).containsExactly("a1", "a2", "b1", "a3");
    }

    @Test
    void whatIsForgottenIsNotDone() {
        FairExecutor.Share given = turns.share();
        submit(given, "a", 3);
        submit(turns.share(), "b", 2);
        asked.remove().run();
        given.clear();
        work();
        assertThat(done).containsExactly("a1", "b1", "b2");
        assertThat(answers.stream().filter(Future::isDone)).hasSize(3);
    }

    @Test
    void allThreadsWorkAtOnceAndEndWhenTheyAreIdle() throws Exception {
        int threads = 3;
        FairExecutor.Share share = FairExecutor.of(threads).share();
        CountDownLatch together = new CountDownLatch(threads);
        List<Future<Boolean>> all = new ArrayList<>();
        for (int i = 0; i < threads; i++) {
            all.add(share.submit(() -> {
                together.countDown();
                return together.await(30, TimeUnit.SECONDS)
                        && Thread.currentThread().isDaemon();
            }));
        }
        for (Future<Boolean> answer : all) {
            assertThat(answer.get()).isTrue();
        }
    }
}
