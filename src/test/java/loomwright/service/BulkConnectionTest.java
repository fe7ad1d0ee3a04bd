package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.bulk.BulkLimits;
import loomwright.service.endpoint.Calculation;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.endpoint.Metrics;
import loomwright.service.input.Json;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import loomwright.service.stream.Bulk;
import loomwright.service.stream.BulkOperations;
import loomwright.sizing.VoltageDrop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** How a bulk run and its connection get on: promptness, senders and readers that vanish or are slow, stopping, limits. */
class BulkConnectionTest {
    private static final String DROP = "{\"currentA\":4,\"size\":\"16 AWG\",\"lengthM\":3}\n";

    private static Options options(BulkLimits bulk) {
        CalculationLimits c = CalculationLimits.DEFAULT;
        return Options.DEFAULT
                .withPort(0)
                .withCalculation(new CalculationLimits(c.network(), c.backfeed(), bulk, c.timeMs()));
    }

    private static BulkLimits limits(int runs, int silenceMs) {
        return new BulkLimits(2, 8, 1_000_000, runs, silenceMs);
    }

    /** One bulk request whose body is sent piece by piece. */
    private static final class Sender implements AutoCloseable {
        private final Socket socket;
        private final OutputStream out;
        private final BufferedReader in;

        Sender(Server server) throws IOException {
            this(server, Json.LINES);
        }

        Sender(Server server, String contentType) throws IOException {
            this(server, "voltage-drop", contentType);
        }

        Sender(Server server, String operation, String contentType) throws IOException {
            socket = new Socket(InetAddress.getLoopbackAddress(), server.port());
            socket.setSoTimeout(60_000);
            out = socket.getOutputStream();
            in = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            write(String.join(
                    "\r\n",
                    "POST /v1/bulk/" + operation + " HTTP/1.1",
                    "Host: x",
                    "Accept: " + Json.LINES,
                    "Connection: close",
                    "Content-Type: " + contentType,
                    "Transfer-Encoding: chunked",
                    "",
                    ""));
        }

        private void write(String text) throws IOException {
            out.write(text.getBytes(StandardCharsets.UTF_8));
            out.flush();
        }

        void send(String lines) throws IOException {
            write(Integer.toHexString(lines.length()) + "\r\n" + lines + "\r\n");
        }

        void end() throws IOException {
            write("0\r\n\r\n");
        }

        /** The next line of the answer, chunk sizes and headers passed over. */
        String answer() throws IOException {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (line.startsWith("{")) {
                    return line;
                }
            }
            return "the answer has ended";
        }

