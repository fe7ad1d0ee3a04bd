package loomwright.distribution;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.distribution.ThirdParties.Library;
import org.junit.jupiter.api.Test;

/** Every library in the jar may be there, and its licence goes with it. */
class ThirdPartiesTest {
    @Test
    void everyLibraryHasALicenceThatIsAccepted() throws IOException {
        List<Library> libraries = ThirdParties.inTheJar();

        assertThat(libraries).hasSizeGreaterThan(30);
        assertThat(libraries)
                .filteredOn(
                        library -> library.taken().isEmpty() || library.source().isEmpty())
                .isEmpty();
    }

    /** No text is missing, none is left over. */
    @Test
    void theTextsOfTheseLicencesAreThere() throws IOException {
        Set<String> taken = ThirdParties.inTheJar().stream()
                .map(library -> library.taken() + ".txt")
                .collect(Collectors.toCollection(TreeSet::new));

        try (Stream<Path> files = Files.list(ThirdParties.LICENCES)) {
            assertThat(files.map(file -> file.getFileName().toString())).containsExactlyInAnyOrderElementsOf(taken);
        }
    }

    @Test
    void thePageNamesThemAll() throws IOException {
        assertThat(Files.readString(ThirdParties.PAGE)).isEqualTo(ThirdParties.page());
    }
}
