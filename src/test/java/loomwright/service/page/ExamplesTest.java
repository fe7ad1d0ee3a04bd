package loomwright.service.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.restassured.response.Response;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.service.ContractExamples;
import loomwright.service.input.Json;
import loomwright.service.problem.Problem;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every example of the contract is run, and answered as the contract shows. */
class ExamplesTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    /** Figures of answers are rounded to ten digits; the last may differ between machines. */
    private static final double RELATIVE = 1e-8;

    /** Names one occurrence, so it cannot be the same. */
    private static final Set<String> NOT_COMPARED = Set.of("instance");

    @TestFactory
    Stream<DynamicTest> eachExampleIsAnsweredAsShown() {
        return ContractExamples.all().stream()
                .map(example -> DynamicTest.dynamicTest(example.toString(), () -> run(example)));
    }

    private static void run(ContractExamples.Example example) throws Exception {
        Map<Integer, Map<String, JsonNode>> shown = example.responses();
        if (shown.isEmpty()) {
            assertThat(example.send(example.request()).statusCode()).isEqualTo(200);
        }
        for (Map.Entry<Integer, Map<String, JsonNode>> status : shown.entrySet()) {
            for (Map.Entry<String, JsonNode> form : status.getValue().entrySet()) {
                boolean problem = form.getKey().equals(Problem.MEDIA_TYPE);
                Response response = example.send(
                        problem ? example.request() : example.request().accept(form.getKey()));
                assertThat(response.statusCode()).isEqualTo(status.getKey());
                if (form.getKey().equals(Json.LINES)) {
                    compareLines(form.getValue().asText(), response.asString());
                } else if (form.getKey().endsWith("json")) {
                    compare("", form.getValue(), MAPPER.readTree(response.asByteArray()));
                } else {
                    assertThat(response.asString()).isEqualTo(form.getValue().asText());
                }
            }
        }
    }

    private static void compareLines(String shown, String answered) throws Exception {
        List<String> expected = shown.lines().toList();
        List<String> lines = answered.lines().toList();
        assertThat(lines).hasSameSizeAs(expected);
        for (int i = 0; i < lines.size(); i++) {
            compare("line " + (i + 1), MAPPER.readTree(expected.get(i)), MAPPER.readTree(lines.get(i)));
        }
    }

    private static void compare(String place, JsonNode shown, JsonNode answered) {
        if (shown.isNumber() && answered.isNumber()) {
            double difference = Math.abs(shown.asDouble() - answered.asDouble());
            assertThat(difference).as(place).isLessThanOrEqualTo(RELATIVE * Math.max(1, Math.abs(shown.asDouble())));
        } else if (shown.isContainerNode()) {
            assertThat(answered.getNodeType()).as(place).isEqualTo(shown.getNodeType());
            assertThat(answered).as(place).hasSize(shown.size());
            shown.forEachEntry((name, value) -> {
                if (!NOT_COMPARED.contains(name)) {
                    compare(place + "/" + name, value, answered.path(name));
                }
            });
            for (int i = 0; shown.isArray() && i < shown.size(); i++) {
                compare(place + "/" + i, shown.get(i), answered.path(i));
            }
        } else {
            assertThat(answered).as(place).isEqualTo(shown);
        }
    }
}
