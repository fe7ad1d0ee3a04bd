package loomwright.service;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.util.JavalinException;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import loomwright.service.endpoint.Diagrams;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.endpoint.Metrics;
import loomwright.service.endpoint.Monitoring;
import loomwright.service.http.AccessControl;
import loomwright.service.http.Arrival;
import loomwright.service.http.Arrivals;
import loomwright.service.http.ConnectionBounds;
import loomwright.service.http.EncodingChoice;
import loomwright.service.http.ErrorsAsText;
import loomwright.service.http.FixedHeaders;
import loomwright.service.http.Freshness;
import loomwright.service.http.MaxLengthFilter;
import loomwright.service.http.PackedStream;
import loomwright.service.http.PathNormaliser;
import loomwright.service.http.Problems;
import loomwright.service.http.Reply;
import loomwright.service.http.Representation;
import loomwright.service.http.Request;
import loomwright.service.http.RequestId;
import loomwright.service.http.RequestLine;
import loomwright.service.input.Contract;
import loomwright.service.input.Contract.Operation;
import loomwright.service.limits.Options;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.page.Examples;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemType;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.RequestLog;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running service. */
public final class Server implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Server.class);
    private static final int FEWEST_THREADS = 8;
    /** After these the rest of a body is not waited for. */
    private static final Set<ProblemType> WORTH_NO_WAIT =
            EnumSet.of(ProblemType.UNKNOWN_CALLER, ProblemType.REQUEST_TIMEOUT);

    private static final String CACHE_CONTROL = "Cache-Control";

    private static final String ALLOWED_HEADERS =
            String.join(", ", "Content-Type", RequestId.HEADER, "Authorization", AccessControl.KEY_HEADER);

    private final Options options;
    private final Contract contract;
    private final Request.Reading reading;
    private final List<Endpoint> endpoints;
    private final AccessControl entrance;
    private final Monitoring vitals;
    private final Javalin javalin;

    private Server(Options options, Contract contract, List<Endpoint> endpoints, Monitoring vitals) {
        this.options = options;
        this.contract = contract;
        this.endpoints = endpoints;
        this.entrance = new AccessControl(options.entrance());
        this.vitals = vitals;
        this.reading = Request.Reading.of(contract, options);
        this.javalin = Javalin.create(this::configure);
    }

    /** Starts the service with all its operations. */
    public static Server start(Options options) {
        // Side by side, as each is a good part of a start.
        CompletableFuture<Contract> contract = CompletableFuture.supplyAsync(Contract::load);
        Monitoring vitals = Monitoring.fresh();
        return start(options, contract.join(), vitals);
    }

    /**
     * The same, warming up in the background: does once what the first picture needs far longer for than any later one,
     * and says until then that the service is not ready.
     */
    public static Server startAndWarmUp(Options options) {
        Monitoring vitals = Monitoring.fresh();
        vitals.readiness().warmingUp();
        Server server = start(options, Contract.load(), vitals);
        server.warmUp();
        return server;
    }

    private static Server start(Options options, Contract contract, Monitoring vitals) {
        return start(options, contract, Routes.table(contract, options.calculation(), vitals), vitals);
    }

    static Server start(Options options, Contract contract, List<Endpoint> endpoints) {
        return start(options, contract, endpoints, Monitoring.fresh());
    }

    static Server start(Options options, Contract contract, List<Endpoint> endpoints, Monitoring vitals) {
        Server server = new Server(options, contract, endpoints, vitals);
        server.javalin.start();
        // That of requests holds during them only.
        for (Connector connector : server.javalin.jettyServer().server().getConnectors()) {
            AbstractConnector accepting = (AbstractConnector) connector;
            accepting.setIdleTimeout(options.limits().waits().idleMs());
            ConnectionBounds.hold(
                    accepting, options.limits(), options.entrance().trustedProxies() > 0);
        }
        return server;
    }

    private void warmUp() {
        Thread thread = new Thread(this::drawOnce, "warm-up");
        thread.setDaemon(true);
        thread.start();
    }

    private void drawOnce() {
        try {
            new Diagrams(options.calculation(), Examples.load()).warmUp(reading.json());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            vitals.readiness().warm();
        }
    }

    public int port() {
        return javalin.port();
    }

    /**
     * Says that it is not ready, serves on until whoever shares out the requests has noticed, then stops listening, lets
     * requests in flight and lines under way finish, and returns.
     */
    @Override
    public void close() {
        vitals.readiness().stopping();
        try {
            TimeUnit.MILLISECONDS.sleep(options.limits().waits().drainMs());
        } catch (InterruptedException hurry) {
            Thread.currentThread().interrupt();
        }
        endpoints.forEach(endpoint -> endpoint.handler().stop());
        try {
            javalin.stop();
        } catch (JavalinException e) {
            if (!Problems.hasCause(e, TimeoutException.class)) {
                throw e;
            }
            LOG.info(
                    "stopped after {} ms with requests unfinished",
                    options.limits().waits().stopMs());
        }
    }

    private void configure(JavalinConfig config) {
        ServiceLimits limits = options.limits();
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.jetty.host = options.host();
        config.jetty.port = options.port();
        QueuedThreadPool threads = new QueuedThreadPool(limits.threads(), FEWEST_THREADS);
        config.jetty.threadPool = threads;
        vitals.metrics().watch(threads);
        config.http.maxRequestSize = limits.bodyBytes();
        config.http.prefer405over404 = true;
        config.http.compressionStrategy = CompressionStrategy.GZIP;
        config.jetty.modifyServer(server -> {
            server.setStopTimeout(limits.waits().stopMs());
            server.setErrorHandler(new ServerProblems(reading.problems()));
            server.setRequestLog(new RequestLog.Collection(new RequestLine(), vitals.metrics()));
            server.addBean(new NetworkConnectionLimit(ConnectionBounds.most(limits), server));
            server.setHandler(Arrivals.within(limits));
        });
        config.jetty.modifyHttpConfiguration(http -> {
            http.setSendServerVersion(false);
            http.setRequestHeaderSize(limits.headBytes());
            http.setIdleTimeout(limits.waits().idleMs());
            // A size such as 2/0 stands in a path as 2%2F0.
            http.setUriCompliance(UriCompliance.from("DEFAULT,AMBIGUOUS_PATH_SEPARATOR"));
            http.addCustomizer(new PathNormaliser());
            http.addCustomizer(new EncodingChoice());
        });
        config.routes.before(this::addFixedHeaders);
        endpoints.forEach(endpoint -> addRoute(config, endpoint));
        methodsByPath()
                .forEach((path, methods) -> config.routes.options(path, context -> {
                    context.attribute(RequestLine.TEMPLATE, path);
                    context.status(204).header("Allow", String.join(", ", methods));
                }));
        config.routes.exception(Exception.class, this::sendProblem);
        config.routes.exception(HttpResponseException.class, this::sendProblem);
    }

    private void addRoute(JavalinConfig config, Endpoint endpoint) {
        Operation operation = contract.operation(endpoint.operationId());
        Handler handler = context -> {
            context.attribute(RequestLine.TEMPLATE, endpoint.path());
            context.attribute(Metrics.OPERATION, endpoint.operationId());
            context.attribute(ErrorsAsText.ASKED, ErrorsAsText.isAsked(context.queryString(), operation));
            entrance.admit(context, operation);
            try {
                Request request = new Request(context, operation, reading);
                send(context, MaxLengthFilter.fit(endpoint.handler().handle(request), request));
            } catch (Error fault) {
                if (context.res().isCommitted()) {
                    // What is half sent must not end as if it were whole.
                    throw fault;
                }
                // The web framework looks after exceptions only.
                sendProblem(fault, context);
            }
        };
        if (endpoint.method() == Endpoint.Method.GET) {
            // The same headers as GET; the web server drops the body.
            config.routes.addHttpHandler(HandlerType.HEAD, endpoint.path(), handler);
        }
        config.routes.addHttpHandler(HandlerType.findOrCreate(endpoint.method().name()), endpoint.path(), handler);
    }

    private Map<String, Set<String>> methodsByPath() {
        Map<String, Set<String>> methods = new TreeMap<>();
        for (Endpoint endpoint : endpoints) {
            Set<String> here = methods.computeIfAbsent(endpoint.path(), path -> new TreeSet<>(List.of("OPTIONS")));
            here.add(endpoint.method().name());
            if (endpoint.method() == Endpoint.Method.GET) {
                here.add("HEAD");
            }
        }
        return methods;
    }

    private void addFixedHeaders(Context context) {
        FixedHeaders.ALL.forEach(context::header);
        // Any answer may come compressed.
        context.res().addHeader("Vary", "Accept-Encoding");
        context.header(RequestId.HEADER, RequestId.of(context.header(RequestId.HEADER)));
        String origin = context.header("Origin");
        if (origin != null && options.allowedOrigins().contains(origin)) {
            context.header("Access-Control-Allow-Origin", origin);
            context.header("Access-Control-Allow-Headers", ALLOWED_HEADERS);
            context.header("Access-Control-Allow-Methods", "GET, HEAD, POST, OPTIONS");
            context.header(
                    "Access-Control-Expose-Headers",
                    RequestId.HEADER + ", Retry-After, ETag, RateLimit, RateLimit-Policy");
            context.header("Access-Control-Max-Age", "600");
        }
        if (!options.allowedOrigins().isEmpty()) {
            context.res().addHeader("Vary", "Origin");
        }
    }

    private void send(Context context, Reply reply) throws IOException {
        reply.headers().forEach((name, value) -> setHeader(context, name, value));
        context.contentType(reply.mediaType());
        Reply.Stream stream = reply.stream();
        if (stream == null) {
            sendWhole(context, reply.body());
        } else {
            String requestId = String.valueOf(context.res().getHeader(RequestId.HEADER));
            Problems problems = reading.problems();
            Function<Throwable, byte[]> problem = thrown -> {
                ProblemException refusal = problems.refusal(thrown, requestId);
                context.attribute(Metrics.PROBLEM, refusal.type());
                return problems.document(refusal, requestId);
            };
            // The context's own stream keeps flushes back, and compresses nothing that is written past it.
            OutputStream out = context.res().getOutputStream();
            if (EncodingChoice.GZIP.equals(context.header("Accept-Encoding"))) {
                PackedStream packed =
                        new PackedStream(out, () -> context.res().setHeader("Content-Encoding", EncodingChoice.GZIP));
                stream.write(packed, problem);
                packed.finish();
            } else {
                stream.write(out, problem);
            }
        }
    }

    /**
     * An answer to GET depends on the request and the version alone. {@code no-cache} lets a client keep it, if it asks each
     * time whether its copy is still good.
     */
    private void sendWhole(Context context, byte[] body) throws IOException {
        String cacheControl = context.res().getHeader(CACHE_CONTROL);
        boolean isRead =
                context.method().equals(HandlerType.GET) || context.method().equals(HandlerType.HEAD);
        if (!isRead || (cacheControl != null && cacheControl.contains("no-store"))) {
            context.result(body);
            return;
        }
        String tag = Freshness.tag(body);
        context.header("ETag", tag);
        context.header(CACHE_CONTROL, options.entrance().keys().areAskedFor() ? "private, no-cache" : "no-cache");
        if (Freshness.isNamed(listOf(context, "If-None-Match"), tag)) {
            context.status(304);
            // RFC 9110, section 15.4.5. Sent at once, as the web server would call its length 0 at the end.
            context.res().setContentType(null);
            context.res().flushBuffer();
        } else {
            context.result(body);
        }
    }

    /** RFC 9110, section 5.3: lines of one name are one list. */
    private static @Nullable String listOf(Context context, String header) {
        List<String> lines = Collections.list(context.req().getHeaders(header));
        return lines.isEmpty() ? null : String.join(", ", lines);
    }

    /** A list of what the answer varies with is added to; any other header is replaced. */
    private static void setHeader(Context context, String name, String value) {
        if (name.equals("Vary")) {
            context.res().addHeader(name, value);
        } else {
            context.header(name, value);
        }
    }

    private void sendProblem(Throwable thrown, Context context) {
        String requestId = String.valueOf(context.res().getHeader(RequestId.HEADER));
        Problems problems = reading.problems();
        ProblemException refusal = problems.refusal(thrown, requestId);
        context.attribute(Metrics.PROBLEM, refusal.type());
        refusal.headers().forEach((name, value) -> setHeader(context, name, value));
        if (Boolean.TRUE.equals(context.<Boolean>attribute(ErrorsAsText.ASKED))
                && refusal.type().status() < 500) {
            context.status(200);
            context.contentType(Representation.TEXT.contentType());
            context.result(String.valueOf(refusal.getMessage()));
            return;
        }
        byte[] document = problems.document(refusal, requestId);
        context.status(refusal.type().status());
        // An answer of text that was about to be sent leaves its encoding behind.
        context.res().setCharacterEncoding(null);
        context.contentType(Problem.MEDIA_TYPE);
        if (WORTH_NO_WAIT.contains(refusal.type()) || !Arrival.isBringing(context)) {
            context.result(document);
        } else {
            Arrival.answerAndDiscard(context, document, options.limits());
        }
    }
}
