package loomwright.contract;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Puts {@code openapi.yaml} together from the files under {@code src/main/openapi}. The line {@code $include: a.yaml}
 * stands for the lines of that file, indented as the line itself is; {@code $include:} with a list below it stands for
 * the files of the list, one after the other. Text is put together, not data: order, layout and comments stay as they
 * were written. References between the files are those of the bundle ({@code #/components/schemas/Wire}).
 *
 * <p>Uses the JDK alone, so that it runs from its source: {@value #COMMAND}.
 */
public final class ContractBundle {
    /** What renews the bundle, run in the top directory. */
    static final String COMMAND = "java src/test/java/loomwright/contract/ContractBundle.java";

    static final Path BUNDLE = Path.of("openapi.yaml");

    /** The files, from the top directory. */
    public static final Path SOURCES = Path.of("src/main/openapi");

    private static final Path ROOT = Path.of("openapi.yaml");

    private static final Pattern INCLUDE = Pattern.compile("( *)\\$include:(?: (\\S+))?");
    private static final Pattern LISTED = Pattern.compile(" *- (\\S+)");

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

    /** Renews the bundle. */
    public static void main(String[] arguments) throws IOException {
        Files.writeString(BUNDLE, of(SOURCES).text());
    }

    /**
     * The files under a directory as one document, begun with its {@code openapi.yaml}.
     *
     * @throws IOException if a file is missing or cannot be read
     */
    static Bundle of(Path sources) throws IOException {
        ContractBundle bundle = new ContractBundle(sources);
        bundle.text
                .append("# Bundled from the files under src/main/openapi. Edit those, then run:\n# ")
                .append(COMMAND)
                .append('\n');
        bundle.add(ROOT, "");
        return new Bundle(bundle.text.toString(), List.copyOf(bundle.used));
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
