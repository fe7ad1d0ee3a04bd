package loomwright.service.input;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.list.CellRef;
import loomwright.list.ListLimits;
import loomwright.list.ListReading;
import loomwright.list.ListSource;
import loomwright.list.PlanList;
import loomwright.list.Question;
import loomwright.list.TextList;
import loomwright.list.Workbooks;
import loomwright.service.problem.ProblemException;

/** A plan that came as a list: tables of wires, parts and settings, as text or as a workbook. */
public final class ListInput implements RequestInput {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final String ODS = "application/vnd.oasis.opendocument.spreadsheet";

    private final ListReading reading;
    private final BodyInput plan;

    private ListInput(ListReading reading, BodyInput plan) {
        this.reading = reading;
        this.plan = plan;
    }

    /**
     * Reads a body as a list.
     *
     * @param mediaType one that the contract names
     * @throws ProblemException 422 if there is no list in it
     */
    public static ListInput of(String mediaType, byte[] body, Contract.Schema schema, Json json, Bodies bodies)
            throws IOException {
        ListReading reading;
        try {
            reading = PlanList.read(source(mediaType, body));
        } catch (RejectedInput rejected) {
            throw ProblemException.ofFaults(rejected.faults(), true, false);
        }
        byte[] document = json.mapper().writeValueAsBytes(reading.plan());
        return new ListInput(reading, new BodyInput(document, schema, bodies));
    }

    private static ListSource source(String mediaType, byte[] body) {
        return switch (mediaType) {
            case XLSX -> Workbooks.readXlsx(body, ListLimits.defaults());
            case ODS -> Workbooks.readOds(body, ListLimits.defaults());
            default -> TextList.read(TextList.decode(body), ListLimits.defaults());
        };
    }

    @Override
    public <T> T read(Class<T> type) throws IOException {
        return plan.read(type);
    }

    @Override
    public ProblemException refusal(RejectedInput rejected) throws IOException {
        List<InputError> placed = new ArrayList<>();
        for (InputError error : rejected.faults()) {
            placed.add(new InputError(
                    error.code(), error.pointer(), row(error.pointer()).orElse(error.value()), error.accepted()));
        }
        return ProblemException.ofFaults(placed, true, false);
    }

    /** The row of the list that a place of the plan document comes from. */
    private Optional<String> row(String pointer) {
        return reading.places().entrySet().stream()
                .filter(each -> pointer.equals(each.getKey()) || pointer.startsWith(each.getKey() + "/"))
                .map(each -> place(each.getValue()))
                .findFirst();
    }

    private static String place(CellRef at) {
        String sheet = at.sheet().isEmpty() ? "" : "worksheet " + at.sheet() + ", ";
        String row = at.row() == 0 ? "" : "row " + at.row();
        String column = at.column().isEmpty() ? "" : (row.isEmpty() ? "" : ", ") + "column " + at.column();
        return sheet + row + column;
    }

    /** What was assumed while reading, for an answer. */
    public List<Assumption> assumptions() {
        List<Assumption> assumptions = new ArrayList<>();
        for (loomwright.list.Assumption each : reading.assumptions()) {
            Map<String, Object> assumed = new LinkedHashMap<>();
            each.message().arguments().forEach((name, value) -> assumed.put(name, text(value)));
            assumed.put("place", place(each.at()));
            assumed.put("instead", each.instead().text());
            if (each.basis() != null) {
                assumed.put("basis", each.basis().inWords());
            }
            assumptions.add(new Assumption(
                    "list-" + each.message().code().code(), each.about(), assumed, each.message(), List.of()));
        }
        return assumptions;
    }

    private static String text(loomwright.message.Argument value) {
        return value instanceof loomwright.message.Argument.Verbatim verbatim ? verbatim.text() : String.valueOf(value);
    }

    /**
     * An answer to a list: what was asked in return, and the plan that the list was read as, which patches of remedies fit.
     *
     * @param answer the answer itself
     * @param questions all that could not be guessed
     * @param plan the plan document
     */
    public record Answered<T>(@JsonUnwrapped Answer<T> answer, List<AskedBack> questions, Map<String, Object> plan) {}

    /**
     * One question.
     *
     * @param code what is asked; stable
     * @param ids the parts and wires whose results hang on it
     * @param place worksheet, row and column of the list
     * @param row of the list
     * @param column of the list, by its heading
     * @param written what stands there; empty for nothing
     * @param choices what may be answered
     * @param taken what was taken meanwhile
     * @param text the question as a sentence
     */
    public record AskedBack(
            String code,
            List<String> ids,
            String place,
            int row,
            String column,
            String written,
            List<String> choices,
            String taken,
            String text) {
        static AskedBack of(Question question) {
            return new AskedBack(
                    question.message().code().code(),
                    question.about(),
                    ListInput.place(question.at()),
                    question.at().row(),
                    question.at().column(),
                    question.written(),
                    question.choices(),
                    question.taken(),
                    question.message().text());
        }
    }

    public <T> Answered<T> answered(Answer<T> answer) {
        return new Answered<>(
                answer, reading.questions().stream().map(AskedBack::of).toList(), reading.plan());
    }
}
