package loomwright.service.http;

import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.RequestLog;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.NanoTime;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Logs one line per request, those included that never reach a route. */
public final class RequestLine implements RequestLog {
    /** Request attribute: the path template, so that lines can be counted by operation. */
    public static final String TEMPLATE = "loomwright.template";

    private static final Logger LOG = LoggerFactory.getLogger("loomwright.request");

    @Override
    public void log(Request request, Response response) {
        if (LOG.isInfoEnabled()) {
            Object template = request.getAttribute(TEMPLATE);
            long micros = TimeUnit.NANOSECONDS.toMicros(NanoTime.since(request.getBeginNanoTime()));
            LOG.info(
                    "method={} path={} status={} ms={} bytes={} request_id={}",
                    word(request.getMethod()),
                    template == null ? "-" : template,
                    response.getStatus(),
                    String.format(Locale.ROOT, "%d.%03d", micros / 1000, micros % 1000),
                    Response.getContentBytesWritten(response),
                    response.getHeaders().get(RequestId.HEADER));
        }
    }

    /** A method is free text of the caller: nothing of it may look like another field. */
    private static String word(String method) {
        return method.matches("[A-Z]{1,20}") ? method : "-";
    }
}
