package loomwright.service;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Set;
import loomwright.bulk.BulkLimits;
import loomwright.bulk.BulkRun;
import loomwright.bulk.FairExecutor;
import loomwright.bulk.LineSource;
import loomwright.bulk.ListFiles;
import loomwright.bulk.Summary;
import loomwright.service.http.Problems;
import loomwright.service.http.Request;
import loomwright.service.input.Contract;
import loomwright.service.limits.Options;
import loomwright.service.stream.BulkOperations;
import loomwright.service.stream.BulkOperations.BulkOperation;
import loomwright.service.stream.CarLines;
import loomwright.service.stream.CarRows;
import loomwright.service.stream.CsvLineForm;
import loomwright.service.stream.JsonLineForm;
import loomwright.service.stream.JsonLines;
import loomwright.service.stream.LineForm;
import loomwright.service.stream.LineWork;

/** A bulk run without the web server: the same operations, limits and answers. */
public final class LocalRun {
    private static final String NAME = "local";

    private final BulkOperations operations;
    private final Request.Reading reading;
    private final BulkLimits limits;

    private LocalRun(BulkOperations operations, Request.Reading reading, BulkLimits limits) {
        this.operations = operations;
        this.reading = reading;
        this.limits = limits;
    }

    /** How a report is written. */
    public enum Report {
        /** Lines of JSON. */
        NDJSON,
        /** Lines of JSON without numbers and summary: what comes out of a pipe for what went in. */
        PIPE,
        /** One table, a row for each finding. */
        CSV,
        /** One table, a row for each car. */
        CARS,
        /** The same, worst first. */
        CARS_WORST_FIRST
    }

    /** Makes ready to run. */
    public static LocalRun of(Options options) {
        Contract contract = Contract.load();
        return new LocalRun(
                BulkOperations.of(contract, Routes.single(options.calculation())),
                Request.Reading.of(contract, options),
                options.calculation().bulk());
    }

    /** The names of the operations. */
    public Set<String> operations() {
        return operations.names();
    }

    /** Knows lists of cars among files. */
    public ListFiles lists(String operation) {
        return new CarLines(operations.get(operation), reading);
    }

    /** The cars of one list while it is read. */
    public LineSource cars(InputStream list) {
        return CarLines.arriving(list, 1, reading.limits().bodyBytes());
    }

    /**
     * Answers lines of JSON and cars of lists, the summary last.
     *
     * @param operation one of {@link #operations}
     * @param afterEach is called when a line has been worked on, by the thread that did
     * @throws IOException if the answers cannot be written
     */
    public Summary run(String operation, LineSource lines, OutputStream out, Report report, Runnable afterEach)
            throws IOException {
        BulkOperation asked = operations.get(operation);
        LineForm form = switch (report) {
            case NDJSON -> new JsonLineForm(reading.json(), JsonLineForm.From.FILES);
            case PIPE -> new JsonLineForm(reading.json(), JsonLineForm.From.PIPE);
            case CSV -> new CsvLineForm(asked.calculation().columns(), true);
            case CARS -> new CarRows(true, false);
            case CARS_WORST_FIRST -> new CarRows(true, true);
        };
        JsonLines json = new JsonLines(asked.schema(), reading);
        CarLines cars = new CarLines(asked, reading);
        LineWork work = new LineWork(
                asked.calculation(), line -> line.isCar() ? cars.read(line) : json.read(line), form, reading, NAME);
        out.write(form.head());
        Summary summary = new BulkRun(
                        lines,
                        1,
                        work.andThen(answer -> {
                            afterEach.run();
                            return answer;
                        }),
                        out,
                        FairExecutor.of(limits.threads()).share(),
                        limits)
                .run(() -> false);
        IOException broken = summary.broken();
        Problems problems = reading.problems();
        out.write(form.summary(new LineForm.Ended(
                operation, summary, broken == null ? null : problems.problem(problems.refusal(broken, NAME), NAME))));
        out.flush();
        return summary;
    }
}
