package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.lessThan;

import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loomwright.service.input.Json;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** No calculation goes on for longer than the service is told at its start, however large its input. */
class TimeLimitTest {
    private static Server server;

    @BeforeAll
    static void start() {
        CalculationLimits c = CalculationLimits.DEFAULT;
        server = Server.start(Options.DEFAULT
                .withPort(0)
                .withCalculation(new CalculationLimits(c.network(), c.backfeed(), c.bulk(), 1)));
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static String lamps(int count, String form) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(i -> form.replace("$", String.valueOf(i)).replace("#", String.valueOf(i - 1)))
                .collect(Collectors.joining(","));
    }

    private static void expectOutOfTime(String path, String body) {
        LiveService.ask(server)
                .contentType("application/json")
                .body(body)
                .post(path)
                .then()
                .body("type", equalTo(ProblemType.OUT_OF_TIME.uri()))
                .statusCode(503);
    }

    private static String plan() {
        return "{\"schema\":\"loomwright/plan/1\",\"name\":\"lamps\",\"system\":{\"nominalVoltageV\":12},\"parts\":[{\"kind\":\"battery\",\"id\":\"p0\"},"
                + "{\"kind\":\"earth\",\"id\":\"e\"},"
                + lamps(490, "{\"kind\":\"lamp\",\"id\":\"p$\",\"ratedV\":12,\"ratedW\":5,\"meantLive\":[]}")
                + "],\"wires\":[{\"id\":\"minus\",\"from\":\"p0.minus\",\"to\":\"e.31\",\"resistanceOhm\":0.01},"
                + lamps(
                                490,
                                "{\"id\":\"w$\",\"from\":\"p#.a\",\"to\":\"p$.a\",\"resistanceOhm\":0.001},"
                                        + "{\"id\":\"r$\",\"from\":\"p$.b\",\"to\":\"e.31\",\"resistanceOhm\":0.01}")
                        .replace("p0.a", "p0.plus")
                + "]}";
    }

    @Test
    void theSolutionOfAPlanEndsAtTheLimit() {
        expectOutOfTime("/v1/plans/solution", plan());
    }

    @Test
    void aLineOfManyEndsAtTheLimitToo() {
        String answers = LiveService.ask(server)
                .contentType(Json.LINES + "; charset=utf-8")
                .body((plan() + "\n{}\n").getBytes(StandardCharsets.UTF_8))
                .post("/v1/bulk/solution")
                .asString();
        assertThat(answers.lines().toList().get(0)).contains(ProblemType.OUT_OF_TIME.uri());
        assertThat(answers.lines().toList().get(1)).contains("\"status\":400");
    }

    @Test
    void theSolutionOfANetworkEndsAtTheLimit() {
        expectOutOfTime(
                "/v1/networks/solution",
                "{\"reference\":\"0\",\"elements\":[{\"kind\":\"voltage-source\",\"id\":\"s\",\"between\":[\"n0\",\"0\"],"
                        + "\"voltageV\":12,\"resistanceOhm\":0.1},"
                        + lamps(
                                5_000,
                                "{\"kind\":\"resistor\",\"id\":\"r$\",\"between\":[\"n#\",\"n$\"],\"resistanceOhm\":0.1},"
                                        + "{\"kind\":\"lamp\",\"id\":\"l$\",\"between\":[\"n$\",\"0\"],\"ratedV\":12,\"ratedW\":5}")
                        + "]}");
    }

    private static ValidatableResponse ask(String operation, String body) {
        return LiveService.ask(server)
                .contentType("application/json")
                .body(body)
                .post("/v1/plans/" + operation)
                .then();
    }

    private static String unguarded() throws IOException {
        return Files.readString(Path.of("src/main/resources/examples/sandpiper-unguarded-bypass.json"));
    }

    @Test
    void aSearchForBackfeedsTellsWhatItDidNotLookAt() throws IOException {
        ask("backfeed?singleFaults=true", unguarded())
                .statusCode(200)
                .body("result.extent.combinations", equalTo(6))
                .body("result.extent.combinationsSearched", lessThan(6))
                .body("result.extent.switchMovesComplete", equalTo(false))
                .body("result.extent.faultsLeft", greaterThan(50));
    }

    /** The plan as drawn is judged in any case. */
    @Test
    void aReviewTellsWhatItDidNotLookAt() throws IOException {
        ask("review", unguarded())
                .statusCode(200)
                .body("result.extent.combinationsSearched", lessThan(6))
                .body("result.extent.combinationsSolved", equalTo(1))
                .body("result.findings.code", hasItem("unfused-cable"));
    }

    @Test
    void mistakesTellHowManyWereNotLookedAt() throws IOException {
        ask("mistakes", unguarded())
                .statusCode(200)
                .body("result.left", greaterThan(50))
                .body("result.mistakes.size()", lessThan(50));
    }

    @Test
    void aComparisonEndsAtTheLimit() throws IOException {
        expectOutOfTime("/v1/plans/comparison", "{\"before\":" + unguarded() + ",\"after\":" + unguarded() + "}");
    }

    @Test
    void readingsEndAtTheLimit() throws IOException {
        expectOutOfTime("/v1/plans/readings", unguarded());
    }

    @Test
    void aSheetEndsAtTheLimit() throws IOException {
        expectOutOfTime("/v1/plans/sheet", "{\"plan\":" + unguarded() + "}");
    }

    @Test
    void thePictureOfAPlanEndsAtTheLimit() {
        expectOutOfTime("/v1/plans/diagram?marks=none", plan());
    }
}
