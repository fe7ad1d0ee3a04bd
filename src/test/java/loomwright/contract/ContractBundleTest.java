package loomwright.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import loomwright.contract.ContractBundle.Bundle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code openapi.yaml} is what the files under {@code src/main/openapi} say. */
class ContractBundleTest {
    private static final int MOST_LINES = 600;
    private static final int MOST_BYTES = 420_000;
    private static final int MOST_PACKED_BYTES = 80_000;
    private static final int LONG_DESCRIPTION = 90;
    private static final Pattern DESCRIPTION = Pattern.compile("\\bdescription: ('[^']*'|[^'|{][^,{}]*)");

    @Test
    void theBundleIsUpToDate() throws IOException {
        assertThat(Files.readString(ContractBundle.BUNDLE))
                .as("openapi.yaml differs from the files under src/main/openapi. Renew it: %s", ContractBundle.COMMAND)
                .isEqualTo(ContractBundle.of(ContractBundle.SOURCES).text());
        assertThat(Files.readString(ContractBundle.ANSWERS))
                .as("%s renews it", ContractBundle.COMMAND)
                .isEqualTo(ContractBundle.answers(ContractBundle.SOURCES).text());
    }

    /** Made small, it still says what the files say: the same data with every level two blanks deep. */
    @Test
    void aLevelIsOneBlankDeep() throws IOException {
        String wide = """
                a:
                    text: |
                        first

                          deeper
                    list:
                    - {b: 1}
                    - c: 2
                      d:
                        - e
                f: 3
                """;
        String narrow = ContractBundle.narrowed(wide);
        assertThat(narrow.lines())
                .containsExactly(
                        "a:",
                        " text: |",
                        "  first",
                        "",
                        "    deeper",
                        " list:",
                        " - {b: 1}",
                        " - c: 2",
                        "   d:",
                        "    - e",
                        "f: 3");
        YAMLMapper yaml = new YAMLMapper();
        assertThat(yaml.readTree(narrow)).isEqualTo(yaml.readTree(wide));
        assertThat(yaml.readTree(ContractBundle.BUNDLE.toFile())).isNotNull();
    }

    /** A comma in a description that stands in braces without quotes ends it, and what follows becomes a key. */
    @Test
    void noDescriptionIsCutByAComma() throws IOException {
        List<String> cut = new ArrayList<>();
        keysWithoutValue(new YAMLMapper().readTree(ContractBundle.BUNDLE.toFile()), cut);
        assertThat(cut).as("put the description in quotes").isEmpty();
    }

    private static void keysWithoutValue(JsonNode node, List<String> found) {
        node.forEachEntry((name, value) -> {
            if (value.isNull()) {
                found.add(name);
            }
            keysWithoutValue(value, found);
        });
        if (node.isArray()) {
            node.forEach(value -> keysWithoutValue(value, found));
        }
    }

    /** What a reader takes in before the first call: an integrator fetches it, a program keeps it in mind. */
    @Test
    void itIsSmall() throws IOException {
        byte[] contract = Files.readAllBytes(ContractBundle.BUNDLE);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(contract);
        }
        assertThat(contract.length).isLessThan(MOST_BYTES);
        assertThat(packed.size()).isLessThan(MOST_PACKED_BYTES);
    }

    @Test
    void everyFileIsUsedOnceAndShortEnoughToEdit() throws IOException {
        List<Path> used =
                new ArrayList<>(ContractBundle.of(ContractBundle.SOURCES).used());
        used.addAll(ContractBundle.answers(ContractBundle.SOURCES).used());
        assertThat(used).doesNotHaveDuplicates();
        try (Stream<Path> files = Files.walk(ContractBundle.SOURCES)) {
            assertThat(files.filter(Files::isRegularFile).map(ContractBundle.SOURCES::relativize))
                    .containsExactlyInAnyOrderElementsOf(used);
        }
        for (Path file : used) {
            assertThat(Files.readAllLines(ContractBundle.SOURCES.resolve(file)))
                    .as(file.toString())
                    .hasSizeLessThanOrEqualTo(MOST_LINES);
        }
    }

    /** What several places need stands once, under a name of its own. */
    @Test
    void noLongDescriptionIsWrittenTwice() throws IOException {
        try (Stream<String> lines = Files.lines(ContractBundle.BUNDLE)) {
            assertThat(lines.flatMap(line -> DESCRIPTION.matcher(line).results())
                            .map(found -> found.group(1))
                            .filter(text -> text.length() >= LONG_DESCRIPTION))
                    .doesNotHaveDuplicates();
        }
    }

    /** Generators name a model for such a parameter and don't write it: the client does not compile. */
    @Test
    void noReferenceLeadsIntoASchema() throws IOException {
        try (Stream<String> lines = Files.lines(ContractBundle.BUNDLE)) {
            assertThat(lines.filter(line -> line.contains("$ref:") && line.contains("/properties/")))
                    .isEmpty();
        }
    }

    /** Generators make up a name for it that ends in "Inner". A row of a table has any columns and needs no model. */
    @Test
    void everyObjectOfAListHasAName() throws IOException {
        JsonNode document = new YAMLMapper().readTree(ContractBundle.BUNDLE.toFile());
        for (JsonNode items : document.findValues("items")) {
            assertThat(items.has("properties")).as(items.toString()).isFalse();
            assertThat(items.has("oneOf")).as(items.toString()).isFalse();
        }
    }

    @Test
    void anIncludedFileTakesTheIndentationOfItsLine(@TempDir Path directory) throws IOException {
        Files.write(
                directory.resolve("openapi.yaml"),
                List.of("a:", "  $include:", "    - one.yaml", "    - two.yaml", "z:", "  - $include: no directive"));
        Files.write(directory.resolve("one.yaml"), List.of("b: |", "  text", "", "  text # kept"));
        Files.write(directory.resolve("two.yaml"), List.of("c:", "  $include: three.yaml"));
        Files.write(directory.resolve("three.yaml"), List.of("d: 1"));
        Bundle bundle = ContractBundle.of(directory);
        assertThat(bundle.text().lines().filter(line -> !line.startsWith("#")))
                .containsExactly(
                        "a:",
                        " b: |",
                        "  text",
                        "",
                        "  text # kept",
                        " c:",
                        "  d: 1",
                        "z:",
                        " - $include: no directive");
        assertThat(bundle.used().stream().map(Path::toString))
                .containsExactly("openapi.yaml", "one.yaml", "two.yaml", "three.yaml");
    }

    @Test
    void aMissingFileIsNamed(@TempDir Path directory) throws IOException {
        Files.write(directory.resolve("openapi.yaml"), List.of("$include: paths/none.yaml"));
        assertThatThrownBy(() -> ContractBundle.of(directory))
                .isInstanceOf(NoSuchFileException.class)
                .hasMessageContaining("none.yaml");
    }
}
