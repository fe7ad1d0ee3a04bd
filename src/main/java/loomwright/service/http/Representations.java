package loomwright.service.http;

import static loomwright.message.Arg.arg;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import loomwright.answer.Answer;
import loomwright.drawing.Png;
import loomwright.drawing.Svg;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import loomwright.service.form.AnswerPage;
import loomwright.service.form.CellNumbers;
import loomwright.service.form.Markdown;
import loomwright.service.form.Table;
import loomwright.service.input.Json;
import loomwright.service.input.ListInput;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemType;

/**
 * The forms in which one kind of answer is given; JSON nearly always, the others as the route table names them.
 *
 * @param <T> what is asked
 * @param <R> the result
 */
public final class Representations<T, R> {
    /** Chooses the form where a header cannot be set, as in a spreadsheet. */
    public static final String PARAMETER = "format";

    /** The parameters that say how an answer is to be written or a list to be read, not what is asked. */
    public static final Set<String> PARAMETERS =
            Set.of(PARAMETER, MaxLengthFilter.PARAMETER, ErrorsAsText.PARAMETER, ListInput.STRICT);

    /** Dots per pixel of a picture: sharp on a close screen and on paper. */
    private static final double PNG_SCALE = 2;

    private final Map<Representation, Writer<T, R>> writers;
    private final Rows<R> rows;

    /** Its table, for one table of many answers. */
    private record Rows<R>(List<String> columns, Function<R, Table> table) {
        static <R> Rows<R> none() {
            return new Rows<>(List.of(), result -> new Table(List.of(), List.of()));
        }
    }

    /** Writes an answer in one form. */
    @FunctionalInterface
    public interface Writer<T, R> {
        byte[] write(T asked, Answer<R> answer, Json json) throws IOException;
    }

    private Representations(Map<Representation, Writer<T, R>> writers, Rows<R> rows) {
        this.writers = writers;
        this.rows = rows;
    }

    private enum NoFigure implements MessageCode {
        NO_FIGURE
    }

    /** JSON only. */
    public static <T, R> Representations<T, R> json() {
        return Representations.<T, R>none().with(Representation.JSON, (asked, answer, json) -> json.write(answer));
    }

    /** Nothing yet: for what has no form but pictures. */
    public static <T, R> Representations<T, R> none() {
        return new Representations<>(Map.of(), Rows.none());
    }

    /** Also the headline figure as plain text. */
    public Representations<T, R> figure(ToDoubleFunction<R> figure) {
        return text(Representation.TEXT, answer -> CellNumbers.text(figure.applyAsDouble(answer.result())));
    }

    /**
     * Also the headline figure as plain text, where there may be none.
     *
     * @param otherwise why there is none, for the 422 that is answered then
     */
    public Representations<T, R> figure(Function<R, OptionalDouble> figure, Function<R, Message> otherwise) {
        return text(
                Representation.TEXT,
                answer -> CellNumbers.text(figure.apply(answer.result())
                        .orElseThrow(() -> new ProblemException(
                                ProblemType.UNPROCESSABLE_INPUT,
                                NoFigure.NO_FIGURE.with(arg("why", otherwise.apply(answer.result())))))));
    }

    /** Also a table: as comma-separated values, and for a forum post with cautions and working. */
    public Representations<T, R> table(Function<R, Table> table) {
        return text(Representation.CSV, answer -> table.apply(answer.result()).csv())
                .text(Representation.MARKDOWN, answer -> Markdown.of(answer, table.apply(answer.result())));
    }

    /** Also a table whose columns are always these, so that many answers can stand in one. */
    public Representations<T, R> table(List<String> columns, Function<R, Table> table) {
        return new Representations<>(table(table).writers, new Rows<>(columns, table));
    }

    /** Also a plain page with the same table, for a browser that sent a form. */
    public Representations<T, R> page(String title, Function<R, Table> table) {
        return with(
                Representation.HTML,
                (asked, answer, json) -> AnswerPage.of(title, answer, table.apply(answer.result())));
    }

    /** Also a form that is text. */
    public Representations<T, R> text(Representation face, Function<Answer<R>, String> text) {
        return with(face, (asked, answer, json) -> text.apply(answer).getBytes(StandardCharsets.UTF_8));
    }

    /** Also a picture of the answer, as SVG and as PNG. */
    public Representations<T, R> picture(Function<Answer<R>, Svg> picture) {
        return with(
                        Representation.SVG,
                        (asked, answer, json) -> picture.apply(answer).bytes())
                .with(Representation.PNG, (asked, answer, json) -> Png.of(picture.apply(answer), PNG_SCALE));
    }

    /** Also curves around the answer, drawn from the question, as SVG and as PNG. */
    public Representations<T, R> curves(Function<T, Svg> picture) {
        return with(
                        Representation.SVG,
                        (asked, answer, json) -> picture.apply(asked).bytes())
                .with(Representation.PNG, (asked, answer, json) -> Png.of(picture.apply(asked), PNG_SCALE));
    }

    /** Also a form of its own. */
    public Representations<T, R> with(Representation face, Writer<T, R> writer) {
        Map<Representation, Writer<T, R>> more = new LinkedHashMap<>(writers);
        more.put(face, writer);
        return new Representations<>(more, rows);
    }

    public List<String> columns() {
        return rows.columns();
    }

    public Table table(R result) {
        return rows.table().apply(result);
    }

    /**
     * The form that the request asks for.
     *
     * @throws ProblemException 406 that lists the forms there are
     */
    public Representation choose(Request request) {
        Optional<String> word = request.query(PARAMETER);
        if (word.isPresent()) {
            return writers.keySet().stream()
                    .filter(face -> face.word().equals(word.get()))
                    .findFirst()
                    .orElseThrow(this::notAcceptable);
        }
        List<String> mediaTypes = new ArrayList<>(
                writers.keySet().stream().map(Representation::mediaType).toList());
        String accept = request.accept();
        // A program that names JSON beside pictures reads it as data; a page that wants a picture names none.
        if (accept != null && accept.contains(Json.MEDIA_TYPE) && mediaTypes.remove(Json.MEDIA_TYPE)) {
            mediaTypes.add(0, Json.MEDIA_TYPE);
        }
        String chosen = Accept.choose(accept, mediaTypes).orElseThrow(this::notAcceptable);
        return writers.keySet().stream()
                .filter(face -> face.mediaType().equals(chosen))
                .findFirst()
                .orElseThrow(this::notAcceptable);
    }

    /** The reply in a form that {@link #choose} gave. */
    public Reply write(Representation face, T asked, Answer<R> answer, Json json) throws IOException {
        Writer<T, R> writer = writers.get(face);
        if (writer == null) {
            throw new IllegalArgumentException("no such form: " + face);
        }
        return Reply.of(face.contentType(), writer.write(asked, answer, json)).withHeaders(headers(face));
    }

    private static Map<String, String> headers(Representation face) {
        return face == Representation.HTML
                ? Map.of("Vary", "Accept", FixedHeaders.CONTENT_SECURITY, FixedHeaders.ANSWER_CONTENT_SECURITY)
                : Map.of("Vary", "Accept");
    }

    private ProblemException notAcceptable() {
        return Request.notAcceptable(
                writers.keySet().stream().map(Representation::mediaType).toList());
    }
}
