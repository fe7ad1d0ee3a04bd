package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.List;
import java.util.Map;
import loomwright.answer.OutOfTime;
import loomwright.drawing.Png;
import loomwright.network.NoConvergence;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.http.Problems;
import loomwright.service.http.Reply;
import loomwright.service.input.Json;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.slf4j.LoggerFactory;

/** A fault of ours is a 500 that tells the caller nothing of our inside, and the log everything. */
class FaultsOfOursTest {
    private static final Server SERVER = Server.start(
            Options.DEFAULT.withPort(0),
            LiveService.CONTRACT,
            List.of(
                    failing("/health", "getHealth", new IllegalArgumentException("secret of ours")),
                    failing("/docs", "getDocumentation", OutOfTime.afterMs(1)),
                    failing("/openapi.yaml", "getContract", new NoConvergence(7, 0.5, List.of("lamp"))),
                    Endpoint.get("/v1/conductors", "listConductors", request -> {
                        throw new StackOverflowError("secret of ours");
                    }),
                    failing("/v1/tables", "listTables", new Png.NoFonts(new InternalError("no fonts"))),
                    Endpoint.get(
                            "/v1/examples",
                            "listExamples",
                            request ->
                                    Reply.of(Json.MEDIA_TYPE, request.json().write(Map.of("voltageV", Double.NaN))))));

    private static Endpoint failing(String path, String operationId, RuntimeException thrown) {
        return Endpoint.get(path, operationId, request -> {
            throw thrown;
        });
    }

    @AfterAll
    static void stop() {
        SERVER.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/health", "/v1/conductors"})
    void theCallerLearnsTheRequestIdAndTheLogTheStackTrace(String path) {
        ListAppender<ILoggingEvent> log = new ListAppender<>();
        log.start();
        Logger logger = (Logger) LoggerFactory.getLogger(Problems.class);
        logger.addAppender(log);
        String body = LiveService.ask(SERVER)
                .header("X-Request-Id", "fault-1")
                .get(path)
                .then()
                .statusCode(500)
                .body("type", equalTo(ProblemType.INTERNAL_ERROR.uri()))
                .body("instance", containsString("fault-1"))
                .extract()
                .asString();
        logger.detachAppender(log);
        assertThat(body).doesNotContain("secret", "Exception", "Error", "loomwright.service");
        assertThat(log.list).hasSize(1);
        assertThat(log.list.get(0).getFormattedMessage()).contains("fault-1");
        assertThat(log.list.get(0).getThrowableProxy().getMessage()).isEqualTo("secret of ours");
    }

    @Test
    void aFigureThatIsNoNumberIsAFaultOfOurs() {
        LiveService.ask(SERVER).get("/v1/examples").then().statusCode(500);
    }

    @Test
    void aMachineWithoutFontsIsToldWhatToInstall() {
        LiveService.ask(SERVER)
                .get("/v1/tables")
                .then()
                .statusCode(501)
                .body("type", equalTo(ProblemType.NO_FONTS.uri()))
                .body("detail", containsString("fonts-dejavu-core"));
    }

    @Test
    void aCalculationThatRunsOutOfTimeSaysWhichLimit() {
        // The contract of these two operations does not list 503, so the document is looked at here.
        Map.of("/docs", "1 ms", "/openapi.yaml", "steps").forEach((path, limit) -> {
            String answer = LiveService.raw(
                    SERVER, "GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
            assertThat(answer)
                    .startsWith("HTTP/1.1 503 ")
                    .contains(ProblemType.OUT_OF_TIME.uri())
                    .contains(limit);
        });
    }
}
