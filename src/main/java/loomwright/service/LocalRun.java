package loomwright.service;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Set;
import loomwright.bulk.BulkLimits;
import loomwright.bulk.BulkRun;
import loomwright.bulk.FairExecutor;
import loomwright.bulk.LineSource;
import loomwright.bulk.Summary;
import loomwright.service.http.Problems;
import loomwright.service.http.Request;
import loomwright.service.input.Contract;
import loomwright.service.limits.Options;
import loomwright.service.stream.BulkOperations;
import loomwright.service.stream.BulkOperations.BulkOperation;
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

    /**
     * Answers lines of JSON, the summary last.
     *
     * @param operation one of {@link #operations}
     * @param csv for one table instead of lines of JSON
     * @param afterEach is called when a line has been worked on, by the thread that did
     * @throws IOException if the answers cannot be written
     */
    public Summary run(String operation, LineSource lines, OutputStream out, boolean csv, Runnable afterEach)
            throws IOException {
        BulkOperation asked = operations.get(operation);
        LineForm form =
                csv ? new CsvLineForm(asked.calculation().columns(), true) : new JsonLineForm(reading.json(), true);
        LineWork work = new LineWork(asked.calculation(), new JsonLines(asked.schema(), reading), form, reading, NAME);
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
