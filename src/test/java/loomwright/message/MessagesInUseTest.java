package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A message that nothing says is left over: its constant is named somewhere besides where it is declared. */
class MessagesInUseTest {
    /** Words that a plan or a sheet of readings may hold, which no source names one by one. */
    private static final Set<String> OF_DOCUMENTS = Set.of("connector-half-form", "connector-half-gender", "sign");

    @Test
    void everyConstantOfAMessageSetIsNamedWhereItIsSaid() throws IOException {
        String sources;
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            sources = files.filter(file -> file.toString().endsWith(".java"))
                    .map(MessagesInUseTest::read)
                    .collect(Collectors.joining("\n"));
        }
        Set<String> unused = new TreeSet<>();
        for (MessageCode code : CatalogueTest.codes()) {
            boolean ownSet = !OF_DOCUMENTS.contains(CatalogueKey.ofSet(code.getDeclaringClass()))
                    && !sources.contains(code.getDeclaringClass().getSimpleName() + ".values()")
                    && !sources.contains(code.getDeclaringClass().getSimpleName() + ".valueOf(")
                    && !sources.contains(code.getDeclaringClass().getSimpleName() + "::valueOf");
            long named = Pattern.compile("\\b" + code.name() + "\\b")
                    .matcher(sources)
                    .results()
                    .limit(2)
                    .count();
            if (ownSet && named < 2) {
                unused.add(code.key());
            }
        }
        assertThat(unused).isEmpty();
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }
}
