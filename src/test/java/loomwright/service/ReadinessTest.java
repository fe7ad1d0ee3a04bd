package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.endpoint.Monitoring;
import loomwright.service.http.Reply;
import loomwright.service.input.Json;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.Test;

/** When a load balancer may send requests. */
class ReadinessTest {
    private static Server started(Monitoring vitals, int drainMs) {
        return Server.start(
                Options.DEFAULT.withPort(0).withLimits(Limits.with(Map.of("drainMs", drainMs))),
                LiveService.CONTRACT,
                List.of(
                        Endpoint.get("/health", "getHealth", request -> Reply.of(Json.MEDIA_TYPE, "{}")),
                        Endpoint.get("/ready", "getReadiness", vitals.readiness()::handle)),
                vitals);
    }

    @Test
    void whileItWarmsUpItIsHealthyButNotReady() {
        Monitoring vitals = Monitoring.fresh();
        vitals.readiness().warmingUp();
        try (Server server = started(vitals, 0)) {
            LiveService.ask(server)
                    .get("/ready")
                    .then()
                    .statusCode(503)
                    .header("Retry-After", "1")
                    .header("Cache-Control", "no-store")
                    .body("type", equalTo(ProblemType.NOT_READY.uri()))
                    .body("detail", equalTo("The service is warming up."));
            vitals.readiness().warm();
            LiveService.ask(server).get("/ready").then().statusCode(200).body("status", equalTo("ready"));
        }
    }

    @Test
    void aStopIsSaidWhileRequestsStillAreAnswered() {
        Monitoring vitals = Monitoring.fresh();
        Server server = started(vitals, 3_000);
        CompletableFuture<Void> stop = CompletableFuture.runAsync(server::close);
        int status = 200;
        while (status == 200) {
            status = LiveService.ask(server).get("/ready").statusCode();
        }
        assertThat(status).isEqualTo(503);
        assertThat(stop.isDone()).isFalse();
        stop.join();
    }

    @Test
    void theEndOfWarmingUpDoesNotCallAStopBack() {
        Monitoring vitals = Monitoring.fresh();
        vitals.readiness().warmingUp();
        vitals.readiness().stopping();
        vitals.readiness().warm();
        try (Server server = started(vitals, 0)) {
            LiveService.ask(server).get("/ready").then().statusCode(503);
        }
    }

    @Test
    void aServiceStartedForGoodBecomesReadyByItself() {
        try (Server server = Server.startAndWarmUp(Options.DEFAULT.withPort(0))) {
            int status = 503;
            while (status == 503) {
                status = LiveService.ask(server).get("/ready").statusCode();
            }
            assertThat(status).isEqualTo(200);
        }
    }
}
