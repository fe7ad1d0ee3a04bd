package loomwright.contract;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Puts {@code openapi.yaml} together from the files under {@code src/main/openapi}. The line {@code $include: a.yaml}
 * stands for the lines of that file, indented as the line itself is; {@code $include:} with a list below it stands for
 * the files of the list, one after the other. Text is put together, not data: order, layout and comments stay as they
 * were written, but a level is one blank deep. References between the files are those of the bundle
 * ({@code #/components/schemas/Wire}).
 *
 * <p>The answers that the contract shows, a file each under {@code examples}, make up a document of their own, which the
 * service serves one by one. References to them become addresses there, so that the contract stays small.
 *
 * <p>Uses the JDK alone, so that it runs from its source: {@value #COMMAND}.
 */
public final class ContractBundle {
    /** What renews the bundle, run in the top directory. */
    static final String COMMAND = "java src/test/java/loomwright/contract/ContractBundle.java";

    static final Path BUNDLE = Path.of("openapi.yaml");

    /** The answers that the contract shows. */
    public static final Path ANSWERS = Path.of("src/main/resources/example-answers.yaml");

    /** Where the service serves them. */
    public static final String SERVED_ANSWERS = "/v1/answers/";

    /** The files, from the top directory. */
    public static final Path SOURCES = Path.of("src/main/openapi");

    private static final Path ROOT = Path.of("openapi.yaml");

    private static final Pattern INCLUDE = Pattern.compile("( *)\\$include:(?: (\\S+))?");
    private static final Pattern LISTED = Pattern.compile(" *- (\\S+)");
    private static final Pattern EXAMPLE = Pattern.compile("\\$ref: '#/components/examples/([^']+)'");
    private static final Path REQUESTS = Path.of("requests.yaml");
    private static final Path EXAMPLES = Path.of("examples");
    private static final Pattern BLOCK = Pattern.compile(": [|>][+-]?$");
    private static final String HEAD =
            "# Bundled from the files under src/main/openapi. Edit those, then run:\n# " + COMMAND + '\n';

    private final Path sources;
    private final List<Path> used = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();

    private ContractBundle(Path sources) {
        this.sources = sources;
    }

    /**
     * A bundle.
     *
     * @param text the whole document
     * @param used the files it was put together from, relative to their directory, in order
     */
    record Bundle(String text, List<Path> used) {}

    /** Renews the bundle and the answers. */
    public static void main(String[] arguments) throws IOException {
        Files.writeString(BUNDLE, of(SOURCES).text());
        Files.writeString(ANSWERS, answers(SOURCES).text());
    }

    /**
     * The files under a directory as one document, begun with its {@code openapi.yaml}.
     *
     * @throws IOException if a file is missing or cannot be read
     */
    static Bundle of(Path sources) throws IOException {
        ContractBundle bundle = new ContractBundle(sources);
        bundle.add(ROOT, "");
        return bundle.done(HEAD + narrowed(withAddresses(bundle.text.toString(), sources)));
    }

    /** The answers under a directory as one document: name to summary and value. */
    static Bundle answers(Path sources) throws IOException {
        ContractBundle bundle = new ContractBundle(sources);
        bundle.include(EXAMPLES + "/", "");
        return bundle.done(HEAD + bundle.text);
    }

    private Bundle done(String bundled) {
        return new Bundle(bundled, List.copyOf(used));
    }

    /** An example that is no request is an answer, and stands in a document of its own. */
    private static String withAddresses(String text, Path sources) throws IOException {
        Set<String> requests = new HashSet<>();
        if (Files.exists(sources.resolve(REQUESTS))) {
            for (String line : Files.readAllLines(sources.resolve(REQUESTS))) {
                requests.add(line.replaceFirst(":.*", ""));
            }
        }
        return EXAMPLE.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(
                        requests.contains(found.group(1))
                                ? found.group()
                                : "externalValue: " + SERVED_ANSWERS + found.group(1)));
    }

    /** A column of the files and the one it gets. */
    private record Column(int old, int narrow) {}

    /** The same with one blank for each level. */
    static String narrowed(String text) {
        StringBuilder narrow = new StringBuilder();
        Deque<Column> columns = new ArrayDeque<>();
        columns.push(new Column(-1, -1));
        int block = -1; // column of the line that a block of text belongs to
        int inBlock = -1; // column of its first line
        for (String line : text.lines().toList()) {
            String words = line.stripLeading();
            int at = line.length() - words.length();
            if (words.isEmpty()) {
                narrow.append('\n');
                continue;
            }
            if (block >= 0 && at > block) {
                inBlock = inBlock < 0 ? at : inBlock;
                narrow.append(" ".repeat(columns.element().narrow() + 1))
                        .append(line.substring(inBlock))
                        .append('\n');
                continue;
            }
            while (columns.element().old() > at) {
                columns.pop();
            }
            if (columns.element().old() < at) {
                columns.push(new Column(at, columns.element().narrow() + 1));
            }
            narrow.append(" ".repeat(columns.element().narrow())).append(words).append('\n');
            for (int dashes = 0; words.startsWith("- ", dashes); dashes += 2) {
                columns.push(new Column(
                        columns.element().old() + 2, columns.element().narrow() + 2));
            }
            block = BLOCK.matcher(words).find() ? columns.element().old() : -1;
            inBlock = -1;
        }
        return narrow.toString();
    }

    private void add(Path file, String indent) throws IOException {
        used.add(file);
        List<String> lines = Files.readAllLines(sources.resolve(file));
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            Matcher include = INCLUDE.matcher(line);
            if (!include.matches()) {
                text.append(line.isEmpty() ? "" : indent).append(line).append('\n');
                continue;
            }
            String deeper = indent + include.group(1);
            if (include.group(2) != null) {
                include(include.group(2), deeper);
                continue;
            }
            for (; i + 1 < lines.size(); i++) {
                Matcher listed = LISTED.matcher(lines.get(i + 1));
                if (!listed.matches()) {
                    break;
                }
                include(listed.group(1), deeper);
            }
        }
    }

    private void include(String name, String indent) throws IOException {
        if (!name.endsWith("/")) {
            add(Path.of(name), indent);
            return;
        }
        try (Stream<Path> files = Files.list(sources.resolve(name))) {
            for (Path file : files.map(sources::relativize).sorted().toList()) {
                add(file, indent);
            }
        }
    }
}
