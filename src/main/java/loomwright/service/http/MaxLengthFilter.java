package loomwright.service.http;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import loomwright.service.form.TruncatedMarkdown;

/** On request, a text for a forum post is no longer than the forum takes. */
public final class MaxLengthFilter {
    /** The parameter that asks for it; it says nothing to other forms. */
    static final String PARAMETER = "maxLength";

    private MaxLengthFilter() {}

    /** The reply itself, or as much of it as may be. */
    public static Reply fit(Reply reply, Request request) {
        if (!reply.mediaType().equals(Representation.MARKDOWN.contentType())) {
            return reply;
        }
        return request.query(PARAMETER)
                .map(limit -> Reply.of(
                                reply.mediaType(),
                                TruncatedMarkdown.of(
                                        new String(reply.body(), StandardCharsets.UTF_8),
                                        new BigDecimal(limit).intValueExact()))
                        .withHeaders(reply.headers()))
                .orElse(reply);
    }
}
