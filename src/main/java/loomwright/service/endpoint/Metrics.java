package loomwright.service.endpoint;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.Meter.MeterProvider;
import io.micrometer.core.instrument.Timer;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.core.instrument.binder.system.FileDescriptorMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.stream.Stream;
import loomwright.answer.Progress;
import loomwright.bulk.Line;
import loomwright.bulk.LineAnswer;
import loomwright.service.http.Reply;
import loomwright.service.http.RequestLine;
import loomwright.service.problem.ProblemType;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.RequestLog;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.NanoTime;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** What the service counts of its work. No label holds text of a caller, so their number is bounded. */
public final class Metrics implements RequestLog {
    /** Request attributes: the operation, and the kind of problem if it was answered with one. */
    public static final String OPERATION = "loomwright.operation";

    public static final String PROBLEM = "loomwright.problem";

    private static final String MEDIA_TYPE = "text/plain";
    private static final String NONE = "-";

    private static final Duration[] BUCKETS = Stream.of(
                    1, 2, 5, 10, 25, 50, 100, 250, 500, 1_000, 2_500, 10_000, 60_000)
            .map(Duration::ofMillis)
            .toArray(Duration[]::new);

    private final PrometheusMeterRegistry registry = new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
    private final MeterProvider<Counter> requests = Counter.builder("loomwright.requests")
            .description("Requests answered, by operation, path template and status.")
            .withRegistry(registry);
    private final MeterProvider<Timer> durations = Timer.builder("loomwright.request.duration")
            .description("From the first byte of a request to the last of its answer.")
            .serviceLevelObjectives(BUCKETS)
            .withRegistry(registry);
    private final MeterProvider<Counter> problems = Counter.builder("loomwright.problems")
            .description("Requests answered with a problem, by its type.")
            .withRegistry(registry);
    private final MeterProvider<Counter> lines = Counter.builder("loomwright.bulk.lines")
            .description("Lines of bulk runs, by operation and outcome.")
            .withRegistry(registry);
    private boolean asksTheMachine;

    @Override
    public void log(Request request, Response response) {
        String operation = attribute(request, OPERATION);
        requests.withTags(
                        "operation",
                        operation,
                        "path",
                        attribute(request, RequestLine.TEMPLATE),
                        "status",
                        String.valueOf(response.getStatus()))
                .increment();
        durations
                .withTags("operation", operation)
                .record(NanoTime.since(request.getBeginNanoTime()), TimeUnit.NANOSECONDS);
        if (request.getAttribute(PROBLEM) instanceof ProblemType type) {
            problems.withTags("type", type.code()).increment();
        }
    }

    /** Once, and not before somebody wants to know: it is a tenth of a start. */
    private synchronized void askTheMachine() {
        if (!asksTheMachine) {
            asksTheMachine = true;
            List.of(
                            new JvmMemoryMetrics(),
                            new JvmThreadMetrics(),
                            new FileDescriptorMetrics(),
                            new ProcessorMetrics(),
                            new UptimeMetrics())
                    .forEach(binder -> binder.bindTo(registry));
        }
    }

    private static String attribute(Request request, String name) {
        return request.getAttribute(name) instanceof String text ? text : NONE;
    }

    /** Shows the requests that wait for a thread, and the threads at work. */
    public void watch(QueuedThreadPool threads) {
        gauge("loomwright.http.queue", "Requests that wait for a thread.", threads::getQueueSize);
        gauge("loomwright.http.threads", "Threads at work on requests.", threads::getUtilizedThreads);
    }

    /** Shows a number as it is when it is asked for. */
    public void gauge(String name, String description, Supplier<Number> number) {
        Gauge.builder(name, number)
                .description(description)
                .strongReference(true)
                .register(registry);
    }

    /** The same answers to lines, counted. */
    public BiFunction<Line, Progress, LineAnswer> counting(
            String operation, BiFunction<Line, Progress, LineAnswer> work) {
        Counter answers = lines.withTags("operation", operation, "outcome", "answer");
        Counter refused = lines.withTags("operation", operation, "outcome", "problem");
        return (line, progress) -> {
            LineAnswer answer = work.apply(line, progress);
            (answer.isProblem() ? refused : answers).increment();
            return answer;
        };
    }

    /** All of it and what the machine says of itself, in the text format of Prometheus. */
    public Reply handle(loomwright.service.http.Request request) {
        request.checkAccepts(MEDIA_TYPE);
        askTheMachine();
        return Reply.of("text/plain; version=0.0.4; charset=utf-8", registry.scrape())
                .withHeaders(Map.of("Cache-Control", "no-store"));
    }
}
