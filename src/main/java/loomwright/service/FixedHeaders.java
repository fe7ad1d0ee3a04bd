package loomwright.service;

import java.util.Map;

/** Headers of every answer; pages alone may load scripts, their own. */
final class FixedHeaders {
    static final String CONTENT_SECURITY = "Content-Security-Policy";

    static final Map<String, String> ALL = Map.of(
            "X-Content-Type-Options",
            "nosniff",
            CONTENT_SECURITY,
            "default-src 'none'; frame-ancestors 'none'",
            "Referrer-Policy",
            "no-referrer");

    /** The documentation page sets styles on its elements and draws its icons from data addresses. */
    static final String DOCS_CONTENT_SECURITY =
            "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline';"
                    + " img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** Pages of ours load their own scripts and styles, ask this service alone, and send forms to it alone. */
    static final String PAGE_CONTENT_SECURITY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
                    + " base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private FixedHeaders() {}
}
