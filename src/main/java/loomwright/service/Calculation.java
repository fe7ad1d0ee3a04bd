package loomwright.service;

import java.io.IOException;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import loomwright.answer.Answer;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.bulk.LineAnswer.Found;
import loomwright.service.form.Table;

/**
 * The handler of nearly every operation: reads the input, calls one function of the domain, writes its answer. The same
 * answers one line of many; one that reports its progress does so in lines to whoever asks for them.
 */
final class Calculation<T, R> implements Endpoint.Handler {
    private final Class<T> type;
    private final Work<T, R> work;
    private final boolean watched;
    private final Faces<T, R> faces;
    private final Function<R, List<Found>> findings;

    /** A calculation that looks at more than its question. */
    @FunctionalInterface
    interface Work<T, R> {
        Answer<R> answer(T question, Input input, Progress progress);
    }

    private Calculation(
            Class<T> type, Work<T, R> work, boolean watched, Faces<T, R> faces, Function<R, List<Found>> findings) {
        this.type = type;
        this.work = work;
        this.watched = watched;
        this.faces = faces;
        this.findings = findings;
    }

    /**
     * A calculation that answers in JSON.
     *
     * @param type the record of the body, or of the query for GET
     */
    static <T, R> Calculation<T, R> of(Class<T> type, Function<T, Answer<R>> function) {
        return new Calculation<>(
                type,
                (question, input, progress) -> function.apply(question),
                false,
                Faces.json(),
                result -> List.of());
    }

    /**
     * One that may take more than a second.
     *
     * @param timeMs how long it may take
     * @param function reports its progress and lets what the report throws end it
     */
    static <T, R> Calculation<T, R> watched(Class<T> type, int timeMs, BiFunction<T, Progress, Answer<R>> function) {
        return watched(type, (question, input, progress) -> function.apply(question, new Deadline(timeMs, progress)));
    }

    /** One that is ended in the same way, but whose progress is not worth telling. */
    static <T, R> Calculation<T, R> limited(Class<T> type, int timeMs, BiFunction<T, Progress, Answer<R>> function) {
        return new Calculation<>(
                type,
                (question, input, progress) -> function.apply(question, new Deadline(timeMs, progress)),
                false,
                Faces.json(),
                result -> List.of());
    }

    /** As {@link #watched(Class, int, BiFunction)}, for a calculation with options beside its question, which looks after its time itself. */
    static <T, R> Calculation<T, R> watched(Class<T> type, Work<T, R> work) {
        return new Calculation<>(type, work, true, Faces.json(), result -> List.of());
    }

    /** The same calculation, in more forms. */
    Calculation<T, R> in(Function<Faces<T, R>, Faces<T, R>> more) {
        return new Calculation<>(type, work, watched, more.apply(faces), findings);
    }

    /** The same calculation, with what a summary of many answers counts. */
    Calculation<T, R> counting(Function<R, List<Found>> found) {
        return new Calculation<>(type, work, watched, faces, found);
    }

    @Override
    public Reply handle(Request request) throws IOException {
        if (watched && ProgressLines.areAskedFor(request)) {
            T question = request.read(type);
            return ProgressLines.reply(request.json(), progress -> answer(question, request, progress));
        }
        Face face = faces.choose(request);
        T question = request.read(type);
        return faces.write(face, question, answer(question, request, Progress.UNWATCHED), request.json());
    }

    /** The answer to a line of many; what {@code progress} throws ends the work. */
    Worked work(Input input, Progress progress) throws IOException {
        Answer<R> answer = answer(input.read(type), input, progress);
        return new Worked(answer, () -> faces.table(answer.result()), findings.apply(answer.result()));
    }

    /** What {@link #work} gives. */
    record Worked(Answer<?> answer, Supplier<Table> table, List<Found> findings) {}

    /** The columns of its table. */
    List<String> columns() {
        return faces.columns();
    }

    private Answer<R> answer(T question, Input input, Progress progress) throws IOException {
        try {
            return work.answer(question, input, progress);
        } catch (RejectedInput rejected) {
            throw input.refusal(rejected);
        }
    }
}
