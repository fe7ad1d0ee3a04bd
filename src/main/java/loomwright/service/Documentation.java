package loomwright.service;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The browsable contract at {@code /docs}: a page of our own around the viewer of a web jar, nothing from outside. */
final class Documentation {
    private static final String VIEWER = "META-INF/resources/webjars/swagger-ui/5.34.1/";

    /** File name to place on the class path and media type. A list, so that no path of a caller is ever opened. */
    private static final Map<String, String[]> FILES = Map.of(
            "viewer.js", new String[] {VIEWER + "swagger-ui-bundle.js", "text/javascript; charset=utf-8"},
            "viewer.css", new String[] {VIEWER + "swagger-ui.css", "text/css; charset=utf-8"},
            "start.js", new String[] {"docs/start.js", "text/javascript; charset=utf-8"});

    private static final Map<String, String> HEADERS =
            Map.of(FixedHeaders.CONTENT_SECURITY, FixedHeaders.DOCS_CONTENT_SECURITY, "Cache-Control", "max-age=3600");

    private Documentation() {}

    static Reply page(Request request) throws IOException {
        request.checkAccepts("text/html");
        return Reply.of(Face.HTML.contentType(), bytes("docs/index.html")).withHeaders(HEADERS);
    }

    static Reply file(Request request) throws IOException {
        String @Nullable [] file = FILES.get(request.path("file"));
        if (file == null) {
            throw new Refusal(ProblemType.NOT_FOUND, "The documentation page has no such file; it is at GET /docs.");
        }
        return Reply.of(file[1], bytes(file[0])).withHeaders(HEADERS);
    }

    private static byte[] bytes(String resource) throws IOException {
        try (InputStream in = Documentation.class.getClassLoader().getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException(resource + " is not on the class path");
            }
            return in.readAllBytes();
        }
    }
}
