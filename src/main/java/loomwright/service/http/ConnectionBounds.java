package loomwright.service.http;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loomwright.service.limits.ServiceLimits;
import org.eclipse.jetty.http.HttpParser;
import org.eclipse.jetty.io.AbstractEndPoint;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.internal.HttpConnection;

/** How many connections there may be, in all and from one address, and how long the head of a request may take to arrive. */
public final class ConnectionBounds implements Connection.Listener {
    private static final long HEAD_MS = 10_000;
    private static final int LOOKS = 10;

    /** What one address may hold: a quarter of all, but no fewer than a busy office needs. One more takes the place of an idle one. */
    private static final int SHARE = 4;

    private static final int OF_ONE_ADDRESS = 64;
    /** Files, the log and the web server itself need some. */
    private static final int KEPT_DESCRIPTORS = 40;

    private static final int FEWEST = 8;
    /** The soft limit of proc(5), /proc/pid/limits; "unlimited" does not match. */
    private static final Pattern OPEN_FILES = Pattern.compile("Max open files\\s+(\\d+)\\s.*");

    private final AbstractConnector connector;
    private final int ofOneAddress;
    private final long headMs;
    private final Map<String, Integer> byAddress = new ConcurrentHashMap<>();
    /** With their addresses, which a closed one no longer tells. */
    private final Map<Connection, String> open = new ConcurrentHashMap<>();

    private ConnectionBounds(AbstractConnector connector, ServiceLimits limits, boolean isBehindProxies) {
        this.connector = connector;
        // Behind proxies all come from the few addresses of these.
        this.ofOneAddress =
                isBehindProxies ? Integer.MAX_VALUE : Math.max(OF_ONE_ADDRESS, limits.connections() / SHARE);
        this.headMs = Math.min(HEAD_MS, limits.waits().arrivalMs());
    }

    /** Holds the connections of a connector that has started to these bounds. */
    public static void hold(AbstractConnector connector, ServiceLimits limits, boolean isBehindProxies) {
        ConnectionBounds bounds = new ConnectionBounds(connector, limits, isBehindProxies);
        connector.addEventListener(bounds);
        bounds.lookAgain();
    }

    /**
     * How many connections there may be at once: as many as the operator allows, fewer where the machine gives the process
     * fewer descriptors. Only Linux tells.
     */
    public static int most(ServiceLimits limits) {
        Path descriptors = Path.of("/proc/self/fd");
        if (!Files.isDirectory(descriptors)) {
            return limits.connections();
        }
        try (Stream<Path> inUse = Files.list(descriptors);
                Stream<String> lines = Files.lines(Path.of("/proc/self/limits"))) {
            long free = lines.map(OPEN_FILES::matcher)
                            .filter(Matcher::matches)
                            .mapToLong(limit -> Long.parseLong(limit.group(1)))
                            .findFirst()
                            .orElse(Long.MAX_VALUE)
                    - inUse.count();
            return (int) Math.max(FEWEST, Math.min(limits.connections(), free - KEPT_DESCRIPTORS));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void onOpened(Connection connection) {
        String address = address(connection);
        open.put(connection, address);
        if (byAddress.merge(address, 1, Integer::sum) > ofOneAddress) {
            longestIdle(address).orElse(connection).getEndPoint().close();
        }
    }

    /** The one of an address that has waited longest for its next request; none if all are at work. */
    private Optional<Connection> longestIdle(String address) {
        return connector.getConnectedEndPoints().stream()
                .filter(AbstractEndPoint.class::isInstance)
                .map(AbstractEndPoint.class::cast)
                .sorted(Comparator.comparingLong(AbstractEndPoint::getIdleFor).reversed())
                .map(EndPoint::getConnection)
                .filter(HttpConnection.class::isInstance)
                .map(HttpConnection.class::cast)
                .filter(held -> held.getParser().isStart() && address.equals(open.get(held)))
                .map(Connection.class::cast)
                .findFirst();
    }

    @Override
    public void onClosed(Connection connection) {
        String address = open.remove(connection);
        if (address != null) {
            byAddress.computeIfPresent(address, (key, count) -> count == 1 ? null : count - 1);
        }
    }

    private static String address(Connection connection) {
        return connection.getEndPoint().getRemoteSocketAddress() instanceof InetSocketAddress address
                ? address.getHostString()
                : "";
    }

    private void lookAgain() {
        connector.getScheduler().schedule(this::closeSlowHeads, headMs / LOOKS + 1, TimeUnit.MILLISECONDS);
    }

    private void closeSlowHeads() {
        if (!connector.isRunning()) {
            return;
        }
        for (EndPoint endPoint : connector.getConnectedEndPoints()) {
            if (endPoint.getConnection() instanceof HttpConnection connection && isSlow(connection.getParser())) {
                endPoint.close();
            }
        }
        lookAgain();
    }

    private boolean isSlow(HttpParser parser) {
        return parser.inHeaderState()
                && !parser.isStart()
                && System.nanoTime() - parser.getBeginNanoTime() > TimeUnit.MILLISECONDS.toNanos(headMs);
    }
}
