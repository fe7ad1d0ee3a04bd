package loomwright.service;

import java.nio.ByteBuffer;
import java.util.Map;
import loomwright.service.endpoint.Metrics;
import loomwright.service.http.FixedHeaders;
import loomwright.service.http.Problems;
import loomwright.service.http.RequestId;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Problem documents for requests that never reach a route: bad escapes, long URLs, broken headers. */
final class ServerProblems extends ErrorHandler {
    private static final Logger LOG = LoggerFactory.getLogger(ServerProblems.class);

    private final Problems problems;

    ServerProblems(Problems problems) {
        this.problems = problems;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        Object status = request.getAttribute(ERROR_STATUS);
        String requestId = RequestId.of(request.getHeaders().get(RequestId.HEADER));
        int code = status instanceof Integer known ? known : response.getStatus();
        Object thrown = request.getAttribute(ERROR_EXCEPTION);
        if (thrown instanceof EofException) {
            // Whoever sent half a request has gone, or was silent for too long: no fault of ours.
            code = HttpStatus.REQUEST_TIMEOUT_408;
        } else if (code >= 500 && code != 505 && thrown instanceof Throwable fault) {
            LOG.error("request_id={} internal error", requestId, fault);
        }
        byte[] body = fill(code, request, response, requestId);
        response.write(true, ByteBuffer.wrap(body), callback);
        return true;
    }

    private byte[] fill(int status, Request request, Response response, String requestId) {
        ProblemException refusal = problems.ofStatus(status, Map.of());
        request.setAttribute(Metrics.PROBLEM, refusal.type());
        byte[] body = problems.document(refusal, requestId);
        response.setStatus(refusal.type().status());
        HttpFields.Mutable headers = response.getHeaders();
        refusal.headers().forEach(headers::put);
        FixedHeaders.ALL.forEach(headers::put);
        headers.put(RequestId.HEADER, requestId);
        headers.put(HttpHeader.CONTENT_TYPE, Problem.MEDIA_TYPE);
        headers.put(HttpHeader.CONTENT_LENGTH, body.length);
        return body;
    }
}
