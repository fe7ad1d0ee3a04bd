package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.hasItems;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a caller does with a backfeed answer: apply the patch of a remedy and ask again, send back what was done. */
class BackfeedRemedyTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static JsonNode example(String name) throws IOException {
        return MAPPER.readTree(LiveService.ask().get("/v1/examples/" + name).asByteArray());
    }

    private static JsonNode ask(String path, JsonNode plan) throws IOException {
        return MAPPER.readTree(LiveService.ask()
                .contentType("application/json")
                .body(plan.toString())
                .post(path)
                .then()
                .statusCode(200)
                .extract()
                .asByteArray());
    }

    /** RFC 6902, for what patches of plans are made of: places in the lists of parts and wires. */
    static JsonNode patched(JsonNode plan, JsonNode patch) {
        JsonNode changed = plan.deepCopy();
        for (JsonNode operation : patch) {
            String[] path = operation.path("path").asText().split("/", -1);
            ArrayNode list = (ArrayNode) changed.path(path[1]);
            switch (operation.path("op").asText()) {
                case "test" ->
                    assertThat(list.path(Integer.parseInt(path[2])).path(path[3]))
                            .isEqualTo(operation.path("value"));
                case "replace" -> list.set(Integer.parseInt(path[2]), operation.path("value"));
                case "add" -> {
                    assertThat(path[2]).isEqualTo("-");
                    list.add(operation.path("value"));
                }
                case "remove" -> list.remove(Integer.parseInt(path[2]));
                default -> throw new AssertionError("unknown operation " + operation);
            }
        }
        return changed;
    }

    private static List<JsonNode> feeds(JsonNode answer) {
        List<JsonNode> feeds = new ArrayList<>();
        answer.at("/result/unintendedFeeds").forEach(feeds::add);
        return feeds;
    }

    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-unguarded-bypass"})
    void everyPatchMakesAPlanInWhichTheLoadIsNoLongerFed(String name) throws IOException {
        JsonNode plan = example(name);
        int applied = 0;
        for (JsonNode feed : feeds(ask("/v1/plans/backfeed", plan))) {
            for (JsonNode remedy : feed.path("remedies")) {
                JsonNode again = ask("/v1/plans/backfeed", patched(plan, remedy.path("patch")));
                assertThat(feeds(again))
                        .as(
                                "%s: %s",
                                feed.path("load").asText(),
                                remedy.path("change").path("text").asText())
                        .filteredOn(other -> other.path("load").equals(feed.path("load")))
                        .allSatisfy(other ->
                                assertThat(other.path("severity").asText()).isEqualTo("note"));
                applied++;
            }
        }
        assertThat(applied).isGreaterThan(5);
    }

    @Test
    void whatIsSentBackAsAfterGivesTheSameFigures() throws IOException {
        JsonNode plan = example("sandpiper-unguarded-bypass");
        int sent = 0;
        for (JsonNode feed : feeds(ask("/v1/plans/backfeed", plan))) {
            for (JsonNode one : feed.path("occurrences")) {
                List<String> after = new ArrayList<>();
                one.path("after").forEach(move -> after.add(move.asText()));
                JsonNode solution = ask("/v1/plans/solution?after=" + String.join(",", after), plan);
                assertThat(solution.at("/result/steps")).hasSize(1);
                assertThat(solution.at("/result/steps/0/step")).isEqualTo(one.path("step"));
                List<JsonNode> parts = new ArrayList<>();
                solution.at("/result/steps/0/parts").forEach(parts::add);
                assertThat(parts)
                        .filteredOn(part -> part.path("part").equals(feed.path("load")))
                        .singleElement()
                        .satisfies(part -> assertThat(part.path("activity")).isEqualTo(one.path("activity")));
                sent++;
            }
        }
        assertThat(sent).isGreaterThan(5);
    }

    @Test
    void aMoveThatThereIsNotIsNamedWithWhatThereIs() throws IOException {
        LiveService.ask()
                .contentType("application/json")
                .body(example("sandpiper-as-built").toString())
                .post("/v1/plans/solution?after=lights:blue,horn:on")
                .then()
                .statusCode(422)
                .body("errors.code", hasItems("unknown-reference"));
    }
}
