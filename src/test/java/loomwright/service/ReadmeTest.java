package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the README shows is what the service answers. */
class ReadmeTest {
    private static final String START = "<!-- answer: checked by a test -->";
    private static final String END = "<!-- end of answer -->";

    @Test
    void theFirstAnswerIsTheOneShown() throws IOException {
        String readme = Files.readString(Path.of("README.md"));
        List<String> shown = readme.substring(readme.indexOf(START) + START.length(), readme.indexOf(END))
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("```"))
                .toList();
        String plan =
                LiveService.ask().get("/v1/examples/sandpiper-unguarded-bypass").asString();
        Response answer =
                LiveService.ask().contentType("application/json").body(plan).post("/v1/plans/backfeed");
        List<String> working = answer.jsonPath().getList("working.text", String.class);
        assertThat(working).startsWith(shown.toArray(String[]::new));
    }
}
