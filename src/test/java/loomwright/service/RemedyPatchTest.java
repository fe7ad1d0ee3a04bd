package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/**
 * Whoever applies the patch of a remedy to the document that was sent, as RFC 6902 says and without knowing what a plan is, and
 * asks again, finds the load cured.
 */
class RemedyPatchTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    /** The operations that remedies use, each as in RFC 6902, section 4. */
    private static JsonNode patched(JsonNode document, JsonNode patch) {
        JsonNode changed = document.deepCopy();
        for (JsonNode operation : patch) {
            String path = operation.get("path").asText();
            int slash = path.lastIndexOf('/');
            String last = path.substring(slash + 1);
            switch (operation.get("op").asText()) {
                case "test" -> assertThat(changed.at(path)).isEqualTo(operation.get("value"));
                case "add" -> {
                    assertThat(last).isEqualTo("-");
                    ((ArrayNode) changed.at(path.substring(0, slash))).add(operation.get("value"));
                }
                case "replace" ->
                    ((ArrayNode) changed.at(path.substring(0, slash)))
                            .set(Integer.parseInt(last), operation.get("value"));
                case "remove" -> ((ArrayNode) changed.at(path.substring(0, slash))).remove(Integer.parseInt(last));
                default -> throw new AssertionError(operation);
            }
        }
        return changed;
    }

    private static JsonNode search(JsonNode plan) throws IOException {
        return MAPPER.readTree(LiveService.ask()
                        .contentType("application/json")
                        .body(plan.toString())
                        .post("/v1/plans/backfeed?cure=true")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .get("result");
    }

    /** Loads that get more than a trickle. */
    private static List<String> fed(JsonNode report) {
        return StreamSupport.stream(report.get("unintendedFeeds").spliterator(), false)
                .filter(feed -> !feed.get("severity").asText().equals("note"))
                .map(feed -> feed.get("load").asText())
                .toList();
    }

    private static List<String> strings(JsonNode array) {
        List<String> strings = new ArrayList<>();
        array.forEach(one -> strings.add(one.asText()));
        return strings;
    }

    @Test
    void everyRemedyOfEveryExampleCuresItsLoadAndTheCureAllThatItSays() throws IOException {
        int remedies = 0;
        int cures = 0;
        for (String name : Plans.exampleNames()) {
            JsonNode plan = MAPPER.readTree(
                    LiveService.ask().get("/v1/examples/" + name).asString());
            JsonNode report = search(plan);
            for (JsonNode feed : report.get("unintendedFeeds")) {
                for (JsonNode remedy : feed.get("remedies")) {
                    assertThat(fed(search(patched(plan, remedy.get("patch")))))
                            .as(name + ": " + remedy.get("change"))
                            .doesNotContain(feed.get("load").asText());
                    remedies++;
                }
            }
            if (report.has("cure")) {
                JsonNode cure = report.get("cure");
                List<String> left = fed(search(patched(plan, cure.get("patch"))));
                assertThat(left).as(name).isEqualTo(strings(cure.get("remaining")));
                assertThat(fed(report)).containsAll(strings(cure.get("cures")));
                assertThat(left).doesNotContainAnyElementsOf(strings(cure.get("cures")));
                cures++;
            }
        }
        assertThat(remedies).isGreaterThan(3);
        assertThat(cures).isPositive();
    }
}
