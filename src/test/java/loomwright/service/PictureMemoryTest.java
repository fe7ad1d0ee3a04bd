package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import loomwright.circuit.WholeCar;
import loomwright.service.input.Json;
import loomwright.service.limits.ServiceLimits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Large pictures as dots, many at once, in a service with a heap of 1 GB: drawn or refused, and it goes on. */
class PictureMemoryTest {
    private static final int AT_ONCE = 8;

    /** The memory is what may run out, not the time. */
    private static final String CALCULATION_MS = "300000";

    @Test
    void eightOfAWholeCarForPrint(@TempDir Path folder) throws IOException, InterruptedException {
        try (OtherService service = OtherService.start(
                List.of("-Xmx1g", "-XX:+UseSerialGC"),
                folder.resolve("log").toFile(),
                "--calculation-ms",
                CALCULATION_MS)) {
            HttpRequest request = service.post(
                    "/v1/plans/diagram?format=png&size=print&marks=none",
                    new Json(ServiceLimits.DEFAULT).mapper().writeValueAsBytes(WholeCar.large()));
            List<CompletableFuture<Integer>> pictures = IntStream.range(0, AT_ONCE)
                    .mapToObj(i -> OtherService.CLIENT
                            .sendAsync(request, HttpResponse.BodyHandlers.discarding())
                            .thenApply(HttpResponse::statusCode))
                    .toList();
            List<Integer> statuses =
                    pictures.stream().map(CompletableFuture::join).toList();

            assertThat(statuses).contains(200).isSubsetOf(200, 503);
            // What was refused for others is drawn once they are done.
            assertThat(OtherService.status(request)).isEqualTo(200);
            assertThat(service.isAlive()).isTrue();
        }
    }
}
