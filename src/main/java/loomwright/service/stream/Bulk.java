package loomwright.service.stream;

import static loomwright.message.Arg.arg;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeoutException;
import loomwright.bulk.BulkLimits;
import loomwright.bulk.BulkRun;
import loomwright.bulk.FairExecutor;
import loomwright.bulk.Line;
import loomwright.bulk.LineReader;
import loomwright.bulk.LineSource;
import loomwright.bulk.Summary;
import loomwright.service.endpoint.Calculation;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.endpoint.Metrics;
import loomwright.service.http.Accept;
import loomwright.service.http.Problems;
import loomwright.service.http.Reply;
import loomwright.service.http.Representation;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import loomwright.service.input.Multipart;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import loomwright.service.stream.BulkOperations.BulkOperation;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Many lines in one request, answered while they arrive. */
public final class Bulk implements Endpoint.Handler {
    static final String FROM_LINE = "fromLine";
    static final String NUMBERED_FROM = "numberedFrom";
    static final String ROWS = "rows";
    static final String ORDER = "order";

    private static final Logger LOG = LoggerFactory.getLogger(Bulk.class);
    private static final String CSV = Representation.CSV.mediaType();
    private static final int RETRY_AFTER_S = 10;
    private static final int SIGN_OF_LIFE_MS = 5_000;

    private final BulkOperations operations;
    private final BulkLimits limits;
    private final FairExecutor turns;
    private final Semaphore room;
    private final Metrics metrics;
    private volatile boolean stopping;

    public Bulk(BulkOperations operations, BulkLimits limits, Metrics metrics) {
        this.operations = operations;
        this.limits = limits;
        this.turns = FairExecutor.of(limits.threads());
        this.room = new Semaphore(limits.runs());
        this.metrics = metrics;
        metrics.gauge("loomwright.bulk.runs", "Bulk runs under way.", () -> limits.runs() - room.availablePermits());
        metrics.gauge("loomwright.bulk.queue", "Lines that wait for a thread.", turns::waiting);
    }

    @Override
    public Reply handle(Request request) {
        BulkOperation operation = operations.get(request.known(BulkOperations.PARAMETER));
        String in = request.bodyType(
                operation.get() == null
                        ? "lines of JSON, or a list of cars,"
                        : "lines of JSON, or comma-separated values,",
                bodyTypes(operation));
        boolean carRows = request.query(ROWS).filter("cars"::equals).isPresent();
        List<String> forms =
                carRows ? List.of(CSV) : in.equals(Json.LINES) ? List.of(Json.LINES, CSV) : List.of(CSV, Json.LINES);
        String out = Accept.choose(request.accept(), forms).orElseThrow(() -> Request.notAcceptable(forms));
        boolean csv = out.equals(CSV);
        LineForm form = carRows
                ? new CarRows(
                        false, request.query(ORDER).filter("worst"::equals).isPresent())
                : csv
                        ? new CsvLineForm(calculation(operation, in).columns(), false)
                        : new JsonLineForm(request.json(), JsonLineForm.From.REQUEST);
        return Reply.streamed(csv ? Representation.CSV.contentType() : Json.LINES, (stream, problem) -> {
                    if (!room.tryAcquire()) {
                        throw busy();
                    }
                    try {
                        run(operation, in, form, request, stream);
                    } finally {
                        room.release();
                    }
                })
                .withHeaders(Map.of("Vary", "Accept"));
    }

    @Override
    public void stop() {
        stopping = true;
    }

    private static List<String> bodyTypes(BulkOperation operation) {
        List<String> types = new ArrayList<>(List.of(Json.LINES));
        if (operation.get() == null) {
            operation.post().bodyTypes().stream()
                    .filter(type -> !type.equals(Json.MEDIA_TYPE))
                    .forEach(types::add);
        } else {
            types.add(CSV);
        }
        return types;
    }

