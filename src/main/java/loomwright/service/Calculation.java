package loomwright.service;

import java.io.IOException;
import java.util.function.Function;
import loomwright.answer.Answer;
import loomwright.answer.RejectedInput;

/** The handler of nearly every operation: reads the input, calls one function of the domain, writes its answer. */
final class Calculation<T, R> implements Endpoint.Handler {
    private final Class<T> input;
    private final Function<T, Answer<R>> function;
    private final Faces<T, R> faces;

    private Calculation(Class<T> input, Function<T, Answer<R>> function, Faces<T, R> faces) {
        this.input = input;
        this.function = function;
        this.faces = faces;
    }

    /**
     * A calculation that answers in JSON.
     *
     * @param input the record of the body, or of the query for GET
     */
    static <T, R> Calculation<T, R> of(Class<T> input, Function<T, Answer<R>> function) {
        return new Calculation<>(input, function, Faces.json());
    }

    /** The same calculation, in more forms. */
    Calculation<T, R> in(Function<Faces<T, R>, Faces<T, R>> more) {
        return new Calculation<>(input, function, more.apply(faces));
    }

    @Override
    public Reply handle(Request request) throws IOException {
        Face face = faces.choose(request);
        T asked = request.read(input);
        return faces.write(face, asked, answer(asked, request), request.json());
    }

    private Answer<R> answer(T asked, Request request) throws IOException {
        try {
            return function.apply(asked);
        } catch (RejectedInput rejected) {
            throw request.refusal(rejected);
        }
    }
}
