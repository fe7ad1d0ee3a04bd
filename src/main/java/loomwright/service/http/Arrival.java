package loomwright.service.http;

import static loomwright.message.Arg.arg;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.zip.GZIPInputStream;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.eclipse.jetty.io.EndPoint;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Reads a whole body, as large as it may be and in the time it may take, or what is left of one that is refused. */
public final class Arrival {
    private static final int PIECE_BYTES = 16_384;
    /** Of a refused body: how much more is read, for how long, and how long the sender may pause. */
    private static final long LEFT_BYTES = 100_000_000;

    private static final long LEFT_MS = 10_000;
    private static final int LEFT_PAUSE_MS = 1_000;

    private static final Logger LOG = LoggerFactory.getLogger(Arrival.class);

    private Arrival() {}

    /**
     * The body of a request, unpacked.
     *
     * @throws ProblemException 413 if it is too large, announced or not, packed or unpacked; 408 if it comes too slowly
     */
    public static byte[] of(Context context, ServiceLimits limits, Problems problems) throws IOException {
        long endNs =
                System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(limits.waits().arrivalMs());
        if (context.req().getContentLengthLong() > limits.bodyBytes()) {
            throw problems.ofStatus(413, Map.of());
        }
        ByteArrayOutputStream body = new ByteArrayOutputStream(PIECE_BYTES);
        byte[] piece = new byte[PIECE_BYTES];
        InputStream in = stream(context);
        for (int n = read(in, piece, problems); n >= 0; n = read(in, piece, problems)) {
            if (body.size() + n > limits.bodyBytes()) {
                throw problems.ofStatus(413, Map.of());
            }
            if (System.nanoTime() - endNs > 0) {
                throw new ProblemException(
                        ProblemType.REQUEST_TIMEOUT,
                        ProblemText.ARRIVED_TOO_SLOWLY.with(
                                arg("arrivalMs", limits.waits().arrivalMs())));
            }
            body.write(piece, 0, n);
        }
        return body.toByteArray();
    }

    /** The body as it comes, unpacked if its sender packed it. */
    static InputStream stream(Context context) throws IOException {
        InputStream in = context.bodyInputStream();
        return isPacked(context.header("Content-Encoding")) ? new GZIPInputStream(in) : in;
    }

    /** Whether a content coding is the one that is unpacked here; RFC 9110, section 8.4.1.3, gives it two names. */
    static boolean isPacked(@Nullable String contentEncoding) {
        return "gzip".equalsIgnoreCase(contentEncoding) || "x-gzip".equalsIgnoreCase(contentEncoding);
    }

    /** Whether the length of a body is announced and within the limit. */
    static boolean isShort(Context context, ServiceLimits limits) {
        long length = context.req().getContentLengthLong();
        return length >= 0 && length <= limits.bodyBytes() && !isPacked(context.header("Content-Encoding"));
    }

    /** Whether a request comes with a body. */
    public static boolean isBringing(Context context) {
        return context.req().getContentLengthLong() > 0 || context.header("Transfer-Encoding") != null;
    }

    /**
     * Answers at once and then reads, without keeping it, what the caller still sends. Were the connection closed in the
     * middle of that, the caller would find it broken and never see the answer.
     */
    public static void answerAndDiscard(Context context, byte[] answer, ServiceLimits limits) {
        EndPoint connection = Request.connection(context);
        try {
            context.res().setContentLength(answer.length);
            context.res().getOutputStream().write(answer);
            context.res().flushBuffer();
            // Who asks before sending has not begun to; to read is to say yes.
            if (context.header("Expect") == null) {
                connection.setIdleTimeout(LEFT_PAUSE_MS);
                discard(context.bodyInputStream());
            }
        } catch (IOException gone) {
            LOG.debug("a refused body ended early: {}", gone.toString());
        } finally {
            connection.setIdleTimeout(limits.waits().idleMs());
        }
    }

    private static void discard(InputStream in) throws IOException {
        long endNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(LEFT_MS);
        byte[] piece = new byte[PIECE_BYTES];
        long left = LEFT_BYTES;
        for (int n = 0; n >= 0 && left > 0 && System.nanoTime() - endNs < 0; n = in.read(piece)) {
            left -= n;
        }
    }

    /** The web framework would answer silence by itself, with no problem document. */
    private static int read(InputStream in, byte[] piece, Problems problems) throws IOException {
        try {
            return in.read(piece);
        } catch (IOException broken) {
            if (Problems.hasCause(broken, TimeoutException.class)) {
                throw problems.ofStatus(408, Map.of());
            }
            throw broken;
        }
    }
}
