package loomwright.service;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Reads a whole body, as large as it may be and in the time it may take. */
final class Arrival {
    private static final int PIECE_BYTES = 16_384;

    private Arrival() {}

    /**
     * The body of a request.
     *
     * @throws Refusal 413 if it is too large, announced or not; 408 if it comes too slowly
     */
    static byte[] of(Context context, ServiceLimits limits, Problems problems) throws IOException {
        long endNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(limits.arrivalMs());
        if (context.contentLength() > limits.bodyBytes()) {
            throw problems.ofStatus(413, Map.of());
        }
        ByteArrayOutputStream body = new ByteArrayOutputStream(PIECE_BYTES);
        byte[] piece = new byte[PIECE_BYTES];
        InputStream in = context.bodyInputStream();
        for (int n = read(in, piece, problems); n >= 0; n = read(in, piece, problems)) {
            if (body.size() + n > limits.bodyBytes()) {
                throw problems.ofStatus(413, Map.of());
            }
            if (System.nanoTime() - endNs > 0) {
                throw new Refusal(
                        ProblemType.REQUEST_TIMEOUT,
                        "The body took longer than " + limits.arrivalMs() + " ms to arrive.");
            }
            body.write(piece, 0, n);
        }
        return body.toByteArray();
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
