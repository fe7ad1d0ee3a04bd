package loomwright.service;

import java.nio.charset.StandardCharsets;
import java.util.Map;

/** A finished answer: written in one piece, so that a failure while writing can still become a problem document. */
public final class Reply {
    private final String mediaType;
    private final byte[] body;
    private final Map<String, String> headers;

    private Reply(String mediaType, byte[] body, Map<String, String> headers) {
        this.mediaType = mediaType;
        this.body = body;
        this.headers = headers;
    }

    /** A reply of ready bytes. The array is not copied: hand over one that nobody changes. */
    static Reply of(String mediaType, byte[] body) {
        return new Reply(mediaType, body, Map.of());
    }

    static Reply of(String mediaType, String body) {
        return of(mediaType, body.getBytes(StandardCharsets.UTF_8));
    }

    Reply withHeaders(Map<String, String> more) {
        return new Reply(mediaType, body, Map.copyOf(more));
    }

    String mediaType() {
        return mediaType;
    }

    byte[] body() {
        return body;
    }

    Map<String, String> headers() {
        return headers;
    }
}
