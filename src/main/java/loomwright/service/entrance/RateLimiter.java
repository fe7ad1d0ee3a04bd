package loomwright.service.entrance;

import java.util.LinkedHashMap;
import java.util.Map;
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
     * What became of a request.
     *
     * @param isGranted whether there was a token
     * @param remaining tokens that are left
     * @param retryAfterS after how many seconds there is a token again; 0 if there is one
     * @param fullInS after how many seconds the bucket is full
     */
    public record Taken(boolean isGranted, long remaining, long retryAfterS, long fullInS) {}

    /** Takes a token of a caller, if there is one. */
    public synchronized Taken take(String caller) {
        long now = nanoTime.getAsLong();
        Bucket bucket = buckets.getOrDefault(caller, new Bucket(burst, now));
        double before = Math.min(burst, bucket.tokens() + perSecond * (now - bucket.atNanos()) / NANOS_PER_SECOND);
        boolean isGranted = before >= 1;
        double tokens = isGranted ? before - 1 : before;
        buckets.put(caller, new Bucket(tokens, now));
        if (buckets.size() > CALLERS) {
            buckets.remove(buckets.keySet().iterator().next());
        }
        return new Taken(isGranted, (long) tokens, tokens >= 1 ? 0 : seconds(1 - tokens), seconds(burst - tokens));
    }

    private long seconds(double tokens) {
        return (long) Math.ceil(tokens / perSecond);
    }

    /** Most requests at once. */
    public int burst() {
        return burst;
    }

    /** In how many seconds an empty bucket is full, at least 1. */
    public long windowS() {
        return seconds(burst);
    }

    synchronized int callers() {
        return buckets.size();
    }
}
