package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import loomwright.Main;
import loomwright.OtherJava;
import loomwright.circuit.WholeCar;
import loomwright.service.input.Json;
import loomwright.service.limits.ServiceLimits;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Large pictures as dots, many at once, in a service of its own with a heap of 1 GB: drawn or refused, and it goes on. */
class PictureMemoryTest {
    private static final int AT_ONCE = 8;
    private static final String CALCULATION_MS = "300000";

    @TempDir
    private static Path folder;

    private static Process service;
    private static URI address;
    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    @BeforeAll
    static void start() throws IOException, InterruptedException {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        address = URI.create("http://127.0.0.1:" + port);
        service = OtherJava.of(
                        List.of("-Xmx1g", "-XX:+UseSerialGC"),
                        Main.class,
                        "--port",
                        String.valueOf(port),
                        "--calculation-ms",
                        CALCULATION_MS)
                .redirectOutput(folder.resolve("log").toFile())
                .start();
        while (service.isAlive() && !isReady()) {
            Thread.sleep(100);
        }
    }

    @AfterAll
    static void stop() {
        service.destroy();
    }

    /** Nobody listening yet is an answer here, no fault. */
    private static boolean isReady() throws InterruptedException {
        try {
            return status(HttpRequest.newBuilder(address.resolve("/health")).build()) == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    private static int status(HttpRequest request) throws IOException, InterruptedException {
        return CLIENT.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
    }

    @Test
    void eightOfAWholeCarForPrint() throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(
                        address.resolve("/v1/plans/diagram?format=png&size=print&marks=none"))
                .header("Content-Type", Json.MEDIA_TYPE)
                .POST(HttpRequest.BodyPublishers.ofByteArray(car()))
                .build();
        List<CompletableFuture<Integer>> pictures = IntStream.range(0, AT_ONCE)
                .mapToObj(i -> CLIENT.sendAsync(request, HttpResponse.BodyHandlers.discarding())
                        .thenApply(HttpResponse::statusCode))
                .toList();
        List<Integer> statuses = pictures.stream().map(CompletableFuture::join).toList();

        assertThat(statuses).contains(200).isSubsetOf(200, 503);
        // What was refused for others is drawn once they are done.
        assertThat(status(request)).isEqualTo(200);
        assertThat(service.isAlive()).isTrue();
    }

    private static byte[] car() throws JsonProcessingException {
        return new Json(ServiceLimits.DEFAULT).mapper().writeValueAsBytes(WholeCar.large());
    }
}