    private static Calculation<?, ?> calculation(BulkOperation operation, String in) {
        return in.equals(CSV) ? operation.rowCalculation() : operation.calculation();
    }

    private ProblemException busy() {
        return new ProblemException(
                ProblemType.BUSY,
                ProblemText.MOST_RUNS.with(arg("runs", limits.runs())),
                List.of(),
                Map.of("Retry-After", String.valueOf(RETRY_AFTER_S)));
    }

    private void run(BulkOperation operation, String in, LineForm form, Request request, OutputStream out)
            throws IOException {
        request.allowSilence(limits.silenceMs());
        Request.Reading reading = request.reading();
        LineSource source;
        LineInputs inputs;
        long first;
        if (operation.get() == null && !in.equals(Json.LINES)) {
            first = request.number(NUMBERED_FROM).orElse(1);
            source = cars(in, request, first);
            inputs = new CarLines(operation, reading);
        } else {
            LineReader lines = new LineReader(request.body(), reading.limits().bodyBytes());
            inputs = in.equals(CSV)
                    ? new CsvLines(header(lines), Objects.requireNonNull(operation.get()), reading.queries())
                    : new JsonLines(operation.schema(), reading);
            request.number(NUMBERED_FROM).ifPresent(lines::numberFrom);
            first = lines.nextNumber();
            source = lines;
        }
        BulkRun run = new BulkRun(
                        source,
                        request.number(FROM_LINE).orElse(first),
                        metrics.counting(
                                operation.name(),
                                new LineWork(calculation(operation, in), inputs, form, reading, request.id())),
                        out,
                        turns.share(),
                        limits)
                .showingLife(form::beginning, Math.min(SIGN_OF_LIFE_MS, limits.silenceMs()));
        try {
            out.write(form.head());
            Summary summary = run.run(() -> stopping);
            Problem problem = summary.complete() ? null : why(summary, reading.problems(), request.id());
            out.write(form.summary(new LineForm.Ended(operation.name(), summary, problem)));
            out.flush();
        } catch (IOException hungUp) {
            LOG.info("request_id={} the client of a bulk run hung up", request.id());
        }
    }

    /** The cars of a list, or of the files of a form, in their order; of a text whose end is not in sight, as they arrive. */
    private static LineSource cars(String mediaType, Request request, long first) throws IOException {
        int longest = request.reading().limits().bodyBytes();
        if (mediaType.startsWith("text/") && !request.hasShortBody()) {
            return CarLines.arriving(request.body(), first, longest);
        }
        byte[] body = request.wholeBody();
        return mediaType.equals(Multipart.MEDIA_TYPE)
                ? CarLines.files(Multipart.read(request.contentType(), body), first, longest)
                : CarLines.cars(body, null, first, longest);
    }

    private byte[] header(LineReader lines) throws IOException {
        Line header;
        try {
            header = lines.next();
        } catch (IOException broken) {
            if (Problems.hasCause(broken, TimeoutException.class)) {
                throw silent();
            }
            throw broken;
        }
        if (header == null || header.isTooLong()) {
            throw new ProblemException(ProblemType.INVALID_INPUT, ProblemText.NO_HEADER.with());
        }
        return header.text();
    }

    private Problem why(Summary summary, Problems problems, String requestId) {
        return problems.problem(refusal(summary.broken(), problems, requestId), requestId);
    }

    private ProblemException refusal(@Nullable IOException broken, Problems problems, String requestId) {
        if (broken == null) {
            return new ProblemException(ProblemType.BUSY, ProblemText.STOPPING.with());
        }
        return Problems.hasCause(broken, TimeoutException.class) ? silent() : problems.refusal(broken, requestId);
    }

    /** Of a run, not of a connection: it may be silent for longer. */
    private ProblemException silent() {
        return new ProblemException(
                ProblemType.REQUEST_TIMEOUT, ProblemText.SILENT_RUN.with(arg("silenceMs", limits.silenceMs())));
    }
}
