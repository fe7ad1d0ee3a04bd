package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.response.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.zip.GZIPOutputStream;
import loomwright.service.input.Json;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Senders that mean no good by how they send: compressed, without end, slowly, or over many connections. */
class HostileConnectionTest {
    private static final String PLAIN_GET = "GET /health HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n";

    private static Server server(int connections, int idleMs, int arrivalMs) {
        return Server.start(Options.DEFAULT
                .withPort(0)
                .withLimits(Limits.with(Map.of(
                        "bodyBytes", 100_000, "connections", connections, "idleMs", idleMs, "arrivalMs", arrivalMs))));
    }

    private static Socket connect(Server server) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port());
        socket.setSoTimeout(60_000);
        return socket;
    }

    private static void send(Socket socket, String text) throws IOException {
        OutputStream out = socket.getOutputStream();
        out.write(text.getBytes(StandardCharsets.ISO_8859_1));
        out.flush();
    }

    /** All that comes until the other side closes. */
    private static String rest(Socket socket) throws IOException {
        try (InputStream in = socket.getInputStream()) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"deflate", "br", "gzip, gzip"})
    void otherCompressionIsRefusedAndTheRightOneNamed(String encoding) {
        for (String path : List.of("/v1/plans/review", "/v1/bulk/review")) {
            post(path, encoding, new byte[] {1, 2, 3}).then().statusCode(415).header("Accept-Encoding", "gzip");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"gzip", "x-gzip", "GZIP"})
    void aPackedBodyIsUnpacked(String encoding) throws IOException {
        String plan = LiveService.ask().get("/v1/examples/sandpiper-as-built").asString();
        String plain = LiveService.ask()
                .contentType(Json.MEDIA_TYPE)
                .body(plan)
                .post("/v1/plans/backfeed")
                .asString();
        assertThat(post("/v1/plans/backfeed", encoding, packed(plan, 1)).asString())
                .isEqualTo(plain);
        String line = plan.replace("\n", " ") + "\n";
        assertThat(post("/v1/bulk/backfeed", encoding, packed(line, 3))
                        .asString()
                        .lines())
                .hasSize(4)
                .last()
                .asString()
                .contains("\"answers\":3");
    }

    /** 100 MB of blanks in 100 kB. */
    @Test
    void aBodyThatUnpacksToMoreThanABodyMayHaveIsRefused() throws IOException {
        byte[] small = packed(" ".repeat(1_000_000), 100);
        post("/v1/plans/review", "gzip", small).then().statusCode(413);
        assertThat(post("/v1/bulk/review", "gzip", small).asString()).contains("\"problems\":1");
    }

    @Test
    void aPackedBodyThatIsBrokenIsSaidToBe() throws IOException {
        byte[] whole = packed("{}", 1);
        post("/v1/plans/review", "gzip", "{}".getBytes(StandardCharsets.US_ASCII))
                .then()
                .statusCode(400)
                .body("type", equalTo(ProblemType.MALFORMED_REQUEST.uri()));
        post("/v1/plans/review", "gzip", Arrays.copyOf(whole, whole.length - 6))
                .then()
                .statusCode(400)
                .body("type", equalTo(ProblemType.MALFORMED_REQUEST.uri()));
    }

    private static Response post(String path, String encoding, byte[] body) {
        return LiveService.ask()
                .contentType(path.contains("bulk") ? Json.LINES + "; charset=utf-8" : Json.MEDIA_TYPE)
                .header("Content-Encoding", encoding)
                .body(body)
                .post(path);
    }

    private static byte[] packed(String text, int times) throws IOException {
        ByteArrayOutputStream small = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(small)) {
            for (int i = 0; i < times; i++) {
                zip.write(text.getBytes(StandardCharsets.UTF_8));
            }
        }
        return small.toByteArray();
    }

    @Test
    void aBodyCompressedOnTheWayIsRefused() {
        assertThat(LiveService.raw(
                        head("Connection: close", "Transfer-Encoding: gzip, chunked") + "2\r\n{}\r\n0\r\n\r\n"))
                .startsWith("HTTP/1.1 415 ")
                .contains("gzip, chunked");
    }

    @Test
    void aBodyThatDoesNotSayHowLongItIsMayBeNoLonger() throws IOException {
        try (Server server = server(100, 30_000, 60_000);
                Socket socket = connect(server)) {
            send(socket, head("Connection: close", "Transfer-Encoding: chunked"));
            String chunk = "2710\r\n" + " ".repeat(10_000) + "\r\n";
            for (int i = 0; i < 11; i++) {
                send(socket, chunk);
            }
            byte[] start = socket.getInputStream().readNBytes(12);
            assertThat(new String(start, StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 413");
        }
    }

    /** More than the buffers on the way hold: were the connection closed meanwhile, the sender would find it broken. */
    @ParameterizedTest
    @ValueSource(strings = {"/v1/plans/review", "/v1/no-such", "/v1/bulk/no-such"})
    void whoeverSendsOnAfterARefusalStillHearsIt(String path) throws IOException {
        try (Server server = server(100, 30_000, 60_000);
                Socket socket = connect(server)) {
            send(
                    socket,
                    "POST " + path + " HTTP/1.1\r\nHost: x\r\nConnection: close\r\nContent-Type: application/json\r\n"
                            + "Content-Length: 30000000\r\n\r\n");
            String piece = " ".repeat(1_000_000);
            for (int i = 0; i < 30; i++) {
                send(socket, piece);
            }
            assertThat(rest(socket)).matches("(?s)HTTP/1\\.1 4(13|04|15) .*\"status\":4(13|04|15).*");
        }
    }

    @Test
    @Timeout(60)
    void aBodyThatTricklesInIsCutOff() throws Exception {
        try (Server server = server(100, 30_000, 300);
                Socket socket = connect(server)) {
            send(socket, head("Content-Length: 90000"));
            InputStream in = socket.getInputStream();
            try {
                while (in.available() == 0) {
                    send(socket, " ");
                    TimeUnit.MILLISECONDS.sleep(20);
                }
            } catch (SocketException closed) {
                assertThat(closed).isNotNull();
            }
            assertThat(new String(in.readNBytes(12), StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 408");
        }
    }

    /** More than there are threads; each sends a byte now and then. */
    @Test
    @Timeout(60)
    void bodiesThatTrickleInHoldNoThread() throws Exception {
        List<Socket> slow = new ArrayList<>();
        try (Server server = Server.start(Options.DEFAULT
                .withPort(0)
                .withLimits(Limits.with(Map.of("threads", 8, "arrivalMs", 60_000, "stopMs", 100))))) {
            for (int i = 0; i < 64; i++) {
                Socket socket = connect(server);
                send(socket, head("Content-Length: 5000") + "{");
                slow.add(socket);
            }
            for (String path : List.of("/health", "/ready", "/v1/examples/sandpiper-as-built")) {
                for (Socket socket : slow) {
                    send(socket, " ");
                }
                LiveService.ask(server).get(path).then().statusCode(200);
            }
            LiveService.ask(server)
                    .contentType(Json.MEDIA_TYPE)
                    .body(LiveService.ask(server)
                            .get("/v1/examples/sandpiper-as-built")
                            .asString())
                    .post("/v1/plans/solution")
                    .then()
                    .statusCode(200);
        } finally {
            for (Socket socket : slow) {
                socket.close();
            }
        }
    }

    /**
     * A caller who goes away before the answer is there held a place among the requests for ever: the last piece of an answer that
     * could not be written ended nothing.
     */
    @Test
    @Timeout(120)
    void whoGoesAwayBeforeTheAnswerLeavesItsPlaceToOthers() throws Exception {
        int threads = 8;
        String plan = LiveService.ask().get("/v1/examples/sandpiper-as-built").asString();
        try (Server server =
                Server.start(Options.DEFAULT.withPort(0).withLimits(Limits.with(Map.of("threads", threads))))) {
            for (int i = 0; i < 2 * threads; i++) {
                try (Socket socket = connect(server)) {
                    send(socket, post("/v1/plans/review", plan));
                }
            }
            try (Socket socket = connect(server)) {
                send(socket, post("/v1/plans/review", plan).replace("Host: x", "Host: x\r\nConnection: close"));
                assertThat(rest(socket)).startsWith("HTTP/1.1 200 ");
            }
        }
    }

    private static String post(String path, String json) {
        return "POST " + path + " HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: "
                + json.getBytes(StandardCharsets.ISO_8859_1).length + "\r\n\r\n" + json;
    }

    @Test
    @Timeout(20)
    void aConnectionThatIsKeptOpenForNothingIsClosed() throws IOException {
        try (Server server = server(100, 200, 60_000);
                Socket kept = connect(server)) {
            send(kept, "GET /health HTTP/1.1\r\nHost: x\r\n\r\n");
            assertThat(rest(kept)).startsWith("HTTP/1.1 200 ");
        }
    }

    @Test
    @Timeout(60)
    void aSilentSenderIsCutOff() throws IOException {
        try (Server server = server(100, 200, 60_000);
                Socket head = connect(server);
                Socket body = connect(server)) {
            send(head, "GET /health HTTP/1.1\r\nHos");
            send(
                    body,
                    "POST /v1/networks/solution HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
                            + "Content-Length: 50\r\n\r\n{");
            assertThat(rest(head)).doesNotContain(" 200 ");
            assertThat(rest(body)).startsWith("HTTP/1.1 408 ").contains(ProblemType.REQUEST_TIMEOUT.uri());
        }
    }

    @Test
    @Timeout(60)
    void aHeadThatTricklesInIsCutOff() throws Exception {
        try (Server server = server(100, 30_000, 300);
                Socket socket = connect(server)) {
            send(socket, "GET /health HTTP/1.1\r\nHost: x\r\nX: ");
            socket.setSoTimeout(50);
            assertThatThrownBy(() -> {
                        while (true) {
                            send(socket, "a");
                            if (isOver(socket)) {
                                throw new SocketException("closed");
                            }
                        }
                    })
                    .isInstanceOf(SocketException.class);
        }
    }

    private static boolean isOver(Socket socket) throws IOException {
        try {
            return socket.getInputStream().read() < 0;
        } catch (SocketTimeoutException stillOpen) {
            return false;
        }
    }

    @Test
    @Timeout(60)
    void oneAddressHoldsAPartOfTheConnectionsOnly() throws IOException {
        List<Socket> held = new ArrayList<>();
        try (Server server = server(100, 30_000, 60_000)) {
            for (int i = 0; i < 64; i++) {
                Socket socket = connect(server);
                if (i > 0) {
                    beAtWork(socket);
                }
                held.add(socket);
            }
            try (Socket another = connect(server)) {
                beAtWork(another);
                // The idle one makes room; of those at work none does.
                assertThat(held.get(0).getInputStream().read()).isEqualTo(-1);
                try (Socket oneTooMany = connect(server)) {
                    assertThat(oneTooMany.getInputStream().read()).isEqualTo(-1);
                }
                send(another, "{}");
                assertThat(rest(another)).startsWith("HTTP/1.1 4");
            }
        } finally {
            for (Socket socket : held) {
                socket.close();
            }
        }
    }

    /** Begins a request, and waits until the service has begun with it. */
    private static void beAtWork(Socket socket) throws IOException {
        send(socket, head("Content-Length: 2", "Expect: 100-continue", "Connection: close"));
        assertThat(new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII))
                .isEqualTo("HTTP/1.1 100");
        socket.getInputStream().skipNBytes(socket.getInputStream().available());
    }

    @Test
    @Timeout(60)
    void connectionsThatAreClosedNoLongerCount() throws IOException {
        try (Server server = server(100, 30_000, 60_000)) {
            for (int i = 0; i < 150; i++) {
                try (Socket socket = connect(server)) {
                    send(socket, PLAIN_GET);
                    assertThat(rest(socket)).startsWith("HTTP/1.1 200 ");
                }
            }
        }
    }

    /** Whoever scans ports must not raise an alarm: a request that never came to its end is no fault of the service. */
    @Test
    @Timeout(60)
    void halfARequestHeadIsNoFaultOfOurs() throws IOException {
        try (Server server = server(100, 200, 60_000)) {
            try (Socket half = connect(server)) {
                send(half, "GET /health HTTP/1.1\r\nHost: x\r\nX: ");
                assertThat(rest(half)).doesNotContain(" 200 ", " 500 ");
            }
            try (Socket metrics = connect(server)) {
                send(metrics, PLAIN_GET.replace("/health", "/metrics"));
                assertThat(rest(metrics)).startsWith("HTTP/1.1 200 ").doesNotContain("internal-error");
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {4_000_001, Integer.MAX_VALUE, 5_000_000_000L})
    void aBodyThatAnnouncesTooMuchIsRefusedBeforeItComes(long bytes) throws IOException {
        // Were it waited for, it would be the 408 of the sender's silence.
        try (Server server = server(100, 500, 60_000);
                Socket socket = connect(server)) {
            send(socket, head("Content-Length: " + bytes));
            assertThat(rest(socket)).startsWith("HTTP/1.1 413 ");
        }
    }

    @Test
    @Timeout(60)
    void oneConnectionTooManyWaitsUntilAnotherEnds() throws IOException {
        List<Socket> idle = new ArrayList<>();
        try (Server server = server(8, 30_000, 60_000)) {
            for (int i = 0; i < 8; i++) {
                Socket socket = connect(server);
                send(socket, "GET /health HTTP/1.1\r\nHost: x\r\n\r\n");
                assertThat(new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII))
                        .isEqualTo("HTTP/1.1 200");
                idle.add(socket);
            }
            try (Socket waiting = connect(server)) {
                send(waiting, PLAIN_GET);
                waiting.setSoTimeout(300);
                assertThatThrownBy(() -> waiting.getInputStream().read()).isInstanceOf(SocketTimeoutException.class);
                waiting.setSoTimeout(30_000);
                idle.remove(0).close();
                assertThat(rest(waiting)).startsWith("HTTP/1.1 200 ");
            }
        } finally {
            for (Socket socket : idle) {
                socket.close();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "X-Request-Id: a\r\n Set-Cookie: b=c",
                "X-Request-Id: a\rSet-Cookie: b=c",
                "X-Request-Id: a\nSet-Cookie: b=c",
                "X-Request-Id: a%0d%0aSet-Cookie: b=c",
                "X-Request-Id: a\u0000Set-Cookie: b=c",
                "Origin: https://x.example\r\n\tSet-Cookie: b=c",
                "X-Api-Key: a\rSet-Cookie: b=c"
            })
    void noHeaderOfOursCanBeForged(String header) {
        String answer =
                LiveService.raw("GET /v1/examples/%0d%0aSet-Cookie:%20b=c HTTP/1.1\r\nHost: x\r\nConnection: close\r\n"
                        + header + "\r\n\r\n");
        assertThat(answer).matches("(?s)HTTP/1\\.1 4\\d\\d .*");
        assertThat(answer.substring(0, answer.indexOf("\r\n\r\n"))).doesNotContain("Set-Cookie");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/page/..%2f..%2fopenapi.yaml",
                "/page/..%2findex.html",
                "/page/%2e%2e%2findex.html",
                "/page/..%252findex.html",
                "/page/page.css%00.js",
                "/page/page.css%2f",
                "/page//page.css",
                "/page/./page.css",
                "/page/..;/docs",
                "/page/%c0%ae%c0%ae/x",
                "/page/PAGE.CSS",
                "/page/C:%5cwindows",
                "/docs/..%2fpage%2fpage.css",
                "/docs/start.js%20",
                "/v1/examples/..%2f..%2flogback",
                "/v1/examples/sandpiper-as-built.json",
                "/v1/tables/..%2fampacity",
                "/v1/%2565xamples",
                "/v1%2fexamples",
                "/v1/%2e%2e/health",
                "/%64ocs/..%2fpage%2f%70age.css",
                "/page%3bx/page.css",
                "/page/%70age.css%3f",
                "/page/%00page.css"
            })
    void noPathLeadsToAFileThatIsNotListed(String path) {
        assertThat(LiveService.raw("GET " + path + " HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n"))
                .matches("(?s)HTTP/1\\.1 4\\d\\d .*")
                .contains("Content-Type: application/problem+json");
    }

    /** The head of a calculation, up to the blank line. */
    private static String head(String... headers) {
        return "POST /v1/networks/solution HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
                + String.join("\r\n", headers) + "\r\n\r\n";
    }
}
