package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import loomwright.circuit.Plan;
import loomwright.circuit.WholeCar;
import loomwright.service.input.Json;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.Options;
import loomwright.service.limits.ServiceLimits;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The largest plan that the contract allows is answered, within the time of a calculation, and by no more than was sent. */
class LargestPlanTest {
    /** As the contract has it. */
    private static final int MOST_PARTS = 500;

    private static final Plan LARGEST = WholeCar.of(MOST_PARTS, 10, 3);
    private static final int CALCULATION_MS = 3000;

    private static Server server;

    @BeforeAll
    static void start() {
        CalculationLimits c = CalculationLimits.DEFAULT;
        server = Server.start(Options.DEFAULT
                .withPort(0)
                .withCalculation(new CalculationLimits(c.network(), c.backfeed(), c.bulk(), CALCULATION_MS)));
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static Response ask(String operation, byte[] plan) {
        return LiveService.ask(server).contentType(Json.MEDIA_TYPE).body(plan).post("/v1/plans/" + operation);
    }

    private static byte[] largest() throws JsonProcessingException {
        return new Json(ServiceLimits.DEFAULT).mapper().writeValueAsBytes(LARGEST);
    }

    /**
     * What is looked at in turn, worst first, ends with what was found by then, more on a quick machine than on a slow one; a remedy
     * may add a part to a full plan.
     */
    @ParameterizedTest
    @ValueSource(strings = {"backfeed", "mistakes", "review"})
    void answersAreHardlyLargerThanThePlan(String operation) throws JsonProcessingException {
        Response answer = ask(operation, largest());
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        assertThat(answer.asByteArray()).hasSizeLessThan(largest().length * 5 / 4);
    }

    @Test
    void onePartMoreIsRefused() {
        ObjectNode plan = (ObjectNode) new Json(ServiceLimits.DEFAULT).mapper().valueToTree(LARGEST);
        ArrayNode parts = plan.withArray("parts");
        ObjectNode more = parts.get(MOST_PARTS - 1).deepCopy();
        parts.add(more.put("id", "one-more"));
        ask("solution", plan.toString().getBytes(StandardCharsets.UTF_8))
                .then()
                .statusCode(400)
                .body("errors[0].pointer", equalTo("/parts"));
    }
}
