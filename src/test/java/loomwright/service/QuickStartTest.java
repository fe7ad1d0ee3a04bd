package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is to be copied from docs/quick-start.md is run as it stands there, and answers as it says there. */
class QuickStartTest {
    private static final Path PAGE = Path.of("docs/quick-start.md");
    private static final Pattern COMMAND_AND_ANSWER =
            Pattern.compile("```sh\n(.*?)```\n\n```answer\n(.*?)```", Pattern.DOTALL);
    private static final String ADDRESS = "http://127.0.0.1:8080";
    private static final long LONGEST_S = 300;

    @TempDir
    private Path folder;

    static Stream<String[]> commands() throws IOException {
        return COMMAND_AND_ANSWER.matcher(Files.readString(PAGE)).results().map((MatchResult found) ->
                new String[] {found.group(1), found.group(2)});
    }

    @Test
    void eachCommandHasItsAnswer() throws IOException {
        String page = Files.readString(PAGE);
        assertThat(commands().count())
                .isEqualTo(page.split("```sh", -1).length - 1)
                .isEqualTo(page.split("\n## ", -1).length - 1);
    }

    @ParameterizedTest
    @MethodSource("commands")
    void theAnswerIsTheOneShown(String command, String answer) throws Exception {
        for (String tool : List.of("bash", "curl", "python3")) {
            boolean there = Arrays.stream(System.getenv("PATH").split(":", -1))
                    .anyMatch(path -> Files.isExecutable(Path.of(path, tool)));
            assumeTrue(there, "no " + tool + " on this machine");
        }
        Path out = folder.resolve("out");
        Process process = new ProcessBuilder("bash", "-euc", command.replace(ADDRESS, LiveService.address()))
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(out.toFile())
                .start();
        assertThat(process.waitFor(LONGEST_S, TimeUnit.SECONDS)).isTrue();
        assertThat(Files.readString(out, StandardCharsets.UTF_8).stripTrailing())
                .startsWith(answer.stripTrailing());
    }
}
