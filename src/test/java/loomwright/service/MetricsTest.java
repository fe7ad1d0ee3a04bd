package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import loomwright.service.input.Json;
import loomwright.service.limits.Options;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** What an operator counts: each test on the same service, so only what it asked for itself is looked at. */
class MetricsTest {
    private static final Server SERVER = Server.start(Options.DEFAULT.withPort(0));

    @AfterAll
    static void stop() {
        SERVER.close();
    }

    private static String scraped() {
        return LiveService.ask(SERVER)
                .accept("application/openmetrics-text;version=1.0.0;q=0.5,text/plain;version=0.0.4;q=0.4,*/*;q=0.1")
                .get("/metrics")
                .then()
                .statusCode(200)
                .contentType("text/plain; version=0.0.4; charset=utf-8")
                .extract()
                .asString();
    }

    /** The figure of a line; a request is counted when its answer has gone out, so that may take another look. */
    private static void assertCounted(String line, int count) {
        String wanted = line + " " + count + ".0";
        for (int i = 0; i < 100 && !scraped().contains(wanted); i++) {
            Thread.onSpinWait();
        }
        assertThat(scraped()).contains(wanted);
    }

    @Test
    void requestsAreCountedByOperationTemplateAndStatus() {
        for (int i = 0; i < 3; i++) {
            LiveService.ask(SERVER).get("/v1/conductors/16%20AWG").then().statusCode(200);
        }
        LiveService.ask(SERVER).get("/v1/conductors/no-such").then().statusCode(422);
        String start = "loomwright_requests_total{operation=\"getConductor\",path=\"/v1/conductors/{size}\",status=";
        assertCounted(start + "\"200\"}", 3);
        assertCounted(start + "\"422\"}", 1);
    }

    @Test
    void durationsAreAHistogramByOperation() {
        LiveService.ask(SERVER).get("/v1/tables").then().statusCode(200);
        String one = "loomwright_request_duration_seconds";
        for (int i = 0; i < 100 && !scraped().contains(one + "_count{operation=\"listTables\"} 1"); i++) {
            Thread.onSpinWait();
        }
        assertThat(scraped())
                .contains("# TYPE " + one + " histogram")
                .contains(one + "_bucket{operation=\"listTables\",le=\"0.001\"} ")
                .contains(one + "_bucket{operation=\"listTables\",le=\"+Inf\"} 1\n")
                .contains(one + "_count{operation=\"listTables\"} 1\n");
    }

    @Test
    void problemsAreCountedByTypeThoseOfTheWebServerIncluded() {
        LiveService.ask(SERVER).get("/health?a=1").then().statusCode(400);
        LiveService.raw(SERVER, "GET /%zz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n");
        assertCounted("loomwright_problems_total{type=\"unknown-name\"}", 1);
        assertCounted("loomwright_problems_total{type=\"malformed-request\"}", 1);
    }

    @Test
    void noTextOfACallerBecomesALabel() {
        LiveService.ask(SERVER).get("/secret-path-1").then().statusCode(404);
        LiveService.raw(SERVER, "BREW /secret-path-2 HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n");
        assertThat(scraped()).doesNotContain("secret-path", "BREW");
    }

    @Test
    void linesOfBulkRunsAreCountedByOutcome() {
        LiveService.ask(SERVER)
                .contentType(Json.LINES + "; charset=utf-8")
                .body("{\"currentA\":4,\"size\":\"16 AWG\",\"lengthM\":3}\n{}\n{}\n".getBytes(StandardCharsets.UTF_8))
                .post("/v1/bulk/voltage-drop")
                .then()
                .statusCode(200);
        assertCounted("loomwright_bulk_lines_total{operation=\"voltage-drop\",outcome=\"answer\"}", 1);
        assertCounted("loomwright_bulk_lines_total{operation=\"voltage-drop\",outcome=\"problem\"}", 2);
        assertThat(scraped()).contains("loomwright_bulk_runs 0.0\n").contains("loomwright_bulk_queue 0.0\n");
    }

    @Test
    void theProcessTellsItsMemoryThreadsAndFiles() {
        assertThat(scraped())
                .contains("jvm_memory_used_bytes{area=\"heap\"")
                .contains("jvm_threads_live_threads ")
                .contains("process_files_open_files ")
                .contains("loomwright_http_threads ")
                .contains("loomwright_http_queue ");
    }
}
