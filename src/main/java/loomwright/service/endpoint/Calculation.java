package loomwright.service.endpoint;

import com.google.common.cache.Cache;
import com.google.common.cache.CacheBuilder;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import loomwright.answer.Answer;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.bulk.LineAnswer.Found;
import loomwright.service.form.Table;
import loomwright.service.http.Reply;
import loomwright.service.http.Representation;
import loomwright.service.http.Representations;
import loomwright.service.http.Request;
import loomwright.service.input.ListInput;
import loomwright.service.input.RequestInput;

/**
 * The handler of nearly every operation: reads the input, calls one function of the domain, writes its answer. The same
 * answers one line of many; one that reports its progress does so in lines to whoever asks for them.
 */
public final class Calculation<T, R> implements Endpoint.Handler {
    /** Answers that a run keeps. Few, as one may take megabytes. */
    private static final int KEPT = 16;

    private final Class<T> type;
    private final Work<T, R> work;
    private final boolean watched;
    private final Representations<T, R> faces;
    private final Function<R, List<Found>> findings;
    private final CacheKey<T, R> cacheKey;

    /** A calculation that looks at more than its question. */
    @FunctionalInterface
    public interface Work<T, R> {
        Answer<R> answer(T question, RequestInput input, Progress progress);
    }

    private Calculation(
            Class<T> type,
            Work<T, R> work,
            boolean watched,
            Representations<T, R> faces,
            Function<R, List<Found>> findings,
            CacheKey<T, R> cacheKey) {
        this.type = type;
        this.work = work;
        this.watched = watched;
        this.faces = faces;
        this.findings = findings;
        this.cacheKey = cacheKey;
    }

    /**
     * A calculation that answers in JSON.
     *
     * @param type the record of the body, or of the query for GET
     */
    public static <T, R> Calculation<T, R> of(Class<T> type, Function<T, Answer<R>> function) {
        return new Calculation<>(
                type,
                (question, input, progress) -> function.apply(question),
                false,
                Representations.json(),
                result -> List.of(),
                CacheKey.equal());
    }

    /**
     * One that may take more than a second.
     *
     * @param timeMs how long it may take
     * @param function reports its progress and lets what the report throws end it
     */
    public static <T, R> Calculation<T, R> watched(
            Class<T> type, int timeMs, BiFunction<T, Progress, Answer<R>> function) {
        return watched(type, (question, input, progress) -> function.apply(question, new Deadline(timeMs, progress)));
    }

    /** One that is ended in the same way, but whose progress is not worth telling. */
    public static <T, R> Calculation<T, R> limited(
            Class<T> type, int timeMs, BiFunction<T, Progress, Answer<R>> function) {
        return new Calculation<>(
                type,
                (question, input, progress) -> function.apply(question, new Deadline(timeMs, progress)),
                false,
                Representations.json(),
                result -> List.of(),
                CacheKey.equal());
    }

    /** As {@link #limited(Class, int, BiFunction)}, with options beside the question. */
    public static <T, R> Calculation<T, R> limited(Class<T> type, int timeMs, Work<T, R> work) {
        return new Calculation<>(
                type,
                (question, input, progress) -> work.answer(question, input, new Deadline(timeMs, progress)),
                false,
                Representations.json(),
                result -> List.of(),
                CacheKey.equal());
    }

    /** As {@link #watched(Class, int, BiFunction)}, with options beside the question. */
    public static <T, R> Calculation<T, R> watched(Class<T> type, int timeMs, Work<T, R> work) {
        return watched(
                type, (question, input, progress) -> work.answer(question, input, new Deadline(timeMs, progress)));
    }

    /** As {@link #watched(Class, int, BiFunction)}, for a calculation with options beside its question, which looks after its time itself. */
    public static <T, R> Calculation<T, R> watched(Class<T> type, Work<T, R> work) {
        return new Calculation<>(type, work, true, Representations.json(), result -> List.of(), CacheKey.equal());
    }

