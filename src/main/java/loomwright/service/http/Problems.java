package loomwright.service.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.javalin.http.HttpResponseException;
import java.io.EOFException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeoutException;
import java.util.zip.ZipException;
import loomwright.answer.OutOfTime;
import loomwright.drawing.Png;
import loomwright.network.NoConvergence;
import loomwright.service.input.Json;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemType;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The one place where what went wrong becomes a problem document. */
public final class Problems {
    private static final Logger LOG = LoggerFactory.getLogger(Problems.class);

    private final Json json;
    private final ServiceLimits limits;

    public Problems(Json json, ServiceLimits limits) {
        this.json = json;
        this.limits = limits;
    }

    /** What to send for an exception: never a stack trace; faults of ours go to the log with the request id. */
    public ProblemException refusal(Throwable thrown, String requestId) {
        if (thrown instanceof ProblemException refusal) {
            return refusal;
        }
        if (thrown instanceof OutOfTime outOfTime) {
            return new ProblemException(
                    ProblemType.OUT_OF_TIME,
                    outOfTime.getMessage() + ". Ask for less at once, or for wider limits at start.");
        }
        if (thrown instanceof NoConvergence stuck) {
            return new ProblemException(
                    ProblemType.OUT_OF_TIME,
                    "The solution did not settle within " + stuck.iterations()
                            + " steps; these elements kept changing: "
                            + Problem.shortened(String.join(", ", stuck.elementIds())) + ".");
        }
        if (thrown instanceof Png.NoFonts noFonts) {
            return new ProblemException(ProblemType.NO_FONTS, String.valueOf(noFonts.getMessage()));
        }
        if (thrown instanceof Png.NoRoom noRoom) {
            return new ProblemException(ProblemType.BUSY, String.valueOf(noRoom.getMessage()));
        }
        if (thrown instanceof HttpResponseException http) {
            return ofStatus(http.getStatus(), http.getDetails());
        }
        if (hasCause(thrown, TimeoutException.class)) {
            return ofStatus(408, Map.of());
        }
        if (hasCause(thrown, ZipException.class)) {
            return new ProblemException(
                    ProblemType.MALFORMED_REQUEST,
                    "The body is not what Content-Encoding: gzip says. Compress it with gzip, or leave the header out.");
        }
        if (hasCause(thrown, EOFException.class)) {
            return ofStatus(400, Map.of());
        }
        LOG.error("request_id={} internal error", requestId, thrown);
        return ofStatus(500, Map.of());
    }

    /** What to send for a status that the web server decided on. */
    public ProblemException ofStatus(int status, Map<String, String> details) {
        return switch (status) {
            case 404 ->
                new ProblemException(
                        ProblemType.NOT_FOUND,
                        "No operation has this path. GET /openapi.yaml lists them, GET /docs shows them.");
            case 405 -> notAllowed(details.getOrDefault("availableMethods", ""));
            case 408 ->
                new ProblemException(
                        ProblemType.REQUEST_TIMEOUT, "The connection was silent for " + limits.idleMs() + " ms.");
            case 413 ->
                new ProblemException(
                        ProblemType.BODY_TOO_LARGE, "A body may have up to " + limits.bodyBytes() + " bytes.");
            case 414 ->
                new ProblemException(
                        ProblemType.URL_TOO_LONG,
                        "Request line and headers may have " + limits.headBytes() + " bytes. Use POST for long input.");
            case 431 ->
                new ProblemException(
                        ProblemType.HEADERS_TOO_LARGE,
                        "Request line and headers may have " + limits.headBytes() + " bytes together.");
            case 501 -> new ProblemException(ProblemType.NOT_IMPLEMENTED, "Use GET, POST, HEAD or OPTIONS.");
            default ->
                status < 500 || status == 505
                        ? new ProblemException(
                                ProblemType.MALFORMED_REQUEST,
                                "The request cannot be read: look for bad percent escapes or characters in the URL, for"
                                        + " broken headers, and for a body that ends too early.")
                        : new ProblemException(
                                ProblemType.INTERNAL_ERROR,
                                "The service made a mistake; it is logged under the request id of this answer.");
        };
    }

    private static ProblemException notAllowed(String methods) {
        String allow = methods.toUpperCase(Locale.ROOT);
        return new ProblemException(
                ProblemType.METHOD_NOT_ALLOWED, "This address takes " + allow + ".", List.of(), Map.of("Allow", allow));
    }

    /** A refusal as a document. */
    public Problem problem(ProblemException refusal, String requestId) {
        return Problem.of(refusal.type(), String.valueOf(refusal.getMessage()), requestId, refusal.errors());
    }

    /** The text of that document. */
    public byte[] document(ProblemException refusal, String requestId) {
        try {
            return json.write(problem(refusal, requestId));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a problem document cannot be written", e);
        }
    }

    public static boolean hasCause(Throwable thrown, Class<? extends Throwable> type) {
        for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
            if (type.isInstance(cause)) {
                return true;
            }
        }
        return false;
    }
}
