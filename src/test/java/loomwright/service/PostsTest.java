package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.operation.Step;
import loomwright.service.form.TruncatedMarkdown;
import loomwright.service.stream.BulkOperations;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers that go into a forum post: every answer that has a table, on request no longer than the forum takes. */
class PostsTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Set<String> LISTS = Set.of("convertPlan", "getTemplate");

    @TestFactory
    Stream<DynamicTest> everyTableIsAlsoATextForAPost() {
        return LiveService.CONTRACT.operations().stream()
                .map(ContractExamples::good)
                .filter(example -> content(example).has("text/csv"))
                // Its table is one of many answers.
                .filter(example -> !example.operation().id().equals(BulkOperations.ID))
                // Theirs is a list of wires, to be sent back as it is.
                .filter(example -> !LISTS.contains(example.operation().id()))
                .map(example -> DynamicTest.dynamicTest(example.toString(), () -> {
                    String whole = post(example, "format=markdown");
                    assertThat(whole).containsPattern("(?m)^## ").doesNotContain("null", "NaN");
                    String cut = post(example, "format=markdown&maxLength=" + TruncatedMarkdown.SHORTEST);
                    assertThat(cut).hasSizeLessThanOrEqualTo(TruncatedMarkdown.SHORTEST);
                    JsonNode answer = MAPPER.readTree(answer(example));
                    for (JsonNode caution : answer.path("cautions")) {
                        assertThat(whole).contains(caution.path("text").asText());
                        assertThat(cut).contains(caution.path("text").asText());
                    }
                    assertThat(whole.contains("## Working"))
                            .isEqualTo(!answer.path("working").isEmpty());
                    assertThat(whole.contains("## Sources"))
                            .isEqualTo(!answer.path("basis").isEmpty());
                    if (whole.length() > TruncatedMarkdown.SHORTEST) {
                        assertThat(cut).containsPattern("(?m)^\\*.*" + TruncatedMarkdown.SHORTEST + ".*\\*$");
                    } else {
                        assertThat(cut).isEqualTo(whole);
                    }
                }));
    }

    private static JsonNode content(ContractExamples.Example example) {
        return example.answer().path("content");
    }

    private static String answer(ContractExamples.Example example) {
        return example.request()
                .request(example.operation().method(), example.url())
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    private static String post(ContractExamples.Example example, String query) {
        String url = example.url() + (example.url().contains("?") ? "&" : "?") + query;
        return example.request()
                .request(example.operation().method(), url)
                .then()
                .statusCode(200)
                .contentType("text/markdown; charset=utf-8")
                .extract()
                .asString();
    }

    @Test
    void aPlanIsGivenWithTheWorstFirst() {
        String plan =
                LiveService.ask().get("/v1/examples/sandpiper-unguarded-bypass").asString();
        String post = LiveService.ask()
                .contentType("application/json")
                .body(plan)
                .post("/v1/plans/backfeed?format=markdown")
                .asString();
        String remedy = LiveService.ask()
                .contentType("application/json")
                .body(plan)
                .post("/v1/plans/backfeed")
                .path("result.unintendedFeeds[0].remedies[0].change.text");
        assertThat(post)
                .startsWith(
                        "# Sandpiper 1500, unguarded bypass\n\n## Live when it should be off\n\n- **danger**: The starter")
                .contains("Remedy: " + remedy);
    }

    @Test
    void readingsHaveAColumnForEachStep() {
        String plan = LiveService.ask().get("/v1/examples/sandpiper-as-built").asString();
        String post = LiveService.ask()
                .contentType("application/json")
                .body(plan)
                .post("/v1/plans/solution?format=markdown")
                .asString();
        assertThat(post)
                .contains("| " + Step.OFF.text() + " | " + Step.ACCESSORY.text() + " | ")
                .containsPattern("(?m)^\\| key\\.30( \\| 1[0-9](\\.[0-9])? V){7} \\|$")
                .containsPattern("(?m)^\\| starter\\.33( \\| [-0-9.]+ V){7} \\|$");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "1999", "1000001", "2000.5", "long", "-2000"})
    void aLimitThatNothingFitsIntoIsRefused(String limit) {
        LiveService.ask()
                .get("/v1/resistance?network=6&format=markdown&maxLength=" + limit)
                .then()
                .statusCode(400);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2000", "2000.0", "2e3"})
    void aWholeNumberMayBeWrittenInAnyWay(String limit) {
        LiveService.ask()
                .get("/v1/resistance?network=6&format=markdown&maxLength=" + limit)
                .then()
                .statusCode(200);
    }

    @Test
    void theLimitSaysNothingToOtherForms() {
        String url = "/v1/conductors?format=csv";
        assertThat(LiveService.ask().get(url + "&maxLength=2000").asString())
                .isEqualTo(LiveService.ask().get(url).asString());
    }
}
