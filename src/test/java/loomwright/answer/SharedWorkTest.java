package loomwright.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledIf;

@DisplayName("Work shared by several threads")
class SharedWorkTest {
    private static final List<Integer> SQUARES =
            IntStream.range(0, 1000).mapToObj(i -> i * i).toList();

    static boolean oneCore() {
        return Runtime.getRuntime().availableProcessors() == 1;
    }

    @Test
    @DisplayName("gives what one thread would give, in the order of the pieces")
    void inOrder() {
        assertThat(SharedWork.inOrder(1000, () -> i -> i * i, Progress.UNWATCHED))
                .isEqualTo(SQUARES);
        assertThat(SharedWork.inOrder(0, () -> i -> i, Progress.UNWATCHED)).isEmpty();
    }

    @Test
    @DisplayName("tells of each piece once, to one watcher at a time")
    void told() {
        List<Long> heard = new ArrayList<>();
        SharedWork.inOrder(500, () -> i -> i, (done, of) -> {
            assertThat(of).isEqualTo(500);
            heard.add(done);
        });
        assertThat(heard)
                .isEqualTo(IntStream.rangeClosed(1, 500).mapToObj(i -> (long) i).toList());
    }

    @Test
    @DisplayName("makes a worker for each thread and gives no piece to two")
    void eachOnce() {
        Set<Thread> threads = ConcurrentHashMap.newKeySet();
        List<Integer> done = Collections.synchronizedList(new ArrayList<>());
        SharedWork.inOrder(
                2000,
                () -> {
                    Thread own = Thread.currentThread();
                    threads.add(own);
                    return i -> {
                        assertThat(Thread.currentThread()).isSameAs(own);
                        done.add(i);
                        return i;
                    };
                },
                Progress.UNWATCHED);
        assertThat(done).hasSize(2000).doesNotHaveDuplicates();
        assertThat(threads)
                .contains(Thread.currentThread())
                .hasSizeLessThanOrEqualTo(Runtime.getRuntime().availableProcessors());
    }

    @Test
    @DisplayName("two pieces are done at the same time")
    @DisabledIf(value = "oneCore", disabledReason = "one core does one piece at a time")
    void together() {
        CountDownLatch both = new CountDownLatch(2);
        List<Integer> results = SharedWork.inOrder(
                2,
                () -> i -> {
                    both.countDown();
                    try {
                        both.await();
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                    return i;
                },
                Progress.UNWATCHED);
        assertThat(results).containsExactly(0, 1);
    }

    @Test
    @DisplayName("a piece for which there is no time ends the work, and what was done before it is handed back")
    void noTime() {
        List<Integer> results = SharedWork.inOrder(1000, () -> SharedWorkTest::squareInTime, Progress.UNWATCHED);
        assertThat(results).isEqualTo(SQUARES.subList(0, 300));
    }

    private static int squareInTime(int i) {
        if (i >= 300) {
            throw OutOfTime.afterMs(1);
        }
        return i * i;
    }

    @Test
    @DisplayName("a watcher who says that the time is up ends the work, any other failure the calculation")
    void watchers() {
        assertThat(SharedWork.inOrder(1000, () -> i -> i * i, (done, of) -> {
                    if (done >= 7) {
                        throw OutOfTime.afterMs(1);
                    }
                }))
                .startsWith(0, 1, 4, 9)
                .hasSizeBetween(7, 7 + Runtime.getRuntime().availableProcessors());
        assertThatThrownBy(() -> SharedWork.inOrder(1000, () -> i -> i, (done, of) -> {
                    throw new IllegalStateException("gone");
                }))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("gone");
    }
}
