package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests that no well-behaved client sends: each a 4xx problem document, never a page of the web server's own. */
class MalformedRequestTest {
    static Stream<Arguments> heads() {
        return Stream.of(
                arguments("bad escape in the path", "GET /%zz HTTP/1.1", ProblemType.MALFORMED_REQUEST),
                arguments("zero byte in the path", "GET /v1/examples/a%00b HTTP/1.1", ProblemType.MALFORMED_REQUEST),
                arguments("bad escape in the query", "GET /health?a=%zz HTTP/1.1", ProblemType.MALFORMED_URL),
                arguments("half an escape in the query", "GET /health?a=%4 HTTP/1.1", ProblemType.MALFORMED_URL),
                arguments("query that is not UTF-8", "GET /health?a=%ff HTTP/1.1", ProblemType.MALFORMED_URL),
                arguments("unknown parameter", "GET /health?a=1 HTTP/1.1", ProblemType.UNKNOWN_NAME),
                arguments(
                        "climbing out of the folder",
                        "GET /docs/../../etc/passwd HTTP/1.1",
                        ProblemType.MALFORMED_REQUEST),
                arguments("climbing with escapes", "GET /docs/..%2f..%2fetc%2fpasswd HTTP/1.1", ProblemType.NOT_FOUND),
                arguments("climbing with escaped dots", "GET /docs/%2e%2e/x HTTP/1.1", null),
                arguments("climbing with backslashes", "GET /docs/..%5c..%5cx HTTP/1.1", null),
                arguments("a class of the service", "GET /docs/logback.xml HTTP/1.1", ProblemType.NOT_FOUND),
                arguments("an example outside the list", "GET /v1/examples/index HTTP/1.1", ProblemType.NOT_FOUND),
                arguments("path parameter with semicolon", "GET /health;a=b HTTP/1.1", null),
                arguments("double slash", "GET //health HTTP/1.1", null),
                arguments("unknown path", "GET /nothing HTTP/1.1", ProblemType.NOT_FOUND),
                arguments("unknown path, unknown method", "BREW /nothing HTTP/1.1", null),
                arguments("wrong method", "POST /health HTTP/1.1\r\nContent-Length: 0", ProblemType.METHOD_NOT_ALLOWED),
                arguments("unknown method", "BREW /health HTTP/1.1", ProblemType.METHOD_NOT_ALLOWED),
                arguments("TRACE", "TRACE /health HTTP/1.1", ProblemType.METHOD_NOT_ALLOWED),
                arguments("long query", "GET /health?a=" + "x".repeat(9_000) + " HTTP/1.1", ProblemType.URL_TOO_LONG),
                arguments(
                        "long header",
                        "GET /health HTTP/1.1\r\nX: " + "x".repeat(9_000),
                        ProblemType.HEADERS_TOO_LARGE),
                arguments("absolute address of another host", "GET http://other/health HTTP/1.1", null),
                arguments(
                        "websocket",
                        "GET /health HTTP/1.1\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13"
                                + "\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==",
                        null),
                arguments("no HTTP", "hello", null),
                arguments("unknown version", "GET /health HTTP/9.9", null),
                arguments("header without name", "GET /health HTTP/1.1\r\n: x", ProblemType.MALFORMED_REQUEST),
                arguments("bad length", "POST /v1/networks/solution HTTP/1.1\r\nContent-Length: x", null),
                arguments(
                        "length and chunks",
                        "POST /v1/networks/solution HTTP/1.1\r\nContent-Length: 5\r\nTransfer-Encoding: chunked",
                        null),
                arguments(
                        "body that ends too early",
                        "POST /v1/networks/solution HTTP/1.1\r\nContent-Type: application/json\r\nContent-Length: 50",
                        null));
    }

    /** RFC 9112, sections 2.2 and 3.2.2; the rest as the contract says. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "GET /health/ HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
                "GET http://localhost/health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
                "GET /health HTTP/1.1\nHost: localhost\nConnection: close\n\n"
            })
    void trailingSlashAbsoluteAddressAndBareLineFeedsAreTakenAsMeant(String request) {
        assertThat(LiveService.raw(request)).startsWith("HTTP/1.1 200 ").contains("\"status\":\"ok\"");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("heads")
    void isRefusedWithAProblemDocument(String name, String head, ProblemType type) {
        String answer = LiveService.raw(head + "\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        assertThat(answer)
                .matches("(?s)HTTP/1\\.1 4\\d\\d .*")
                .contains("Content-Type: application/problem+json")
                .contains("X-Content-Type-Options: nosniff")
                .containsPattern("X-Request-Id: [0-9a-f]{16}")
                .contains("\"instance\":\"urn:loomwright:request:")
                .doesNotContain("Jetty", "<html", "Exception");
        if (type != null) {
            assertThat(answer).contains("HTTP/1.1 " + type.status() + " ").contains("\"" + type.uri() + "\"");
        }
        assertThat(LiveService.raw("GET /health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 200 ");
    }
}
