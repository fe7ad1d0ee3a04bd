package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An answer says each thing once, and as much as is asked for. */
class AskForLessTest {
    private static final JsonMapper JSON = new JsonMapper();
    private static final double NOTHING_A = 1e-6;
    private static final String PLAN =
            LiveService.ask().get("/v1/examples/sandpiper-unguarded-bypass").asString();

    private static Response ask(String pathAndQuery) {
        return LiveService.ask().contentType("application/json").body(PLAN).post("/v1/plans/" + pathAndQuery);
    }

    private static JsonNode result(String pathAndQuery) throws IOException {
        Response answer = ask(pathAndQuery);
        assertThat(answer.statusCode()).isEqualTo(200);
        return JSON.readTree(answer.asString()).path("result");
    }

    private static List<JsonNode> list(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).toList();
    }

    @Test
    void aRowThatIsNotListedCarriesNothingAndShouldNotBeLive() throws IOException {
        List<JsonNode> usual = list(result("solution").path("steps"));
        List<JsonNode> full = list(result("solution?full=true").path("steps"));
        int left = 0;
        for (int i = 0; i < full.size(); i++) {
            boolean again = usual.get(i).has("sameAs");
            for (String table : List.of("wires", "parts", "connectors")) {
                List<JsonNode> told = list(usual.get(i).path(table));
                List<JsonNode> all = new ArrayList<>(list(full.get(i).path(table)));
                assertThat(all).containsAll(told);
                all.removeAll(told);
                for (JsonNode row : again ? List.<JsonNode>of() : all) {
                    assertThat(row.findValues("currentA"))
                            .allSatisfy(current ->
                                    assertThat(Math.abs(current.asDouble())).isLessThan(NOTHING_A));
                    assertThat(row.path("meantLive").asBoolean()).isFalse();
                    left++;
                }
            }
        }
        assertThat(left).isGreaterThan(100);
    }

    @Test
    void aStepThatRepeatsAnEarlierOneNamesIt() throws IOException {
        List<JsonNode> usual = list(result("solution").path("steps"));
        List<JsonNode> full = list(result("solution?full=true").path("steps"));
        JsonNode last = usual.get(usual.size() - 1);
        assertThat(last.path("sameAs").asText()).isEqualTo("off");
        assertThat(last.path("nodes")).isEmpty();
        assertThat(full.get(full.size() - 1).path("nodes"))
                .isNotEmpty()
                .isEqualTo(full.get(0).path("nodes"));
        assertThat(full.get(full.size() - 1).path("parts"))
                .isEqualTo(full.get(0).path("parts"));
        assertThat(full).noneMatch(step -> step.has("sameAs"));
        // No step is said to be the same that is not: those with figures of their own differ.
        assertThat(usual.stream().filter(step -> !step.has("sameAs")).map(step -> step.path("nodes")))
                .doesNotHaveDuplicates();
    }

    @Test
    void eachTerminalStandsOnceUnderTheNodes() throws IOException {
        JsonNode whole = result("solution");
        List<String> terminals = new ArrayList<>();
        whole.path("nodes").forEach(node -> node.path("terminals").forEach(each -> terminals.add(each.asText())));
        assertThat(terminals).doesNotHaveDuplicates().contains("battery.plus", "coil.15");
        List<String> nodes = whole.path("nodes").findValuesAsText("node");
        whole.path("steps")
                .forEach(
                        step -> assertThat(nodes).containsAll(step.path("nodes").findValuesAsText("node")));
    }

    @Test
    void stepsAndTablesAreChosen() throws IOException {
        JsonNode whole = result("solution?full=true");
        JsonNode chosen = result("solution?step=crank,run&only=wires&full=true");
        assertThat(chosen.path("nodes")).isEmpty();
        assertThat(chosen.path("steps").findValuesAsText("step")).containsExactly("run", "crank");
        assertThat(chosen.at("/steps/1/wires")).isNotEmpty().isEqualTo(whole.at("/steps/3/wires"));
        assertThat(chosen.at("/steps/1/parts")).isEmpty();
        assertThat(chosen.at("/steps/1/nodes")).isEmpty();
    }

    @Test
    void aTableHasTheRowsOfTheFullAnswer() throws IOException {
        JsonNode wires = result("solution?step=run&only=wires&full=true").at("/steps/0/wires");
        assertThat(ask("solution?step=run&only=wires&format=csv").asString().lines())
                .hasSize(wires.size() + 1);
    }

    @ParameterizedTest
    @CsvSource({
        "solution?step=run&after=key:run, 422, step",
        "solution?step=idle, 400, step",
        "solution?only=points, 400, only",
        "mistakes?limit=0, 400, limit",
        "backfeed?severity=bad, 400, severity"
    })
    void whatDoesNotGoTogetherOrIsNotThereIsNamed(String asked, int status, String parameter) {
        Response answer = ask(asked);
        assertThat(answer.statusCode()).isEqualTo(status);
        assertThat(answer.jsonPath().getString("errors[0].parameter")).isEqualTo(parameter);
        assertThat(answer.jsonPath().getString("errors[0].place")).endsWith(parameter);
    }

    @Test
    void mistakesAreCutBehindTheWorstAndTheOthersCounted() throws IOException {
        JsonNode all = result("mistakes?limit=10000&details=true");
        JsonNode usual = result("mistakes");
        assertThat(usual.path("mistakes")).hasSize(50);
        assertThat(usual.path("notListed").asInt())
                .isEqualTo(all.path("mistakes").size() - 50);
        for (int i = 0; i < 50; i++) {
            JsonNode told = usual.path("mistakes").path(i);
            JsonNode same = all.path("mistakes").path(i);
            assertThat(told.path("description")).isEqualTo(same.path("description"));
            assertThat(told.path("summary")).isEqualTo(same.path("summary"));
            assertThat(told.path("notices")).isEmpty();
        }
        long notes = list(all.path("mistakes")).stream()
                .filter(mistake -> mistake.path("severity").asText().equals("note"))
                .count();
        assertThat(result("mistakes?limit=10000&severity=warning")
                        .path("notListed")
                        .asLong())
                .isEqualTo(notes)
                .isPositive();
    }

    @Test
    void feedsLessSeriousThanAskedForAreCounted() throws IOException {
        JsonNode all = result("backfeed");
        JsonNode dangers = result("backfeed?severity=danger");
        assertThat(dangers.path("unintendedFeeds").findValuesAsText("severity"))
                .isNotEmpty()
                .containsOnly("danger");
        assertThat(dangers.path("notListed").asInt())
                .isEqualTo(all.path("unintendedFeeds").size()
                        - dangers.path("unintendedFeeds").size())
                .isPositive();
    }
}
