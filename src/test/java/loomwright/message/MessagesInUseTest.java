package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A message that nothing says is left over: its constant is named somewhere besides where it is declared. */
class MessagesInUseTest {
    /** Words that a plan or a sheet of readings may hold, which no source names one by one. */
    private static final Set<String> OF_DOCUMENTS = Set.of("connector-half-form", "connector-half-gender", "sign");

    private static final Pattern WORD = Pattern.compile("\\w+");
    /** A set of messages that is gone through, or read by name. */
    private static final Pattern TAKEN_WHOLE = Pattern.compile("(\\w+)(?:\\.values\\(\\)|\\.valueOf\\(|::valueOf)");

    @Test
    void everyConstantOfAMessageSetIsNamedWhereItIsSaid() throws IOException {
        String sources;
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            sources = files.filter(file -> file.toString().endsWith(".java"))
                    .map(MessagesInUseTest::read)
                    .collect(Collectors.joining("\n"));
        }
        Map<String, Long> named = WORD.matcher(sources)
                .results()
                .collect(Collectors.groupingBy(MatchResult::group, Collectors.counting()));
        Set<String> takenWhole =
                TAKEN_WHOLE.matcher(sources).results().map(set -> set.group(1)).collect(Collectors.toSet());
        Set<String> unused = new TreeSet<>();
        for (MessageCode code : CatalogueTest.codes()) {
            boolean oneByOne = !OF_DOCUMENTS.contains(CatalogueKey.ofSet(code.getDeclaringClass()))
                    && !takenWhole.contains(code.getDeclaringClass().getSimpleName());
            if (oneByOne && named.getOrDefault(code.name(), 0L) < 2) {
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
