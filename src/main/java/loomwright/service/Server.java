package loomwright.service;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import loomwright.service.Contract.Operation;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The running service. */
public final class Server implements AutoCloseable {
    private static final int FEWEST_THREADS = 8;

    private final Options options;
    private final Contract contract;
    private final Problems problems;
    private final Request.Reading reading;
    private final List<Endpoint> endpoints;
    private final Javalin javalin;

    private Server(Options options, Contract contract, List<Endpoint> endpoints) {
        this.options = options;
        this.contract = contract;
        this.endpoints = endpoints;
        Json json = new Json(options.limits());
        ContractFaults contractFaults = new ContractFaults(contract);
        this.problems = new Problems(json, options.limits());
        this.reading = new Request.Reading(
                json,
                new Bodies(json, options.limits(), contractFaults, options.checkEveryRequest()),
                new Queries(json, contractFaults));
        this.javalin = Javalin.create(this::configure);
    }

    /** Starts the service with all its operations. */
    public static Server start(Options options) {
        Contract contract = Contract.load();
        return start(options, contract, Routes.table(contract, options.calculation()));
    }

    static Server start(Options options, Contract contract, List<Endpoint> endpoints) {
        Server server = new Server(options, contract, endpoints);
        server.javalin.start();
        return server;
    }

    /** Does once, in the background, what the first picture needs far longer for than any later one. */
    public void warmUp() {
        Thread thread = new Thread(this::drawOnce, "warm-up");
        thread.setDaemon(true);
        thread.start();
    }

    private void drawOnce() {
        try {
            new Diagrams(options.calculation(), Examples.load()).warmUp(reading.json());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public int port() {
        return javalin.port();
    }

    /** Stops listening, lets requests in flight finish, then returns. */
    @Override
    public void close() {
        javalin.stop();
    }

    private void configure(JavalinConfig config) {
        ServiceLimits limits = options.limits();
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.jetty.host = options.host();
        config.jetty.port = options.port();
        config.jetty.threadPool = new QueuedThreadPool(limits.threads(), FEWEST_THREADS);
        config.http.maxRequestSize = limits.bodyBytes();
        config.http.prefer405over404 = true;
        config.http.compressionStrategy = CompressionStrategy.GZIP;
        config.jetty.modifyServer(server -> {
            server.setStopTimeout(limits.stopMs());
            server.setErrorHandler(new ServerProblems(problems));
            server.setRequestLog(new RequestLine());
        });
        config.jetty.modifyHttpConfiguration(http -> {
            http.setSendServerVersion(false);
            http.setRequestHeaderSize(limits.headBytes());
            http.setIdleTimeout(limits.idleMs());
            // A size such as 2/0 stands in a path as 2%2F0.
            http.setUriCompliance(UriCompliance.from("DEFAULT,AMBIGUOUS_PATH_SEPARATOR"));
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
            context.attribute(ReasonInCell.ASKED, ReasonInCell.isAsked(context.queryString(), operation));
            send(context, endpoint.handler().handle(new Request(context, operation, reading)));
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
        context.header(RequestId.HEADER, RequestId.of(context.header(RequestId.HEADER)));
        String origin = context.header("Origin");
        if (origin != null && options.allowedOrigins().contains(origin)) {
            context.header("Access-Control-Allow-Origin", origin);
            context.header("Access-Control-Allow-Headers", "Content-Type, " + RequestId.HEADER);
            context.header("Access-Control-Allow-Methods", "GET, HEAD, POST, OPTIONS");
            context.header("Access-Control-Expose-Headers", RequestId.HEADER);
            context.header("Vary", "Origin");
        }
    }

    private static void send(Context context, Reply reply) {
        reply.headers().forEach(context::header);
        context.contentType(reply.mediaType());
        context.result(reply.body());
    }

    private void sendProblem(Exception thrown, Context context) {
        String requestId = String.valueOf(context.res().getHeader(RequestId.HEADER));
        Refusal refusal = problems.refusal(thrown, requestId);
        refusal.headers().forEach(context::header);
        if (Boolean.TRUE.equals(context.<Boolean>attribute(ReasonInCell.ASKED))
                && refusal.type().status() < 500) {
            context.status(200);
            context.contentType(Face.TEXT.contentType());
            context.result(String.valueOf(refusal.getMessage()));
            return;
        }
        context.status(refusal.type().status());
        context.contentType(Problem.MEDIA_TYPE);
        context.result(problems.document(refusal, requestId));
    }
}
