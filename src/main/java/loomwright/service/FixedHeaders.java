package loomwright.service;

import java.util.Map;

/** Headers of every answer; the documentation page alone may load scripts, its own. */
final class FixedHeaders {
    static final String CONTENT_SECURITY = "Content-Security-Policy";

    static final Map<String, String> ALL = Map.of(
            "X-Content-Type-Options",
            "nosniff",
            CONTENT_SECURITY,
            "default-src 'none'; frame-ancestors 'none'",
            "Referrer-Policy",
            "no-referrer");

    /** A page of an answer brings its style along and nothing else. */
    static final String PAGE_CONTENT_SECURITY =
            "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** The documentation page sets styles on its elements and draws its icons from data addresses. */
    static final String DOCS_CONTENT_SECURITY =
            "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline';"
                    + " img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private FixedHeaders() {}
}
