package loomwright.bulk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files and folders are one row of lines. */
class B02_PlanFilesTest {
    private static final int LONGEST = 20;

    /** Lists in which each line is a car. */
    private static final ListFiles LISTS = new ListFiles() {
        @Override
        public boolean isNamedSo(String name) {
            return name.endsWith(".csv");
        }

        @Override
        public @Nullable LineSource cars(InputStream in, int longest, boolean evenWithoutTable) throws IOException {
            return evenWithoutTable || in.available() > 1 ? new LineReader(in, longest) : null;
        }
    };

    @TempDir
    private Path folder;

    @BeforeEach
    void writeFiles() throws IOException {
        Files.createDirectory(folder.resolve("club"));
        Files.writeString(folder.resolve("b.json"), "{\n  \"b\": 1\n}\n");
        Files.writeString(folder.resolve("a.ndjson"), "one\ntwo\r\n\nfour");
        Files.writeString(folder.resolve("club/c.JSONL"), "five\n");
        Files.writeString(folder.resolve("club/long.json"), "x".repeat(LONGEST + 1));
        Files.writeString(folder.resolve("notes.txt"), "not asked for");
    }

    private List<String> all(Path... given) throws IOException {
        List<String> lines = new ArrayList<>();
        try (PlanFiles files = PlanFiles.find(List.of(given), LISTS, LONGEST)) {
            for (Line line = files.next(); line != null; line = files.next()) {
                lines.add(folder.relativize(Path.of(String.valueOf(line.file()))) + ":" + line.number() + " "
                        + (line.isTooLong() ? "too long" : new String(line.text(), StandardCharsets.UTF_8)));
            }
            assertThat(files.passedBytes()).isEqualTo(files.totalBytes());
        }
        return lines;
    }

    @Test
    void aFolderGivesAllItsPlansInTheOrderOfTheirNames() throws IOException {
        assertThat(all(folder))
                .containsExactly(
                        "a.ndjson:1 one",
                        "a.ndjson:2 two",
                        "a.ndjson:3 ",
                        "a.ndjson:4 four",
                        "b.json:1 {\n  \"b\": 1\n}\n",
                        "club/c.JSONL:1 five",
                        "club/long.json:1 too long");
    }

    @Test
    void aFileThatIsNamedIsTakenWhateverItIsCalled() throws IOException {
        assertThat(all(folder.resolve("notes.txt"), folder.resolve("club/c.JSONL")))
                .containsExactly("notes.txt:1 not asked for", "club/c.JSONL:1 five");
    }

    @Test
    void aListGivesALineForEachOfItsCars() throws IOException {
        Files.writeString(folder.resolve("club/d.csv"), "one\ntwo\n");
        Files.writeString(folder.resolve("club/e.csv"), "");
        Files.writeString(folder.resolve("club/~$d.csv"), "opened by somebody");
        Files.writeString(folder.resolve("club/f.csv"), "x".repeat(LONGEST + 1));
        assertThat(all(folder.resolve("club")))
                .containsExactly(
                        "club/c.JSONL:1 five",
                        "club/d.csv:1 one",
                        "club/d.csv:2 two",
                        "club/f.csv:1 too long",
                        "club/long.json:1 too long");
    }

    @Test
    void aFileThatIsNotThereIsToldBeforeAnythingIsRead() {
        assertThatThrownBy(() -> PlanFiles.find(List.of(folder, folder.resolve("no-such")), LISTS, LONGEST))
                .isInstanceOf(NoSuchFileException.class)
                .hasMessageContaining("no-such");
    }
}
