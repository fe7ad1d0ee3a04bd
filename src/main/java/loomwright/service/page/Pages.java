package loomwright.service.page;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Properties;
import java.util.regex.Pattern;
import loomwright.service.http.FixedHeaders;
import loomwright.service.http.Reply;
import loomwright.service.http.Request;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/**
 * A page for people with its scripts and styles, all from within the jar: the help page at {@code /} and the page at
 * {@code /docs/try} on which operations are tried.
 */
public final class Pages {
    private static final String HTML = "text/html; charset=utf-8";
    private static final String SCRIPT = "text/javascript; charset=utf-8";
    private static final String STYLE = "text/css; charset=utf-8";
    private static final Pattern COMMENT_LINES = Pattern.compile("(?ms)^ *(?:/\\*\\*.*?\\*/|//[^\\n]*) *\\n");
    private static final String VIEWER = "META-INF/resources/webjars/swagger-ui/" + viewerVersion() + "/";

    /** For an owner: the workbench with its modules, and small calculators. */
    public static final Pages HELP = new Pages(
            new Source(() -> PageWords.html(bytes("page/index.html")), HTML),
            helpFiles(
                    "page.css",
                    "diagram.css",
                    "become.js",
                    "calculators.js",
                    "cars.js",
                    "circuit.js",
                    "compare.js",
                    "complaint.js",
                    "completion.js",
                    "controls.js",
                    "elements.js",
                    "findings.js",
                    "frame.js",
                    "grid.js",
                    "labels.js",
                    "leads.js",
                    "list.js",
                    "measure.js",
                    "mistakes.js",
                    "parts.js",
                    "patch.js",
                    "picture.js",
                    "print.js",
                    "selected.js",
                    "service.js",
                    "start.js",
                    "suspects.js",
                    "symbols.js",
                    "text.js",
                    "views.js",
                    "wires.js",
                    "words.js",
                    "workshop.js"),
            FixedHeaders.HELP_CONTENT_SECURITY);

    /** For programmers who want to try an operation: a page of our own around the viewer of a web jar. */
    public static final Pages DOCUMENTATION = new Pages(
            file("docs/index.html", HTML),
            Map.of(
                    "try", file("docs/index.html", HTML),
                    "viewer.js", file(VIEWER + "swagger-ui-bundle.js", SCRIPT),
                    "viewer.css", file(VIEWER + "swagger-ui.css", STYLE),
                    "start.js", file("docs/start.js", SCRIPT)),
            FixedHeaders.DOCS_CONTENT_SECURITY);

    private final Source index;
    /** By name. A list, so that no path of a caller is ever opened. */
    private final Map<String, Source> files;

    private final Map<String, String> headers;

    /** What a file holds. */
    private interface Content {
        byte[] read() throws IOException;
    }

    private record Source(Content content, String contentType) {
        Reply reply(Map<String, String> headers) throws IOException {
            return Reply.of(contentType, content.read()).withHeaders(headers);
        }
    }

    /** A file on the class path. */
    private static Source file(String resource, String contentType) {
        return new Source(() -> bytes(resource), contentType);
    }

    private static Map<String, Source> helpFiles(String... names) {
        Map<String, Source> files = new HashMap<>();
        for (String name : names) {
            String resource = "page/" + name;
            files.put(
                    name,
                    name.endsWith(".css")
                            ? file(resource, STYLE)
                            : new Source(() -> withoutComments(bytes(resource)), SCRIPT));
        }
        files.put("texts.js", new Source(PageWords::script, SCRIPT));
        return Map.copyOf(files);
    }

    /** A script without the lines that are comments, which would be an eighth of what a reader loads. */
    private static byte[] withoutComments(byte[] script) {
        String code = new String(script, StandardCharsets.UTF_8);
        return COMMENT_LINES.matcher(code).replaceAll("").getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String resource) throws IOException {
        try (InputStream in = Pages.class.getClassLoader().getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException(resource + " is not on the class path");
            }
            return in.readAllBytes();
        }
    }

    /** The web jar says which it is. */
    private static String viewerVersion() {
        Properties jar = new Properties();
        try {
            jar.load(new ByteArrayInputStream(bytes("META-INF/maven/org.webjars/swagger-ui/pom.properties")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return jar.getProperty("version");
    }

    private Pages(Source index, Map<String, Source> files, String contentSecurity) {
        this.index = index;
        this.files = files;
        this.headers = Map.of(FixedHeaders.CONTENT_SECURITY, contentSecurity);
    }

    /** The page itself. */
    public Reply page(Request request) throws IOException {
        request.checkAccepts("text/html");
        return index.reply(headers);
    }

    /**
     * A script or style of it.
     *
     * @throws ProblemException 404 for any other name
     */
    public Reply file(Request request) throws IOException {
        @Nullable Source file = files.get(request.path("file"));
        if (file == null) {
            throw new ProblemException(ProblemType.NOT_FOUND, ProblemText.NO_SUCH_FILE.with());
        }
        return file.reply(headers);
    }
}