    /** The same calculation, in more forms. */
    public Calculation<T, R> in(Function<Representations<T, R>, Representations<T, R>> more) {
        return new Calculation<>(type, work, watched, more.apply(faces), findings, cacheKey);
    }

    /** The same calculation, with what a summary of many answers counts. */
    public Calculation<T, R> counting(Function<R, List<Found>> found) {
        return new Calculation<>(type, work, watched, faces, found, cacheKey);
    }

    /**
     * The same calculation, whose figures depend on a part of the question only.
     *
     * @param part equal for questions with equal figures
     * @param relabel turns a result of another such question into that of this one
     */
    public Calculation<T, R> cachedBy(Function<T, ?> part, BiFunction<R, T, R> relabel) {
        return new Calculation<>(type, work, watched, faces, findings, new CacheKey<>(part, relabel));
    }

    @Override
    public Reply handle(Request request) throws IOException {
        if (watched && ProgressLines.areAskedFor(request)) {
            T question = request.read(type);
            return ProgressLines.reply(
                    request.json(), progress -> said(request.list(), answer(question, request, progress)));
        }
        Representation face = faces.choose(request);
        T question = request.read(type);
        Answer<R> answer = answer(question, request, Progress.UNWATCHED);
        Optional<ListInput> list = request.list();
        if (list.isEmpty()) {
            return faces.write(face, question, answer, request.json());
        }
        return face == Representation.JSON
                ? Reply.of(face.contentType(), request.json().write(said(list, answer)))
                        .withHeaders(Map.of("Vary", "Accept"))
                : faces.write(face, question, list.get().withAllSaid(answer), request.json());
    }

    /** The answer as it goes out in JSON. */
    private static <R> Object said(Optional<ListInput> list, Answer<R> answer) {
        return list.isEmpty() ? answer : list.get().answered(answer);
    }

    /**
     * Answers the lines of one run. Cars of one type are wired cacheKey, so the last answers are kept for lines that ask the
     * same.
     */
    public Lines lines() {
        Cache<Object, Answer<R>> latest =
                CacheBuilder.newBuilder().maximumSize(KEPT).concurrencyLevel(1).build();
        return (input, progress) -> {
            T question = input.read(type);
            Object part = cacheKey.part().apply(question);
            Answer<R> known = latest.getIfPresent(part);
            if (known != null) {
                return worked(input, known.with(cacheKey.relabel().apply(known.result(), question)));
            }
            Answer<R> answer = answer(question, input, progress);
            latest.put(part, answer);
            return worked(input, answer);
        };
    }

    private Worked worked(RequestInput input, Answer<R> answer) {
        List<Found> found = findings.apply(answer.result());
        Supplier<Table> table = () -> faces.table(answer.result());
        return input instanceof ListInput list
                ? new Worked(
                        list.withAllAssumed(answer),
                        list.answered(answer),
                        table,
                        found,
                        list.questions().size())
                : new Worked(answer, answer, table, found, 0);
    }

    /** Answers one line after the other, in several threads. */
    @FunctionalInterface
    public interface Lines {
        /** The answer to a line; what {@code progress} throws ends the work. */
        Worked work(RequestInput input, Progress progress) throws IOException;
    }

    /** Which questions have the same figures. */
    private record CacheKey<T, R>(Function<T, ?> part, BiFunction<R, T, R> relabel) {
        static <T, R> CacheKey<T, R> equal() {
            return new CacheKey<>(question -> question, (result, question) -> result);
        }
    }

    /**
     * The answer to a line.
     *
     * @param said it as it goes out in JSON
     * @param findings what a summary counts
     * @param questions how many are open in a list
     */
    public record Worked(Answer<?> answer, Object said, Supplier<Table> table, List<Found> findings, int questions) {}

    /** The columns of its table. */
    public List<String> columns() {
        return faces.columns();
    }

    private Answer<R> answer(T question, RequestInput input, Progress progress) throws IOException {
        try {
            return work.answer(question, input, progress);
        } catch (RejectedInput rejected) {
            throw input.refusal(rejected);
        }
    }
}
