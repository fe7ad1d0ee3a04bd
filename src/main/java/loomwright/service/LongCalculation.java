package loomwright.service;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The handler of an operation that may take more than a second. With {@code Accept: application/x-ndjson} it writes one
 * line of JSON for each report of progress and at last one with the answer; a client that hangs up ends the work.
 */
final class LongCalculation<T, R> implements Endpoint.Handler {
    private static final Logger LOG = LoggerFactory.getLogger(LongCalculation.class);

    private final Class<T> input;
    private final BiFunction<T, Progress, Answer<R>> function;
    private final Faces<R> faces;

    private LongCalculation(Class<T> input, BiFunction<T, Progress, Answer<R>> function, Faces<R> faces) {
        this.input = input;
        this.function = function;
        this.faces = faces;
    }

    /** The lines. */
    private record ProgressLine(Done progress) {}

    private record Done(long done, long of) {}

    private record AnswerLine<R>(Answer<R> answer) {}

    /**
     * A calculation that answers in JSON, or in lines.
     *
     * @param function reports its progress and lets what the report throws end it
     */
    static <T, R> LongCalculation<T, R> of(Class<T> input, BiFunction<T, Progress, Answer<R>> function) {
        return new LongCalculation<>(input, function, Faces.json());
    }

    /** The same calculation, in more forms. */
    LongCalculation<T, R> in(Function<Faces<R>, Faces<R>> more) {
        return new LongCalculation<>(input, function, more.apply(faces));
    }

    @Override
    public Reply handle(Request request) throws IOException {
        boolean lines = request.query(Faces.PARAMETER).isEmpty()
                && Accept.choose(request.accept(), List.of(Json.MEDIA_TYPE, Json.LINES))
                        .filter(Json.LINES::equals)
                        .isPresent();
        if (lines) {
            T asked = request.read(input);
            return Reply.streamed(
                            Json.LINES, (out, problem) -> stream(asked, request, new Lines(out, request.json()), problem))
                    .withHeaders(Map.of("Vary", "Accept"));
        }
        Face face = faces.choose(request);
        T asked = request.read(input);
        return faces.write(face, answer(asked, request, Progress.UNWATCHED), request.json());
    }

    private Answer<R> answer(T asked, Request request, Progress progress) throws IOException {
        try {
            return function.apply(asked, progress);
        } catch (RejectedInput rejected) {
            throw request.refusal(rejected);
        }
    }

    private void stream(T asked, Request request, Lines lines, Function<Exception, byte[]> problem) throws IOException {
        try {
            Answer<R> answer = answer(asked, request, (done, of) -> lines.write(new ProgressLine(new Done(done, of))));
            lines.write(new AnswerLine<>(answer));
        } catch (UncheckedIOException hungUp) {
            LOG.info("the client hung up; the work was stopped");
        } catch (RuntimeException e) {
            if (!lines.begun) {
                throw e;
            }
            // The status has gone out already.
            lines.writeProblem(problem.apply(e));
        }
    }

    /** One JSON value to a line, each sent at once. */
    private static final class Lines {
        private final OutputStream out;
        private final Json json;
        private boolean begun;

        Lines(OutputStream out, Json json) {
            this.out = out;
            this.json = json;
        }

        void write(Object line) {
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

        void writeProblem(byte[] document) throws IOException {
            out.write("{\"problem\":".getBytes(java.nio.charset.StandardCharsets.UTF_8));
            out.write(document);
            out.write("}\n".getBytes(java.nio.charset.StandardCharsets.UTF_8));
            out.flush();
        }
    }
}
