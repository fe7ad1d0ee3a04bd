package loomwright.service.http;

import java.util.Map;

/** Headers of every answer; pages alone may load scripts, their own. */
public final class FixedHeaders {
    public static final String CONTENT_SECURITY = "Content-Security-Policy";

    public static final Map<String, String> ALL = Map.of(
            "X-Content-Type-Options",
            "nosniff",
            CONTENT_SECURITY,
            "default-src 'none'; frame-ancestors 'none'",
            "Referrer-Policy",
            "no-referrer");

    /** An answer as a page has a style, of its own or of the help page, and nothing else. */
    public static final String ANSWER_CONTENT_SECURITY =
            "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** The documentation page sets styles on its elements and draws its icons from data addresses. */
    public static final String DOCS_CONTENT_SECURITY =
            "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline';"
                    + " img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** The help page loads its own scripts and styles, asks this service alone, and sends forms to it alone. */
    public static final String HELP_CONTENT_SECURITY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
                    + " base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private FixedHeaders() {}
}
