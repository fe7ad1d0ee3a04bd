package loomwright.service.http;

import static loomwright.message.Arg.arg;

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
import loomwright.service.problem.ProblemText;
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
                    ProblemType.OUT_OF_TIME, ProblemText.OUT_OF_TIME.with(arg("limit", outOfTime.limit())));
        }
        if (thrown instanceof NoConvergence stuck) {
            return new ProblemException(
                    ProblemType.OUT_OF_TIME,
                    ProblemText.NOT_SETTLED.with(
                            arg("steps", stuck.iterations()),
                            arg("elements", Problem.shortened(String.join(", ", stuck.elementIds())))));
        }
        if (thrown instanceof Png.NoFonts) {
            return new ProblemException(ProblemType.NO_FONTS, ProblemText.NO_FONTS.with(arg("packages", Png.PACKAGES)));
        }
        if (thrown instanceof Png.NoRoom) {
            return new ProblemException(ProblemType.BUSY, ProblemText.NO_ROOM.with());
        }
        if (thrown instanceof HttpResponseException http) {
            return ofStatus(http.getStatus(), http.getDetails());
        }
        if (hasCause(thrown, TimeoutException.class)) {
            return ofStatus(408, Map.of());
        }
        if (hasCause(thrown, ZipException.class)) {
            return new ProblemException(ProblemType.MALFORMED_REQUEST, ProblemText.NOT_PACKED.with());
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
            case 404 -> new ProblemException(ProblemType.NOT_FOUND, ProblemText.NO_SUCH_PATH.with());
            case 405 -> notAllowed(details.getOrDefault("availableMethods", ""));
            case 408 ->
                new ProblemException(
                        ProblemType.REQUEST_TIMEOUT,
                        ProblemText.SILENT_CONNECTION.with(
                                arg("idleMs", limits.waits().idleMs())));
            case 413 ->
                new ProblemException(
                        ProblemType.BODY_TOO_LARGE, ProblemText.BODY_TOO_LARGE.with(arg("most", limits.bodyBytes())));
            case 414 ->
                new ProblemException(
                        ProblemType.URL_TOO_LONG, ProblemText.URL_TOO_LONG.with(arg("most", limits.headBytes())));
            case 431 ->
                new ProblemException(
                        ProblemType.HEADERS_TOO_LARGE,
                        ProblemText.HEADERS_TOO_LARGE.with(arg("most", limits.headBytes())));
            case 501 -> new ProblemException(ProblemType.NOT_IMPLEMENTED, ProblemText.NO_SUCH_METHOD.with());
            default ->
                status < 500 || status == 505
                        ? new ProblemException(ProblemType.MALFORMED_REQUEST, ProblemText.BROKEN_REQUEST.with())
                        : new ProblemException(ProblemType.INTERNAL_ERROR, ProblemText.OUR_MISTAKE.with());
        };
    }

    private static ProblemException notAllowed(String methods) {
        String allow = methods.toUpperCase(Locale.ROOT);
        return new ProblemException(
                ProblemType.METHOD_NOT_ALLOWED,
                ProblemText.OTHER_METHODS.with(arg("methods", allow)),
                List.of(),
                Map.of("Allow", allow));
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
