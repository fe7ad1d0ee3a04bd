package loomwright.service.entrance;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * How fast each caller may ask: a bucket of tokens each, filled at a steady rate, from which each request takes one.
 *
 * <p>Remembers the {@value #CALLERS} callers that asked last; one that is forgotten begins with a full bucket again.
 */
public final class RateLimiter {
    static final int CALLERS = 10_000;

    private static final double NANOS_PER_SECOND = TimeUnit.SECONDS.toNanos(1);

    private final double perSecond;
    private final int burst;
    private final LongSupplier nanoTime;
    private final Map<String, Bucket> buckets = new LinkedHashMap<>(16, 0.75f, true);

    private record Bucket(double tokens, long atNanos) {}

    /**
     * A pace for every caller.
     *
     * @param perSecond tokens that come in each second, above 0
     * @param burst most tokens of a bucket, at least 1
     */
    public RateLimiter(double perSecond, int burst) {
        this(perSecond, burst, System::nanoTime);
    }

    RateLimiter(double perSecond, int burst, LongSupplier nanoTime) {
        this.perSecond = perSecond;
        this.burst = burst;
        this.nanoTime = nanoTime;
    }

    /**
     * Takes a token of a caller.
     *
     * @return empty if there was one, else after how many seconds there will be, at least 1
     */
    public synchronized OptionalLong take(String caller) {
        long now = nanoTime.getAsLong();
        Bucket bucket = buckets.getOrDefault(caller, new Bucket(burst, now));
        double tokens = Math.min(burst, bucket.tokens() + perSecond * (now - bucket.atNanos()) / NANOS_PER_SECOND);
        boolean enough = tokens >= 1;
        buckets.put(caller, new Bucket(enough ? tokens - 1 : tokens, now));
        if (buckets.size() > CALLERS) {
            buckets.remove(buckets.keySet().iterator().next());
        }
        return enough ? OptionalLong.empty() : OptionalLong.of((long) Math.ceil((1 - tokens) / perSecond));
    }

    synchronized int callers() {
        return buckets.size();
    }
}
