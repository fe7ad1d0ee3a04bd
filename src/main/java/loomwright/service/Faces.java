package loomwright.service;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import loomwright.answer.Answer;
import loomwright.service.form.Figures;
import loomwright.service.form.Table;

/** The forms in which one kind of answer is given; JSON always, the others as the route table names them. */
public final class Faces<R> {
    /** Chooses the form where a header cannot be set, as in a spreadsheet. */
    static final String PARAMETER = "format";

    private final Map<Face, Writer<R>> writers;
    private final Rows<R> rows;

    /** Its table, for one table of many answers. */
    private record Rows<R>(List<String> columns, Function<R, Table> table) {}

    /** Writes an answer in one form. */
    @FunctionalInterface
    public interface Writer<R> {
        byte[] write(Answer<R> answer, Json json) throws IOException;
    }

    private Faces(Map<Face, Writer<R>> writers, Rows<R> rows) {
        this.writers = writers;
        this.rows = rows;
    }

    /** JSON only. */
    static <R> Faces<R> json() {
        return new Faces<R>(Map.of(), new Rows<>(List.of(), result -> new Table(List.of(), List.of()))).with(Face.JSON, (answer, json) -> json.write(answer));
    }

    /** Also the headline figure as plain text. */
    Faces<R> figure(ToDoubleFunction<R> figure) {
        return text(Face.TEXT, answer -> Figures.text(figure.applyAsDouble(answer.result())));
    }

    /**
     * Also the headline figure as plain text, where there may be none.
     *
     * @param otherwise why there is none, for the 422 that is answered then
     */
    Faces<R> figure(Function<R, OptionalDouble> figure, Function<R, String> otherwise) {
        return text(
                Face.TEXT,
                answer -> Figures.text(figure.apply(answer.result())
                        .orElseThrow(() -> new Refusal(
                                ProblemType.UNPROCESSABLE_INPUT,
                                "There is no such figure: " + otherwise.apply(answer.result()) + "."))));
    }

    /** Also a table as comma-separated values. */
    Faces<R> table(Function<R, Table> table) {
        return text(Face.CSV, answer -> table.apply(answer.result()).csv());
    }

    /** Also a table whose columns are always these, so that many answers can stand in one. */
    Faces<R> table(List<String> columns, Function<R, Table> table) {
        return new Faces<>(table(table).writers, new Rows<>(columns, table));
    }

    /** Also a form that is text. */
    Faces<R> text(Face face, Function<Answer<R>, String> text) {
        return with(face, (answer, json) -> text.apply(answer).getBytes(StandardCharsets.UTF_8));
    }

    /** Also a form of its own. */
    Faces<R> with(Face face, Writer<R> writer) {
        Map<Face, Writer<R>> more = new LinkedHashMap<>(writers);
        more.put(face, writer);
        return new Faces<>(more, rows);
    }

    List<String> columns() {
        return rows.columns();
    }

    Table table(R result) {
        return rows.table().apply(result);
    }

    /**
     * The form that the request asks for.
     *
     * @throws Refusal 406 that lists the forms there are
     */
    Face choose(Request request) {
        Optional<String> word = request.query(PARAMETER);
        if (word.isPresent()) {
            return writers.keySet().stream()
                    .filter(face -> face.word().equals(word.get()))
                    .findFirst()
                    .orElseThrow(this::notAcceptable);
        }
        List<String> mediaTypes = writers.keySet().stream().map(Face::mediaType).toList();
        String chosen = Accept.choose(request.accept(), mediaTypes).orElseThrow(this::notAcceptable);
        return writers.keySet().stream()
                .filter(face -> face.mediaType().equals(chosen))
                .findFirst()
                .orElseThrow(this::notAcceptable);
    }

    /** The reply in a form that {@link #choose} gave. */
    Reply write(Face face, Answer<R> answer, Json json) throws IOException {
        Writer<R> writer = writers.get(face);
        if (writer == null) {
            throw new IllegalArgumentException("no such form: " + face);
        }
        return Reply.of(face.contentType(), writer.write(answer, json)).withHeaders(Map.of("Vary", "Accept"));
    }

    private Refusal notAcceptable() {
        return Request.notAcceptable(
                writers.keySet().stream().map(Face::mediaType).toList());
    }
}
