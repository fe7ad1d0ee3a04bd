package loomwright.service;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import loomwright.service.entrance.AccessRules;
import loomwright.service.entrance.ApiKeys;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Keys and pace of callers over HTTP, where the operator asks for them. */
class AccessControlTest {
    private static final String KEY = "heron-on-a-grey-post-7";
    private static final String DROP = "/v1/voltage-drop?currentA=4&size=16%20AWG&lengthM=3";

    @TempDir
    private Path folder;

    private Server server(double perSecond, int burst) throws IOException {
        Path file = Files.writeString(folder.resolve("keys"), "till " + KEY + "\nbench " + KEY + "x\n");
        return Server.start(
                Options.DEFAULT.withPort(0).withEntrance(new AccessRules(ApiKeys.read(file), perSecond, burst, 0)));
    }

    private static RequestSpecification with(Server server, String header, String value) {
        return LiveService.ask(server).header(header, value);
    }

    @Test
    void aKnownKeyOpensInEitherHeader() throws IOException {
        try (Server server = server(0, 1)) {
            with(server, "X-Api-Key", KEY).get(DROP).then().statusCode(200);
            with(server, "Authorization", "Bearer " + KEY).get(DROP).then().statusCode(200);
            with(server, "authorization", "bearer  " + KEY).get(DROP).then().statusCode(200);
        }
    }

    @Test
    void withoutOneEveryCalculationIsClosedAndEveryPageOpen() throws IOException {
        try (Server server = server(0, 1)) {
            for (String path : List.of("/metrics", "/v1/examples", DROP)) {
                LiveService.ask(server)
                        .get(path)
                        .then()
                        .statusCode(401)
                        .header("WWW-Authenticate", containsString("Bearer"))
                        .body("type", equalTo(ProblemType.UNKNOWN_CALLER.uri()));
            }
            LiveService.ask(server)
                    .contentType("application/json")
                    .body("no JSON at all")
                    .post("/v1/plans/review")
                    .then()
                    .statusCode(401);
            LiveService.ask(server).get("/health").then().statusCode(200);
            LiveService.ask(server).get("/ready").then().statusCode(200);
            for (String path : List.of(
                    "/",
                    "/page/start.js",
                    "/docs",
                    "/docs/start.js",
                    "/openapi.yaml",
                    "/openapi.json",
                    "/problems/unknown-caller")) {
                LiveService.ask(server).get(path).then().statusCode(200);
            }
            LiveService.ask(server).options("/v1/plans/review").then().statusCode(204);
        }
    }

    @Test
    void aWrongKeyIsNotRepeated() throws IOException {
        try (Server server = server(0, 1)) {
            for (String wrong : List.of("", "x", KEY + "y", KEY.substring(1), "Basic " + KEY)) {
                with(server, "X-Api-Key", wrong)
                        .get(DROP)
                        .then()
                        .statusCode(401)
                        .body(not(containsString(KEY)));
            }
            with(server, "Authorization", "Basic " + KEY).get(DROP).then().statusCode(401);
            with(server, "Authorization", "Bearer").get(DROP).then().statusCode(401);
        }
    }

    @Test
    void eachCallerHasItsOwnPace() throws IOException {
        try (Server server = server(0.001, 2)) {
            for (String key : List.of(KEY, KEY + "x")) {
                with(server, "X-Api-Key", key)
                        .get(DROP)
                        .then()
                        .statusCode(200)
                        .header("RateLimit-Policy", "\"caller\";q=2;w=2000")
                        .header("RateLimit", "\"caller\";r=1;t=1000")
                        .header("Cache-Control", "private, no-cache");
                with(server, "X-Api-Key", key).get("/v1/examples").then().statusCode(200);
                with(server, "X-Api-Key", key)
                        .get(DROP)
                        .then()
                        .statusCode(429)
                        .header("RateLimit", containsString("r=0;"))
                        .header("Retry-After", Integer::parseInt, org.hamcrest.Matchers.greaterThan(900))
                        .body("type", equalTo(ProblemType.TOO_MANY_REQUESTS.uri()));
            }
            LiveService.ask(server).get("/health").then().statusCode(200);
        }
    }

    @Test
    void whoeverGuessesKeysIsSlowedDown() throws IOException {
        try (Server server = server(0.001, 2)) {
            with(server, "X-Api-Key", "guess-one-guess-one").get(DROP).then().statusCode(401);
            with(server, "X-Api-Key", "guess-two-guess-two").get(DROP).then().statusCode(401);
            with(server, "X-Api-Key", "guess-three-guess-three")
                    .get(DROP)
                    .then()
                    .statusCode(429);
            with(server, "X-Api-Key", KEY).get(DROP).then().statusCode(200);
        }
    }

    @Test
    void withoutKeysTheAddressIsTheCaller() {
        AccessRules rules = new AccessRules(ApiKeys.NONE, 0.001, 1, 0);
        try (Server server = Server.start(Options.DEFAULT.withPort(0).withEntrance(rules))) {
            LiveService.ask(server).get(DROP).then().statusCode(200);
            with(server, "X-Forwarded-For", "192.0.2.7").get(DROP).then().statusCode(429);
        }
    }

    /** Addresses of RFC 5737 and 3849, kept for documentation. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 | 198.51.100.7 | 203.0.113.9 | 200",
                "1 | 198.51.100.7:4711 | 198.51.100.7:4712 | 429",
                "1 | 2001:db8::1 | 2001:db8:0:1::1 | 200",
                "1 | [2001:db8::1]:443 | 2001:db8::2 | 429",
                "1 | unknown | _hidden | 429",
                // What the caller wrote itself stands on the left and changes nothing.
                "1 | 192.0.2.1, 198.51.100.7 | 192.0.2.2, 198.51.100.7 | 429",
                "2 | 192.0.2.1, 198.51.100.7, 10.0.0.2 | 192.0.2.2, 198.51.100.7, 10.0.0.3 | 429",
                "2 | 198.51.100.7, 10.0.0.2 | 203.0.113.9, 10.0.0.2 | 200",
                // Fewer than the proxies would have added: nobody's word is taken.
                "2 | 198.51.100.7 | 203.0.113.9 | 429",
                "0 | 198.51.100.7 | 203.0.113.9 | 429"
            })
    void callersBehindProxiesAreToldApartByWhatTheProxiesAdded(
            int trustedProxies, String one, String other, int status) {
        String header = "X-Forwarded-For";
        AccessRules rules = new AccessRules(ApiKeys.NONE, 0.001, 1, trustedProxies);
        try (Server server = Server.start(Options.DEFAULT.withPort(0).withEntrance(rules))) {
            with(server, header, one).get(DROP).then().statusCode(200);
            with(server, header, one).get(DROP).then().statusCode(429);
            with(server, header, other).get(DROP).then().statusCode(status);
        }
    }
}
