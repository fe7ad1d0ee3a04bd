package loomwright.service.http;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A finished answer, written in one piece, so that a failure while writing can still become a problem document; or one that
 * is written while it is worked out.
 */
public final class Reply {
    private final String mediaType;
    private final byte[] body;
    private final Map<String, String> headers;

    private final @Nullable Stream stream;

    /** Writes an answer piece by piece. What it throws before it has written anything becomes a problem document. */
    @FunctionalInterface
    public interface Stream {
        /**
         * Writes all of it.
         *
         * @param problem makes the problem document of what was thrown
         */
        void write(OutputStream out, Function<Throwable, byte[]> problem) throws IOException;
    }

    private Reply(String mediaType, byte[] body, Map<String, String> headers, @Nullable Stream stream) {
        this.mediaType = mediaType;
        this.body = body;
        this.headers = headers;
        this.stream = stream;
    }

    public static Reply streamed(String mediaType, Stream stream) {
        return new Reply(mediaType, new byte[0], Map.of(), stream);
    }

    /** A reply of ready bytes. The array is not copied: hand over one that nobody changes. */
    public static Reply of(String mediaType, byte[] body) {
        return new Reply(mediaType, body, Map.of(), null);
    }

    public static Reply of(String mediaType, String body) {
        return of(mediaType, body.getBytes(StandardCharsets.UTF_8));
    }

    public Reply withHeaders(Map<String, String> more) {
        return new Reply(mediaType, body, Map.copyOf(more), stream);
    }

    public String mediaType() {
        return mediaType;
    }

    public byte[] body() {
        return body;
    }

    @Nullable
    public Stream stream() {
        return stream;
    }

    public Map<String, String> headers() {
        return headers;
    }
}
