package loomwright.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The service as a shop installs it: the start script with its jar, in a process of its own that ends with the tests. What it
 * writes stands in {@code target/installed.log}.
 */
final class InstalledService {
    private static final Path LOG = Path.of("target", "installed.log");
    private static final int TRIES = 600;

    private InstalledService() {}

    /**
     * Starts it.
     *
     * @param script the start script
     * @return its port, once it accepts connections
     * @throws IllegalStateException if it ends, or accepts none for a minute
     */
    static int start(String script) {
        try {
            int port = freePort();
            Process process = new ProcessBuilder(script, "--port", String.valueOf(port))
                    .redirectErrorStream(true)
                    .redirectOutput(LOG.toFile())
                    .start();
            Runtime.getRuntime().addShutdownHook(new Thread(process::destroy));
            for (int tried = 0; tried < TRIES && process.isAlive(); tried++) {
                if (accepts(port)) {
                    return port;
                }
                Thread.sleep(100);
            }
            throw new IllegalStateException(script + " does not answer: " + Files.readString(LOG));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    /** Nobody listening yet is an answer here, no fault. */
    private static boolean accepts(int port) {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return socket.isConnected();
        } catch (IOException e) {
            return false;
        }
    }
}
