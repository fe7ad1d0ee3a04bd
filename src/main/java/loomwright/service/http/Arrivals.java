package loomwright.service.http;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import loomwright.service.limits.ServiceLimits;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.server.handler.EagerContentHandler.RetainedContentLoaderFactory;
import org.eclipse.jetty.server.handler.QoSHandler;
import org.eclipse.jetty.util.Callback;

/**
 * What a request goes through before an operation sees it, so that whoever sends slowly keeps nobody else waiting: a body arrives
 * whole without holding a thread, at least at {@value #LEAST_BYTES_PER_S} bytes a second after {@value #GRACE_S} s, and some
 * threads are kept for the operations that say how the service is. Bulk runs read while they answer and have limits of their own.
 */
public final class Arrivals extends Handler.Wrapper {
    private static final int GRACE_S = 10;
    private static final int LEAST_BYTES_PER_S = 500;
    /** Of the threads: for probes, and for the web server itself. */
    private static final int KEPT_THREADS = 4;

    private static final String BULK = "/v1/bulk/";
    private static final String[] PROBES = {"/health", "/ready", "/metrics"};

    private final long longestNs;

    private Arrivals(Handler next, ServiceLimits limits) {
        super(next);
        this.longestNs = TimeUnit.MILLISECONDS.toNanos(limits.waits().arrivalMs());
    }

    /** To be put before the operations. */
    public static Handler.Wrapper within(ServiceLimits limits) {
        QoSHandler kept = new QoSHandler();
        kept.setMaxRequestCount(limits.threads() - KEPT_THREADS);
        kept.excludePath(PROBES);
        // What is larger than a body may be is refused by who reads it.
        EagerContentHandler whole = new EagerContentHandler(
                new FailuresToo(kept), new RetainedContentLoaderFactory(limits.bodyBytes(), 0, false));
        whole.excludePath(BULK + "*");
        return new Arrivals(whole, limits);
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        boolean isTimed = !request.getHttpURI().getCanonicalPath().startsWith(BULK);
        return super.handle(isTimed ? new Timed(request, longestNs) : request, response, callback);
    }

    /**
     * Ends a request whose answer could not be written. The web server hands on a request that is the callback at once, and which
     * ends by {@code fail}, not by {@code failed} (Jetty 12.1.12): whoever went away before the answer would hold one of the places for ever.
     */
    private static final class FailuresToo extends Handler.Wrapper {
        FailuresToo(Handler next) {
            super(next);
        }

        @Override
        public boolean handle(Request request, Response response, Callback callback) throws Exception {
            return super.handle(request, response, new Callback.Nested(callback) {
                @Override
                public void failed(Throwable failure) {
                    super.failed(failure);
                    if (callback == request) {
                        request.fail(failure);
                    }
                }
            });
        }
    }

    /** A request whose body fails to be read once it has taken too long. */
    private static final class Timed extends Request.Wrapper {
        private final long longestNs;
        private long bytes;

        Timed(Request request, long longestNs) {
            super(request);
            this.longestNs = longestNs;
        }

        @Override
        public Content.Chunk read() {
            Content.Chunk chunk = super.read();
            if (chunk == null || chunk.isLast()) {
                return chunk;
            }
            bytes += chunk.remaining();
            long takenNs = System.nanoTime() - getHeadersNanoTime();
            if (takenNs <= longestNs && takenNs <= TimeUnit.SECONDS.toNanos(GRACE_S + bytes / LEAST_BYTES_PER_S)) {
                return chunk;
            }
            chunk.release();
            TimeoutException slow = new TimeoutException("the body comes too slowly");
            fail(slow);
            return Content.Chunk.from(slow);
        }
    }
}
