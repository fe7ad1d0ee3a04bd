package loomwright.service.entrance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** How often each caller may ask; the test moves the clock. */
class RateLimiterTest {
    private final AtomicLong nanos = new AtomicLong(-5);

    private void after(long ms) {
        nanos.addAndGet(TimeUnit.MILLISECONDS.toNanos(ms));
    }

    @Test
    void aBurstIsLetThroughAndThenOneForEachThatComesIn() {
        RateLimiter pace = new RateLimiter(2, 3, nanos::get);
        for (int i = 0; i < 3; i++) {
            assertThat(pace.take("till").isGranted()).isTrue();
        }
        assertThat(pace.take("till").retryAfterS()).isEqualTo(1);
        after(499);
        assertThat(pace.take("till").retryAfterS()).isEqualTo(1);
        after(1);
        assertThat(pace.take("till").isGranted()).isTrue();
        assertThat(pace.take("till").retryAfterS()).isEqualTo(1);
    }

    @Test
    void aLongPauseFillsTheBucketAndNoMore() {
        RateLimiter pace = new RateLimiter(10, 2, nanos::get);
        pace.take("till");
        after(3_600_000);
        assertThat(pace.take("till").isGranted()).isTrue();
        assertThat(pace.take("till").isGranted()).isTrue();
        assertThat(pace.take("till").isGranted()).isFalse();
    }

    @Test
    void whoComesAgainWhenToldIsLetThrough() {
        RateLimiter pace = new RateLimiter(0.3, 1, nanos::get);
        pace.take("till");
        long waitS = pace.take("till").retryAfterS();
        assertThat(waitS).isEqualTo(4);
        after(TimeUnit.SECONDS.toMillis(waitS));
        assertThat(pace.take("till").isGranted()).isTrue();
    }

    @Test
    void whatIsLeftAndWhenAllIsThereAgainIsSaid() {
        RateLimiter pace = new RateLimiter(0.5, 3, nanos::get);
        assertThat(pace.windowS()).isEqualTo(6);
        assertThat(pace.take("till")).isEqualTo(new RateLimiter.Taken(true, 2, 0, 2));
        after(1_000);
        assertThat(pace.take("till")).isEqualTo(new RateLimiter.Taken(true, 1, 0, 3));
        assertThat(pace.take("till")).isEqualTo(new RateLimiter.Taken(true, 0, 1, 5));
        assertThat(pace.take("till")).isEqualTo(new RateLimiter.Taken(false, 0, 1, 5));
    }

    @Test
    void callersDoNotTakeFromEachOther() {
        RateLimiter pace = new RateLimiter(1, 1, nanos::get);
        assertThat(pace.take("till").isGranted()).isTrue();
        assertThat(pace.take("bench").isGranted()).isTrue();
        assertThat(pace.take("till").isGranted()).isFalse();
    }

    @Test
    void noMoreThanSoManyCallersAreRemembered() {
        RateLimiter pace = new RateLimiter(1, 1, nanos::get);
        for (int i = 0; i < RateLimiter.CALLERS + 500; i++) {
            pace.take("address " + i);
            pace.take("till");
        }
        assertThat(pace.callers()).isEqualTo(RateLimiter.CALLERS);
        assertThat(pace.take("till").isGranted())
                .as("one that asks all the time is not forgotten")
                .isFalse();
    }
}
