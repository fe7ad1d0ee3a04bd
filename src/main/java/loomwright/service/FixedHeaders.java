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

    /** An answer as a page has a style, of its own or of the help page, and nothing else. */
    static final String ANSWER_CONTENT_SECURITY =
            "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** The documentation page sets styles on its elements and draws its icons from data addresses. */
    static final String DOCS_CONTENT_SECURITY =
            "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline';"
                    + " img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** The help page loads its own scripts and styles, asks this service alone, and sends forms to it alone. */
    static final String HELP_CONTENT_SECURITY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
                    + " base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private FixedHeaders() {}
}
