package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.http.Reply;
import loomwright.service.input.Json;
import loomwright.service.limits.Options;
import org.junit.jupiter.api.Test;

/** A stop lets the requests in flight finish. */
class StopTest {
    @Test
    void aRequestInFlightIsAnswered() throws Exception {
        CountDownLatch working = new CountDownLatch(1);
        CountDownLatch stopping = new CountDownLatch(1);
        Server server = Server.start(
                Options.DEFAULT.withPort(0),
                LiveService.CONTRACT,
                List.of(Endpoint.get("/health", "getHealth", request -> {
                    working.countDown();
                    await(stopping);
                    return Reply.of(Json.MEDIA_TYPE, "{\"status\":\"ok\",\"version\":\"1\"}");
                })));
        CompletableFuture<Integer> status = CompletableFuture.supplyAsync(
                () -> LiveService.ask(server).get("/health").statusCode());
        working.await();
        int port = server.port();
        CompletableFuture<Void> stop = CompletableFuture.runAsync(server::close);
        while (isOpen(port)) {
            Thread.onSpinWait();
        }
        stopping.countDown();
        assertThat(status.get()).isEqualTo(200);
        stop.get();
    }

    private static boolean isOpen(int port) {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return socket.isConnected();
        } catch (IOException refused) {
            return false;
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
