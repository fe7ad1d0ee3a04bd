package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyOrNullString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.nullValue;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.GZIPInputStream;
import loomwright.service.limits.Options;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Headers of every answer, request ids, HEAD and OPTIONS, web origins. */
class HeadersTest {
    @Test
    void theCallersRequestIdComesBackInHeaderAndProblem() {
        LiveService.ask()
                .header("X-Request-Id", "order-66_a.b")
                .get("/nothing")
                .then()
                .header("X-Request-Id", "order-66_a.b")
                .body("instance", equalTo("urn:loomwright:request:order-66_a.b"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a b", "a\"b", "<b>", "a,b", "Ünicode"})
    void anIdThatCouldForgeALogLineIsReplaced(String id) {
        LiveService.ask()
                .header("X-Request-Id", id)
                .get("/health")
                .then()
                .header("X-Request-Id", matchesPattern("[0-9a-f]{16}"));
    }

    @Test
    void anIdOfMoreThan64CharactersIsReplaced() {
        LiveService.ask()
                .header("X-Request-Id", "a".repeat(65))
                .get("/health")
                .then()
                .header("X-Request-Id", matchesPattern("[0-9a-f]{16}"));
    }

    @Test
    void theServerDoesNotSayWhatItIsMadeOf() {
        LiveService.ask()
                .get("/health")
                .then()
                .header("Server", nullValue())
                .header("X-Content-Type-Options", "nosniff")
                .header("Content-Security-Policy", containsString("default-src 'none'"));
    }

    @Test
    void headHasTheHeadersOfGetAndNoBody() {
        LiveService.ask()
                .head("/v1/examples")
                .then()
                .statusCode(200)
                .contentType("application/json")
                .body(emptyOrNullString());
        LiveService.ask().head("/nothing").then().statusCode(404);
    }

    @Test
    void optionsTellsTheMethods() {
        LiveService.ask().options("/health").then().statusCode(204).header("Allow", "GET, HEAD, OPTIONS");
        LiveService.ask()
                .options("/v1/networks/solution")
                .then()
                .statusCode(204)
                .header("Allow", "OPTIONS, POST");
    }

    @Test
    void aWrongMethodTellsTheRightOnes() {
        String allow = LiveService.ask()
                .post("/health")
                .then()
                .statusCode(405)
                .extract()
                .header("Allow");
        assertThat(allow.split(", ")).containsExactlyInAnyOrder("GET", "HEAD", "OPTIONS");
    }

    @Test
    void noWebOriginIsAllowedUnlessTheOperatorNamesIt() {
        LiveService.ask()
                .header("Origin", "https://help.example")
                .get("/health")
                .then()
                .header("Access-Control-Allow-Origin", nullValue());
        Options open = Options.DEFAULT.withPort(0).withAllowedOrigins(List.of("https://help.example"));
        try (Server server = Server.start(open)) {
            LiveService.ask(server)
                    .header("Origin", "https://help.example")
                    .get("/health")
                    .then()
                    .header("Access-Control-Allow-Origin", "https://help.example");
            LiveService.ask(server)
                    .header("Origin", "https://other.example")
                    .get("/health")
                    .then()
                    .header("Access-Control-Allow-Origin", nullValue())
                    .header("Vary", containsString("Origin"));
            LiveService.ask(server)
                    .header("Origin", "https://help.example")
                    .header("Access-Control-Request-Method", "POST")
                    .header("Access-Control-Request-Headers", "content-type")
                    .options("/v1/plans/review")
                    .then()
                    .statusCode(204)
                    .header("Access-Control-Allow-Origin", "https://help.example")
                    .header("Access-Control-Allow-Methods", containsString("POST"))
                    .header("Access-Control-Allow-Headers", containsString("Content-Type"));
            assertThat(LiveService.ask(server)
                            .header("Origin", "https://help.example")
                            .get("/v1/resistance?network=6")
                            .headers()
                            .getValues("Vary"))
                    .containsExactlyInAnyOrder("Accept-Encoding", "Origin", "Accept");
        }
    }

    /** RFC 9110, section 12.5.5: else a shared cache hands a compressed answer to who cannot read it. */
    @Test
    void whatMayComeCompressedSaysThatItVaries() {
        assertThat(LiveService.ask()
                        .header("Accept-Encoding", "gzip")
                        .get("/openapi.yaml")
                        .headers()
                        .getValues("Vary"))
                .contains("Accept-Encoding");
    }

    @ParameterizedTest
    @ValueSource(strings = {"gzip", "gzip;q=1.0", "br, gzip;q=0.5", "*"})
    void everyOfferOfGzipIsTaken(String offer) {
        assertThat(LiveService.raw("GET /openapi.yaml HTTP/1.1\r\nHost: a\r\nAccept-Encoding: " + offer
                        + "\r\nConnection: close\r\n\r\n"))
                .contains("Content-Encoding: gzip");
    }

    /** A line is there when it is ready, compressed or not; what fails before the first is plain. */
    @Test
    void linesAreCompressedToo() throws Exception {
        byte[] lines = "{\"currentA\":8,\"size\":\"14 AWG\",\"lengthM\":3}\n"
                .repeat(50)
                .getBytes(StandardCharsets.UTF_8);
        HttpClient client = HttpClient.newHttpClient();
        try (Server server = Server.start(Options.DEFAULT.withPort(0))) {
            HttpRequest.Builder run = HttpRequest.newBuilder(
                            URI.create("http://127.0.0.1:" + server.port() + "/v1/bulk/voltage-drop"))
                    .header("Content-Type", "application/x-ndjson")
                    .POST(HttpRequest.BodyPublishers.ofByteArray(lines));
            HttpResponse<byte[]> plain = client.send(run.build(), HttpResponse.BodyHandlers.ofByteArray());
            HttpResponse<byte[]> packed = client.send(
                    run.header("Accept-Encoding", "br, gzip;q=0.5").build(), HttpResponse.BodyHandlers.ofByteArray());
            assertThat(packed.headers().firstValue("Content-Encoding")).contains("gzip");
            assertThat(packed.body().length).isLessThan(plain.body().length / 2);
            try (GZIPInputStream unpacked = new GZIPInputStream(new ByteArrayInputStream(packed.body()))) {
                assertThat(unpacked.readAllBytes()).isEqualTo(plain.body());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"gzip;q=0", "identity", "br"})
    void whoWantsNoGzipGetsNone(String offer) {
        String answer = LiveService.raw(
                "GET /openapi.yaml HTTP/1.1\r\nHost: a\r\nAccept-Encoding: " + offer + "\r\nConnection: close\r\n\r\n");
        assertThat(answer.substring(0, answer.indexOf("\r\n\r\n")))
                .startsWith("HTTP/1.1 200")
                .doesNotContain("Content-Encoding");
    }

    /** RFC 9110, section 5.3. */
    @Test
    void linesOfOneHeaderAreOneList() {
        LiveService.ask()
                .header("Accept", "text/csv;q=0.1", "application/json")
                .get("/v1/voltage-drop?currentA=1&size=16+AWG&lengthM=3")
                .then()
                .contentType(containsString("application/json"));
    }

    @Test
    void theContractIsReadWithoutScripts() {
        String page = LiveService.ask()
                .get("/docs")
                .then()
                .statusCode(200)
                .header("Content-Security-Policy", containsString("default-src 'none'"))
                .extract()
                .asString();
        assertThat(page)
                .contains("<title>Loomwright", "id=\"solvePlan\"", "id=\"schema-Plan\"", "href=\"#schema-Plan\"")
                .doesNotContain("<script", " src=");
    }

    @Test
    void thePageToTryOperationsLoadsNothingFromElsewhere() {
        String page = LiveService.ask()
                .get("/docs/try")
                .then()
                .statusCode(200)
                .header("Content-Security-Policy", containsString("script-src 'self'"))
                .extract()
                .asString();
        assertThat(page).contains("<title>Loomwright").doesNotContain("http://", "https://", "//cdn");
        for (String file : List.of("viewer.js", "viewer.css", "start.js")) {
            assertThat(page).contains("/docs/" + file);
            LiveService.ask().get("/docs/" + file).then().statusCode(200);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/openapi.yaml",
                "/openapi.json",
                "/",
                "/v1/tables",
                "/v1/tables/awg",
                "/v1/examples",
                "/v1/examples/otter-6v-positive-earth",
                "/v1/fuse?currentA=8&size=14+AWG",
                "/v1/fuse?currentA=8&size=14+AWG&format=svg"
            })
    void aCopyIsGoodAsLongAsItsTagIsTheSame(String url) {
        String tag = LiveService.ask()
                .get(url)
                .then()
                .statusCode(200)
                .header("Cache-Control", "no-cache")
                .extract()
                .header("ETag");
        String opaque = tag.replaceFirst("^W/", "");
        for (String named : List.of(tag, opaque, "*", "\"other\", " + tag, "W/\"other\"," + opaque)) {
            LiveService.ask()
                    .header("If-None-Match", named)
                    .get(url)
                    .then()
                    .statusCode(304)
                    .header("ETag", tag)
                    .header("Content-Length", nullValue())
                    .header("Content-Type", nullValue());
        }
        LiveService.ask().header("If-None-Match", "\"other\"").get(url).then().statusCode(200);
        LiveService.ask().header("If-None-Match", "other").get(url).then().statusCode(200);
    }

    @Test
    void whatChangesFromAskToAskIsNotKept() {
        for (String url : List.of("/health", "/ready", "/metrics")) {
            LiveService.ask()
                    .header("If-None-Match", "*")
                    .get(url)
                    .then()
                    .statusCode(200)
                    .header("Cache-Control", "no-store")
                    .header("ETag", nullValue());
        }
    }

    /** RFC 9110, section 8.6: a 204 has no length; section 15.4.5: a 304 has that of the answer it spares, or none. */
    @Test
    void whatHasNoBodyTellsNoLength() {
        assertThat(LiveService.raw("OPTIONS /health HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 204")
                .doesNotContainIgnoringCase("content-length");
        assertThat(LiveService.raw(
                        "GET /v1/examples HTTP/1.1\r\nHost: a\r\nIf-None-Match: *\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 304")
                .doesNotContainIgnoringCase("content-length");
    }

    @Test
    void aFormThatThereIsNotVariesWithWhatIsAccepted() {
        for (String url : List.of("/openapi.yaml", "/v1/fuse?currentA=8&size=14+AWG")) {
            assertThat(LiveService.ask()
                            .accept("audio/ogg")
                            .get(url)
                            .then()
                            .statusCode(406)
                            .extract()
                            .headers()
                            .getValues("Vary"))
                    .contains("Accept", "Accept-Encoding");
        }
    }

    @Test
    void theContractIsThereAsJsonToo() throws Exception {
        assertThat(new JsonMapper()
                        .readTree(LiveService.ask().get("/openapi.json").asByteArray()))
                .isEqualTo(new JsonMapper()
                        .readTree(LiveService.CONTRACT.document().toString()));
    }
}
