package loomwright.service;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.stream.Stream;
import loomwright.Main;
import loomwright.OtherJava;
import loomwright.service.input.Json;

/** The service in a Java of its own, for tests of what a whole process does. */
final class OtherService implements AutoCloseable {
    static final HttpClient CLIENT = HttpClient.newHttpClient();

    private final Process process;
    private final URI address;

    private OtherService(Process process, URI address) {
        this.process = process;
        this.address = address;
    }

    /**
     * Starts it and waits until it answers.
     *
     * @param options of the Java machine
     * @param log where its output goes
     * @throws IllegalStateException if it ends before
     */
    static OtherService start(List<String> options, File log, String... arguments)
            throws IOException, InterruptedException {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        String[] all = Stream.concat(Stream.of("--port", String.valueOf(port)), Stream.of(arguments))
                .toArray(String[]::new);
        OtherService service = new OtherService(
                OtherJava.of(options, Main.class, all).redirectOutput(log).start(),
                URI.create("http://127.0.0.1:" + port));
        while (!service.answers()) {
            if (!service.isAlive()) {
                throw new IllegalStateException("the service ended, see " + log);
            }
            Thread.sleep(100);
        }
        return service;
    }

    /** Nobody listening yet is an answer here, no fault. */
    private boolean answers() throws InterruptedException {
        try {
            return status(get("/health")) == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    HttpRequest get(String path) {
        return HttpRequest.newBuilder(address.resolve(path)).build();
    }

    HttpRequest post(String path, byte[] json) {
        return HttpRequest.newBuilder(address.resolve(path))
                .header("Content-Type", Json.MEDIA_TYPE)
                .POST(HttpRequest.BodyPublishers.ofByteArray(json))
                .build();
    }

    Socket connect() throws IOException {
        return new Socket(address.getHost(), address.getPort());
    }

    static int status(HttpRequest request) throws IOException, InterruptedException {
        return CLIENT.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
    }

    boolean isAlive() {
        return process.isAlive();
    }

    /** Asks it to end as a machine that shuts down does, by SIGTERM. */
    void terminate() {
        process.destroy();
    }

    int exitStatus() throws InterruptedException {
        return process.waitFor();
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
