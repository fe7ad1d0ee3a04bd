package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.restassured.response.Response;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import loomwright.answer.Answer;
import loomwright.answer.OutOfTime;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.RandomHarness;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.service.endpoint.Calculation;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.input.Json;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A long calculation that is asked for lines tells its progress as it goes, and stops when its client hangs up. */
class LinesTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final JsonNode PLAN = ContractExamples.good(LiveService.CONTRACT.operation("findBackfeed"))
            .body();

    private static Response ask(Server server) {
        return LiveService.ask(server)
                .contentType("application/json")
                .accept(Json.LINES)
                .body(PLAN.toString())
                .post("/v1/plans/backfeed");
    }

    private static List<String> lines(Response response) {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.contentType()).startsWith(Json.LINES);
        return response.asString().lines().toList();
    }

    /** A service whose search is replaced by another function. */
    private static Server with(Calculation<Plan, Map<String, String>> calculation) {
        return Server.start(
                Options.DEFAULT.withPort(0),
                LiveService.CONTRACT,
                List.of(Endpoint.post("/v1/plans/backfeed", "findBackfeed", calculation)));
    }

    private static Answer<Map<String, String>> answer() {
        return new Answer<>(Map.of(), List.of(), List.of(), List.of());
    }

    @Test
    void theLastLineIsTheAnswerThatJsonWouldBe() throws Exception {
        try (Server server = Server.start(Options.DEFAULT.withPort(0))) {
            List<String> lines = lines(ask(server));
            assertThat(MAPPER.readTree(lines.get(0)).at("/progress/of").asInt()).isPositive();
            Response json = LiveService.ask(server)
                    .contentType("application/json")
                    .body(PLAN.toString())
                    .post("/v1/plans/backfeed");
            assertThat(MAPPER.readTree(lines.get(lines.size() - 1)).path("answer"))
                    .isEqualTo(MAPPER.readTree(json.asByteArray()));
        }
    }

    @Test
    void eachReportOfProgressIsALine() {
        try (Server server = with(Calculation.watched(Plan.class, 60_000, (plan, progress) -> {
            progress.at(1, 3);
            progress.at(2, 3);
            return answer();
        }))) {
            String body = LiveService.raw(server, request());
            assertThat(body)
                    .contains("{\"progress\":{\"done\":1,\"of\":3}}\n", "{\"progress\":{\"done\":2,\"of\":3}}\n");
        }
    }

    @Test
    void whatGoesWrongBeforeTheFirstLineIsAProblemWithItsStatus() {
        try (Server server = with(Calculation.watched(Plan.class, 60_000, (plan, progress) -> {
            throw OutOfTime.afterMs(1);
        }))) {
            ask(server).then().statusCode(503).body("type", equalTo(ProblemType.OUT_OF_TIME.uri()));
        }
    }

    @Test
    void whatGoesWrongAfterwardsIsTheLastLine() throws Exception {
        try (Server server = with(Calculation.watched(Plan.class, 60_000, (plan, progress) -> {
            progress.at(1, 3);
            throw OutOfTime.afterMs(1);
        }))) {
            List<String> lines = lines(ask(server));
            assertThat(lines).hasSize(2);
            assertThat(MAPPER.readTree(lines.get(1)).at("/problem/status").asInt())
                    .isEqualTo(503);
        }
    }

    @Test
    void aClientThatHangsUpEndsTheWork() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        AtomicReference<Throwable> why = new AtomicReference<>();
        try (Server server = with(Calculation.watched(Plan.class, 60_000, (plan, progress) -> {
            try {
                for (long done = 0; done < Long.MAX_VALUE; done++) {
                    progress.at(done, Long.MAX_VALUE);
                    begun.countDown();
                }
            } catch (RuntimeException e) {
                why.set(e);
                throw e;
            } finally {
                ended.countDown();
            }
            return answer();
        }))) {
            try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
                socket.getOutputStream().write(request().getBytes(StandardCharsets.UTF_8));
                socket.getOutputStream().flush();
                assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
            }
            assertThat(ended.await(30, TimeUnit.SECONDS)).isTrue();
            assertThat(why.get()).isInstanceOf(UncheckedIOException.class);
        }
    }

    @Test
    void aClientThatHangsUpEndsASearchOfCombinations() throws Exception {
        // 262,144 combinations: without a time limit that matters, it is the client that ends it.
        BackfeedLimits limits = new BackfeedLimits(1 << 18, 1, 1, 1, 3_600_000);
        BackfeedSearch search = new BackfeedSearch(limits, NetworkLimits.defaults());
        AtomicLong told = new AtomicLong();
        CompletableFuture<Throwable> ended = new CompletableFuture<>();
        try (Server server = with(Calculation.watched(Plan.class, 60_000, (plan, progress) -> {
            try {
                search.find(RandomHarness.of(3, 18, 3), (done, of) -> {
                    told.set(done);
                    progress.at(done, of);
                });
            } catch (RuntimeException e) {
                ended.complete(e);
                throw e;
            }
            ended.complete(new AssertionError("it went on to the end"));
            return answer();
        }))) {
            try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
                socket.getOutputStream().write(request().getBytes(StandardCharsets.UTF_8));
                socket.getOutputStream().flush();
                String head = new String(socket.getInputStream().readNBytes(15), StandardCharsets.UTF_8);
                assertThat(head).isEqualTo("HTTP/1.1 200 OK");
            }
            assertThat(ended.get(60, TimeUnit.SECONDS)).isInstanceOf(UncheckedIOException.class);
            assertThat(told.get()).isLessThan(1 << 18);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"backfeed", "mistakes", "review", "comparison"})
    void otherLongWorkTellsItsProgressToo(String work) throws Exception {
        try (Server server = Server.start(Options.DEFAULT.withPort(0))) {
            String plan = LiveService.ask(server)
                    .get("/v1/examples/sandpiper-unguarded-bypass")
                    .asString();
            String asked = work.equals("comparison") ? "{\"before\":" + plan + ",\"after\":" + plan + "}" : plan;
            Response response = LiveService.ask(server)
                    .contentType("application/json")
                    .accept(Json.LINES)
                    .body(asked)
                    .post("/v1/plans/" + work);
            List<JsonNode> lines = new ArrayList<>();
            for (String line : lines(response)) {
                lines.add(MAPPER.readTree(line));
            }
            assertThat(lines.get(lines.size() - 1).at("/answer/result").isObject())
                    .isTrue();
            List<JsonNode> progress = lines.subList(0, lines.size() - 1);
            assertThat(progress).hasSizeGreaterThan(1).allMatch(line -> line.has("progress"));
            assertThat(progress.stream().map(line -> line.at("/progress/done").asLong()))
                    .isSorted();
            assertThat(progress.stream()
                            .map(line -> line.at("/progress/of").asLong())
                            .distinct())
                    .hasSize(1);
        }
    }

    private static String request() {
        String body = PLAN.toString();
        return "POST /v1/plans/backfeed HTTP/1.1\r\nHost: x\r\nConnection: close\r\nContent-Type: application/json\r\n"
                + "Accept: application/x-ndjson\r\nContent-Length: " + body.getBytes(StandardCharsets.UTF_8).length
                + "\r\n\r\n" + body;
    }
}
