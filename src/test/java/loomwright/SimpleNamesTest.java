package loomwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** One simple name, one class: two of one name in two packages read as one. */
class SimpleNamesTest {
    @Test
    void noTwoFilesDeclareAClassOfTheSameName() throws IOException {
        List<String> names = new ArrayList<>();
        for (String sources : List.of("src/main/java", "src/test/java")) {
            try (Stream<Path> files = Files.walk(Path.of(sources))) {
                files.map(file -> file.getFileName().toString())
                        .filter(name -> name.endsWith(".java") && !name.equals("package-info.java"))
                        .forEach(names::add);
            }
        }
        assertThat(names).hasSizeGreaterThan(1000).doesNotHaveDuplicates();
    }
}
