package loomwright.service.stream;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.CancellationException;
import java.util.function.BiFunction;
import loomwright.answer.Progress;
import loomwright.bulk.Line;
import loomwright.bulk.LineAnswer;
import loomwright.service.endpoint.Calculation;
import loomwright.service.endpoint.Calculation.Worked;
import loomwright.service.http.Problems;
import loomwright.service.http.Request;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/** Answers a line of a run as the operation would answer it alone. */
public final class LineWork implements BiFunction<Line, Progress, LineAnswer> {
    private final Calculation.Lines lines;
    private final LineInputs inputs;
    private final LineForm form;
    private final Request.Reading reading;
    private final String requestId;

    public LineWork(
            Calculation<?, ?> calculation,
            LineInputs inputs,
            LineForm form,
            Request.Reading reading,
            String requestId) {
        this.lines = calculation.lines();
        this.inputs = inputs;
        this.form = form;
        this.reading = reading;
        this.requestId = requestId;
    }

    @Override
    public LineAnswer apply(Line line, Progress progress) {
        JsonNode key = null;
        try {
            if (line.isTooLong()) {
                throw new ProblemException(
                        ProblemType.BODY_TOO_LARGE,
                        ProblemText.LINE_TOO_LARGE.with(
                                arg("most", reading.limits().bodyBytes())));
            }
            BulkItem keyed = inputs.read(line);
            key = keyed.key();
            Worked worked = lines.work(keyed.input(), progress);
            return LineAnswer.answer(form.answer(line, key, worked), worked.findings());
        } catch (CancellationException runIsOver) {
            throw runIsOver;
        } catch (IOException | RuntimeException | Error e) {
            // An error too is one line's: what a line has blown up (stack, memory) is given back with its work.
            return problem(line, key, e);
        }
    }

    private LineAnswer problem(Line line, @Nullable JsonNode key, Throwable thrown) {
        String id = requestId + form.suffix(line);
        Problems problems = reading.problems();
        try {
            return LineAnswer.problem(form.problem(line, key, problems.problem(problems.refusal(thrown, id), id)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
