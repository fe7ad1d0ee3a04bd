package loomwright;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.List;
import java.util.concurrent.Callable;
import loomwright.service.Server;
import loomwright.service.limits.Options;
import picocli.CommandLine.Command;

/** Starts the service, asks it what callers ask first, and stops it: what an archive of classes is recorded from. */
@Command(name = "rehearse", hidden = true, mixinStandardHelpOptions = true)
final class RehearseCommand implements Callable<Integer> {
    private static final String PLAN = "/v1/examples/sandpiper-as-built";
    private static final List<String> OF_A_PLAN = List.of("/v1/plans/solution", "/v1/plans/review", "/v1/bulk/review");
    private static final List<String> WITHOUT_A_PLAN =
            List.of("/health", "/openapi.yaml", "/docs", "/v1/conductors", PLAN + "/diagram?format=svg");

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    @Override
    public Integer call() throws IOException, InterruptedException {
        try (Server server = Server.start(Options.DEFAULT.withPort(0))) {
            String service = "http://127.0.0.1:" + server.port();
            for (String path : WITHOUT_A_PLAN) {
                answer(HttpRequest.newBuilder(URI.create(service + path)).build());
            }
            String plan =
                    answer(HttpRequest.newBuilder(URI.create(service + PLAN)).build());
            for (String path : OF_A_PLAN) {
                boolean lines = path.startsWith("/v1/bulk/");
                answer(HttpRequest.newBuilder(URI.create(service + path))
                        .header("Content-Type", lines ? "application/x-ndjson" : "application/json")
                        .POST(BodyPublishers.ofString(lines ? plan.replaceAll("\\s*\\R\\s*", " ") : plan))
                        .build());
            }
        }
        return 0;
    }

    private String answer(HttpRequest request) throws IOException, InterruptedException {
        HttpResponse<String> response = client.send(request, BodyHandlers.ofString());
        if (response.statusCode() != 200) {
            throw new IllegalStateException(request.uri() + " answers " + response.statusCode());
        }
        return response.body();
    }
}
