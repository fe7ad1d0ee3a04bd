package loomwright.service.endpoint;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import loomwright.answer.Progress;
import loomwright.service.http.Accept;
import loomwright.service.http.Reply;
import loomwright.service.http.Representations;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * With {@code Accept: application/x-ndjson}, one line of JSON for each report of progress and at last one with the answer,
 * each sent at once; a client that hangs up ends the work.
 */
final class ProgressLines {
    private static final Logger LOG = LoggerFactory.getLogger(ProgressLines.class);

    private final OutputStream out;
    private final Json json;
    private boolean begun;

    private ProgressLines(OutputStream out, Json json) {
        this.out = out;
        this.json = json;
    }

    /** What is going on meanwhile. */
    @FunctionalInterface
    interface Work {
        Object answer(Progress progress) throws IOException;
    }

    /** The lines. */
    private record ProgressLine(Done progress) {}

    private record Done(long done, long of) {}

    private record AnswerLine(Object answer) {}

    static boolean areAskedFor(Request request) {
        return request.query(Representations.PARAMETER).isEmpty()
                && Accept.choose(request.accept(), List.of(Json.MEDIA_TYPE, Json.LINES))
                        .filter(Json.LINES::equals)
                        .isPresent();
    }

    static Reply reply(Json json, Work work) {
        return Reply.streamed(Json.LINES, (out, problem) -> new ProgressLines(out, json).write(work, problem))
                .withHeaders(Map.of("Vary", "Accept"));
    }

    private void write(Work work, Function<Throwable, byte[]> problem) throws IOException {
        try {
            write(new AnswerLine(work.answer((done, of) -> write(new ProgressLine(new Done(done, of))))));
        } catch (UncheckedIOException hungUp) {
            LOG.info("the client hung up; the work was stopped");
        } catch (RuntimeException | Error e) {
            if (!begun) {
                throw e;
            }
            // The status has gone out already.
            writeProblem(problem.apply(e));
        }
    }

    private void write(Object line) {
        try {
            byte[] text = json.write(line);
            begun = true;
            out.write(text);
            out.write('\n');
            out.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void writeProblem(byte[] document) throws IOException {
        out.write("{\"problem\":".getBytes(StandardCharsets.UTF_8));
        out.write(document);
        out.write("}\n".getBytes(StandardCharsets.UTF_8));
        out.flush();
    }
}
