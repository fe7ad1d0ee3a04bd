package loomwright.service;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import loomwright.service.form.Excerpt;

/** On request, a text for a forum post is no longer than the forum takes. */
final class PostLength {
    /** The parameter that asks for it; it says nothing to other forms. */
    static final String PARAMETER = "maxLength";

    private PostLength() {}

    /** The reply itself, or as much of it as may be. */
    static Reply fit(Reply reply, Request request) {
        if (!reply.mediaType().equals(Face.MARKDOWN.contentType())) {
            return reply;
        }
        return request.query(PARAMETER)
                .map(limit -> Reply.of(
                                reply.mediaType(),
                                Excerpt.of(
                                        new String(reply.body(), StandardCharsets.UTF_8),
                                        new BigDecimal(limit).intValueExact()))
                        .withHeaders(reply.headers()))
                .orElse(reply);
    }
}
