package loomwright.service;

import static io.restassured.RestAssured.given;

import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import loomwright.service.input.Contract;
import loomwright.service.limits.Options;

/**
 * The real service on a free port, one for all tests of a run; every answer goes through the {@link ContractFilter}. Where the
 * system property {@value #INSTALLED} names a start script, it is the service that the script starts.
 */
public final class LiveService {
    public static final Contract CONTRACT = Contract.load();
    /** What answers are held to: only what this version knows. */
    public static final Contract CLOSED = ClosedContract.of(CONTRACT);

    static final ContractFilter FILTER = new ContractFilter(CLOSED);
    private static final String INSTALLED = "loomwright.installed";
    private static final int PORT = port();

    private LiveService() {}

    private static int port() {
        String script = System.getProperty(INSTALLED);
        return script == null ? Server.start(Options.DEFAULT.withPort(0)).port() : InstalledService.start(script);
    }

    /** A request whose answer is held to the contract. */
    public static RequestSpecification ask() {
        return ask(PORT);
    }

    /** For programs of other makes. */
    static String address() {
        return "http://127.0.0.1:" + PORT;
    }

    public static RequestSpecification ask(Server server) {
        return ask(server.port());
    }

    private static RequestSpecification ask(int port) {
        return given().baseUri("http://127.0.0.1")
                .port(port)
                .urlEncodingEnabled(false)
                .filter(FILTER);
    }

    /** What the service answers to bytes that no HTTP client would send. */
    public static String raw(String request) {
        return raw(PORT, request);
    }

    public static String raw(Server server, String request) {
        return raw(server.port(), request);
    }

    private static String raw(int port, String request) {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            socket.shutdownOutput();
            try (InputStream in = socket.getInputStream()) {
                return new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
