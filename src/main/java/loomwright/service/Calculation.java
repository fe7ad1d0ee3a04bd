package loomwright.service;

import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import loomwright.answer.Answer;
import loomwright.answer.RejectedInput;
import loomwright.bulk.LineAnswer.Found;

/** The handler of nearly every operation: reads the input, calls one function of the domain, writes its answer. */
final class Calculation<T, R> implements Endpoint.Handler {
    private final Class<T> input;
    private final Function<T, Answer<R>> function;
    private final Faces<R> faces;
    private final Function<R, List<Found>> findings;

    private Calculation(
            Class<T> input, Function<T, Answer<R>> function, Faces<R> faces, Function<R, List<Found>> findings) {
        this.input = input;
        this.function = function;
        this.faces = faces;
        this.findings = findings;
    }

    /**
     * A calculation that answers in JSON.
     *
     * @param input the record of the body, or of the query for GET
     */
    static <T, R> Calculation<T, R> of(Class<T> input, Function<T, Answer<R>> function) {
        return new Calculation<>(input, function, Faces.json(), result -> List.of());
    }

    /** The same calculation, in more forms. */
    Calculation<T, R> in(Function<Faces<R>, Faces<R>> more) {
        return new Calculation<>(input, function, more.apply(faces), findings);
    }

    /** The same calculation, with what a summary of many answers counts. */
    Calculation<T, R> counting(Function<R, List<Found>> found) {
        return new Calculation<>(input, function, faces, found);
    }

    @Override
    public Reply handle(Request request) throws IOException {
        Face face = faces.choose(request);
        return faces.write(face, answer(request), request.json());
    }

    /** The answer and its forms, for a line of many. */
    Worked<R> work(Input asked) throws IOException {
        Answer<R> answer = answer(asked);
        return new Worked<>(answer, faces, findings.apply(answer.result()));
    }

    /** What {@link #work} gives. */
    record Worked<R>(Answer<R> answer, Faces<R> faces, List<Found> findings) {}

    /** The columns of its table. */
    List<String> columns() {
        return faces.columns();
    }

    private Answer<R> answer(Input asked) throws IOException {
        T question = asked.read(input);
        try {
            return function.apply(question);
        } catch (RejectedInput rejected) {
            throw asked.refusal(rejected);
        }
    }
}
