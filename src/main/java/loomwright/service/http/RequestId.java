package loomwright.service.http;

import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Names one request in the answer's header, in its problem document and in the log. */
public final class RequestId {
    public static final String HEADER = "X-Request-Id";

    private static final Pattern ACCEPTED = Pattern.compile("[A-Za-z0-9._-]{1,64}");

    private RequestId() {}

    /** The caller's own id if it is harmless in a log and a header, else a new one. */
    public static String of(@Nullable String given) {
        return given != null && ACCEPTED.matcher(given).matches()
                ? given
                : String.format("%016x", ThreadLocalRandom.current().nextLong());
    }
}