        @Override
        public void close() throws IOException {
            socket.close();
        }
    }

    @Test
    void aLineIsAnsweredWhileTheRequestIsStillOpen() throws Exception {
        try (Server server = Server.start(options(limits(1, 60_000)));
                Sender sender = new Sender(server)) {
            for (int i = 1; i <= 3; i++) {
                sender.send(DROP);
                assertThat(sender.answer()).startsWith("{\"line\":" + i + ",\"answer\":");
            }
            sender.end();
            assertThat(sender.answer()).startsWith("{\"summary\":{\"operation\":\"voltage-drop\",\"complete\":true");
        }
    }

    @Test
    void aCarOfAListIsAnsweredAsSoonAsTheNextOneBegins() throws Exception {
        try (Server server = Server.start(options(limits(1, 60_000)));
                Sender sender = new Sender(server, "review", "text/csv")) {
            sender.send(
                    "voltage,6 V\ncar,from,to\nOtter,battery +,horn\nOtter,horn,horn button\nHeron,battery +,horn\n");
            assertThat(sender.answer())
                    .startsWith("{\"line\":1,\"key\":\"Otter\",\"answer\":")
                    .contains("6 V");
            sender.send("Otter,horn,body\nTern,battery +,horn\n");
            assertThat(sender.answer()).startsWith("{\"line\":2,\"key\":\"Heron\",\"answer\":");
            assertThat(sender.answer())
                    .startsWith("{\"line\":3,\"key\":\"Otter\",\"problem\":")
                    .contains("row 6");
            sender.end();
            assertThat(sender.answer()).startsWith("{\"line\":4,\"key\":\"Tern\",\"answer\":");
            assertThat(sender.answer()).contains("\"complete\":true");
        }
    }

    @Test
    void aRunMoreThanThereIsRoomForIsToldToComeAgain() throws Exception {
        try (Server server = Server.start(options(limits(1, 60_000)));
                Sender sender = new Sender(server)) {
            sender.send(DROP);
            sender.answer();
            LiveService.ask(server)
                    .contentType(Json.LINES + "; charset=utf-8")
                    .body(DROP.getBytes(StandardCharsets.UTF_8))
                    .post("/v1/bulk/voltage-drop")
                    .then()
                    .statusCode(503)
                    .header("Retry-After", "10")
                    .body("type", equalTo(ProblemType.BUSY.uri()));
            LiveService.ask(server)
                    .get("/v1/voltage-drop?currentA=4&size=16%20AWG&lengthM=3")
                    .then()
                    .statusCode(200);
            sender.end();
            assertThat(sender.answer()).contains("summary");
        }
    }

    @Test
    void aSenderWhoFallsSilentIsToldWhereToGoOn() throws Exception {
        try (Server server = Server.start(options(limits(1, 300)));
                Sender sender = new Sender(server)) {
            sender.send(DROP + DROP + "{\"half\":");
            assertThat(sender.answer()).startsWith("{\"line\":1,");
            assertThat(sender.answer()).startsWith("{\"line\":2,");
            assertThat(sender.answer())
                    .contains("\"complete\":false")
                    .contains("\"nextLine\":3")
                    .contains("\"status\":408")
                    .contains("came for 300 ms");
        }
    }

    @Test
    void aSenderWhoFallsSilentInTheHeaderOfATableIsToldHowLongWasWaited() throws Exception {
        try (Server server = Server.start(options(limits(1, 300)));
                Sender sender = new Sender(server, "text/csv")) {
            sender.send("currentA,si");
            assertThat(sender.answer()).contains("\"status\":408").contains("came for 300 ms");
        }
    }

    @Test
    void aStopFinishesTheLinesUnderWayAndTellsWhereToGoOn() throws Exception {
        Server server = Server.start(options(limits(1, 60_000)));
        try (Sender sender = new Sender(server)) {
            sender.send(DROP);
            assertThat(sender.answer()).startsWith("{\"line\":1,");
            CompletableFuture<Void> stop = CompletableFuture.runAsync(server::close);
            // The run sees the stop when the line that it waits for has come.
            String last = "";
            for (int i = 0; i < 1_000 && !last.contains("summary"); i++) {
                sender.send(DROP);
                last = sender.answer();
            }
            assertThat(last).contains("\"complete\":false").contains("\"status\":503");
            stop.get(60, TimeUnit.SECONDS);
        }
    }

    /** A service whose voltage drop is another. */
    private static Server with(Calculation<VoltageDrop.Input, VoltageDrop.Result> drop, BulkLimits limits) {
        List<Endpoint> single = Routes.single(CalculationLimits.DEFAULT).stream()
                .map(endpoint -> endpoint.path().equals("/v1/voltage-drop")
                        ? new Endpoint(endpoint.method(), endpoint.path(), endpoint.operationId(), drop)
                        : endpoint)
                .toList();
        Bulk bulk = new Bulk(BulkOperations.of(LiveService.CONTRACT, single), limits, new Metrics());
        return Server.start(
                Options.DEFAULT.withPort(0),
                LiveService.CONTRACT,
                Stream.concat(
                                single.stream(),
                                Stream.of(Endpoint.post("/v1/bulk/{operation}", BulkOperations.ID, bulk)))
                        .toList());
    }

    /** A service that tells when its voltage drop is first asked. */
    private static Server beginning(CountDownLatch begun) {
        return with(
                Calculation.of(VoltageDrop.Input.class, input -> {
                    begun.countDown();
                    return VoltageDrop.calculate(input);
                }),
                limits(1, 60_000));
    }

    private static Answer<VoltageDrop.Result> workForEver(Progress progress) {
        while (true) {
            progress.at(0, 1);
        }
    }

    /** The run of 300 m has the problem, the others of 3 m do not. */
    private static void sendALongRunBetweenTwoShort(Sender sender, ProblemType problem) throws IOException {
        sender.send(DROP + DROP.replace(":3}", ":300}") + DROP);
        sender.end();
        assertThat(sender.answer()).startsWith("{\"line\":1,\"answer\":");
        assertThat(sender.answer())
                .startsWith("{\"line\":2,\"problem\":")
                .contains(problem.uri())
                .contains("\"status\":" + problem.status());
        assertThat(sender.answer()).startsWith("{\"line\":3,\"answer\":");
        assertThat(sender.answer()).contains("\"complete\":true,\"answers\":2,\"problems\":1");
    }

    @Test
    void aLineThatTakesTooLongIsAProblemAndTheRestGoesOn() throws Exception {
        try (Server server = with(
                        Calculation.limited(
                                VoltageDrop.Input.class,
                                1,
                                (input, progress) ->
                                        Objects.requireNonNull(input.run().lengthM()) > 100
                                                ? workForEver(progress)
                                                : VoltageDrop.calculate(input)),
                        limits(1, 60_000));
                Sender sender = new Sender(server)) {
            sendALongRunBetweenTwoShort(sender, ProblemType.OUT_OF_TIME);
        }
    }

    static List<Error> breakdowns() {
        return List.of(new StackOverflowError(), new NoClassDefFoundError(), new OutOfMemoryError());
    }

    @ParameterizedTest
    @MethodSource("breakdowns")
    void aLineThatBreaksDownIsAProblemAndTheRestGoesOn(Error breakdown) throws Exception {
        Calculation<VoltageDrop.Input, VoltageDrop.Result> drop = Calculation.of(VoltageDrop.Input.class, input -> {
            if (Objects.requireNonNull(input.run().lengthM()) > 100) {
                throw breakdown;
            }
            return VoltageDrop.calculate(input);
        });
        try (Server server = with(drop, limits(1, 60_000));
                Sender sender = new Sender(server)) {
            sendALongRunBetweenTwoShort(sender, ProblemType.INTERNAL_ERROR);
        }
    }

    @Test
    void aClientThatHangsUpEndsTheWorkOnLinesBegun() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CompletableFuture<Throwable> ended = new CompletableFuture<>();
        Calculation<VoltageDrop.Input, VoltageDrop.Result> endless =
                Calculation.limited(VoltageDrop.Input.class, 3_600_000, (input, progress) -> {
                    begun.countDown();
                    try {
                        return workForEver(progress);
                    } catch (RuntimeException e) {
                        ended.complete(e);
                        throw e;
                    }
                });
        // Signs of life go out as often as silence is allowed.
        try (Server server = with(endless, limits(1, 100))) {
            try (Sender sender = new Sender(server)) {
                sender.send(DROP);
                sender.end();
                assertThat(begun.await(60, TimeUnit.SECONDS)).isTrue();
            }
            assertThat(ended.get(60, TimeUnit.SECONDS)).isInstanceOf(CancellationException.class);
        }
    }

    @Test
    void aClientThatHangsUpFreesItsRun() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        try (Server server = beginning(begun)) {
            try (Sender sender = new Sender(server)) {
                sender.send(DROP.repeat(1_000));
                assertThat(begun.await(60, TimeUnit.SECONDS)).isTrue();
            }
            // There is room for one run only: the next is let in when the first has ended.
            int status = 503;
            for (int i = 0; i < 10_000 && status == 503; i++) {
                status = LiveService.ask(server)
                        .contentType(Json.LINES + "; charset=utf-8")
                        .body(DROP.getBytes(StandardCharsets.UTF_8))
                        .post("/v1/bulk/voltage-drop")
                        .statusCode();
            }
            assertThat(status).isEqualTo(200);
        }
    }

    @Test
    void aClientThatSendsAndNeverReadsIsHeldUp() throws Exception {
        AtomicLong sent = new AtomicLong();
        CountDownLatch begun = new CountDownLatch(1);
        String lines = DROP.repeat(1_000);
        CompletableFuture<Void> sending;
        try (Server server = beginning(begun);
                Sender sender = new Sender(server)) {
            sending = CompletableFuture.runAsync(() -> {
                try {
                    while (true) {
                        sender.send(lines);
                        sent.incrementAndGet();
                    }
                } catch (IOException closed) {
                    assertThat(sent.get()).isPositive();
                }
            });
            long before = -1;
            // Sockets hold a few megabytes; then nothing moves any more.
            while (before != sent.get()) {
                before = sent.get();
                TimeUnit.MILLISECONDS.sleep(500);
            }
            assertThat(sending.isDone()).isFalse();
            LiveService.ask(server)
                    .get("/v1/voltage-drop?currentA=4&size=16%20AWG&lengthM=3")
                    .then()
                    .statusCode(200);
        }
        sending.get(60, TimeUnit.SECONDS);
    }
}
