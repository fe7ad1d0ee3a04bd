package loomwright.service.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.TextNode;
import io.restassured.response.Response;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.contract.ContractBundle;
import loomwright.service.ContractExamples;
import loomwright.service.ContractExamples.Shown;
import loomwright.service.LiveService;
import loomwright.service.ShownAnswers;
import loomwright.service.input.Json;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every example of the contract is run, and answered as the contract shows. What is shown is written by
 * {@code .ci/renew-examples} and reviewed as a difference.
 */
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
        List<Shown> shown = example.shown();
        if (shown.isEmpty()) {
            assertThat(example.send(example.request()).statusCode()).isEqualTo(200);
        }
        for (Shown one : shown) {
            JsonNode expected = one.value();
            JsonNode answered = ShownAnswers.answer(one).value();
            assertThat(expected)
                    .as("%s is not among the examples. Renew them: .ci/renew-examples", one.answer())
                    .isNotEqualTo(MissingNode.getInstance());
            if (one.mediaType().equals(Json.LINES)) {
                compareLines(expected.asText(), answered.asText());
            } else {
                compare("", expected, answered);
            }
        }
    }

    @Test
    void everyResponseThatTheContractShowsIsWrittenFromTheService() {
        assertThat(ContractExamples.all())
                .allSatisfy(example -> assertThat(example.shown())
                        .hasSize(example.responses().values().stream()
                                .mapToInt(Map::size)
                                .sum()));
    }

    /** What stands in the contract is an address, so a person who follows it must find what is shown. */
    @Test
    void eachAnswerIsGivenAtTheAddressThatTheContractNames() throws Exception {
        for (Shown shown : ShownAnswers.all()) {
            Response answer = LiveService.ask().get(ContractBundle.SERVED_ANSWERS + shown.answer());
            assertThat(answer.statusCode()).as(shown.answer()).isEqualTo(200);
            JsonNode given = shown.value().isTextual()
                    ? TextNode.valueOf(answer.asString())
                    : MAPPER.readTree(answer.asByteArray());
            compare("", shown.value(), given);
        }
    }

    /** A cut list is still one that could have been answered. */
    @Test
    void whatIsShownFollowsTheContract() {
        assertThat(ShownAnswers.all().stream().filter(shown -> shown.mediaType().endsWith("/json")))
                .allSatisfy(shown -> assertThat(
                                LiveService.CLOSED.schema(shown.schema()).validate(shown.value()))
                        .as(shown.answer())
                        .isEmpty());
    }

    @Test
    void anOperationShowsOneSuccessAndOneFailure() {
        assertThat(LiveService.CONTRACT.operations()).allSatisfy(operation -> {
            List<Integer> statuses = ShownAnswers.all().stream()
                    .filter(shown -> shown.example().operation().id().equals(operation.id()))
                    .filter(shown -> shown.mediaType().endsWith("json"))
                    .map(Shown::status)
                    .toList();
            assertThat(statuses).as(operation.id()).doesNotHaveDuplicates();
        });
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
