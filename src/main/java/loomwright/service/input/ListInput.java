package loomwright.service.input;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.answer.WithFindings;
import loomwright.list.AssumptionGroups;
import loomwright.list.CellRef;
import loomwright.list.ListAssumption;
import loomwright.list.ListReading;
import loomwright.list.Question;
import loomwright.message.Argument;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import org.jspecify.annotations.Nullable;

/** A question whose plans came as lists: tables of wires, parts and settings, as text or as workbooks. */
public final class ListInput implements RequestInput {
    /** The parameter with a list in the address. */
    public static final String LIST = "list";

    /** Codes of findings that something is not connected. */
    private static final Set<String> OF_CONNECTIONS = Set.of("terminal-not-connected", "no-return");

    /** The parameter by which nothing may be assumed. */
    public static final String STRICT = "strict";

    private final List<ReadList> lists;
    private final JsonNode question;
    private final BodyInput input;

    /**
     * One list of the question.
     *
     * @param pointer of the plan in the question; empty if it is all of it
     * @param origin the file that it came in, in words; empty if there is one only
     */
    record ReadList(String pointer, String origin, ListReading reading) {
        /** The fault with its place in this list. */
        InputError marked(InputError fault, CellRef at) {
            return fault.at(place(at.inWords()), at.cell());
        }

        String place(String within) {
            return origin.isEmpty() || within.isEmpty() ? origin + within : origin + ", " + within;
        }
    }

    ListInput(List<ReadList> lists, JsonNode question, BodyInput input) {
        this.lists = List.copyOf(lists);
        this.question = question;
        this.input = input;
    }

    /**
     * Lets nothing be assumed.
     *
     * @throws ProblemException 422 with all that was assumed and all that must be asked
     */
    public void requireStated() {
        List<InputError> open = new ArrayList<>();
        for (ReadList list : lists) {
            for (Question each : list.reading().questions()) {
                open.add(notStated(
                        list,
                        each.at(),
                        AcceptedBody.ANSWER.with(arg("question", each.message()), texts("choices", each.choices()))));
            }
            for (ListAssumption each : list.reading().assumptions()) {
                if (each.isAvoidable()) {
                    open.add(notStated(
                            list,
                            each.at(),
                            AcceptedBody.STATED.with(arg("assumed", each.message()), arg("instead", each.instead()))));
                }
            }
        }
        if (!open.isEmpty()) {
            throw ProblemException.ofFaults(open, true, false);
        }
    }

    private static InputError notStated(ReadList list, CellRef at, Message text) {
        return list.marked(new InputError(InputError.Code.NOT_STATED, list.pointer(), null, text), at);
    }

    @Override
    public <T> T read(Class<T> type) throws IOException {
        try {
            return input.read(type);
        } catch (ProblemException problem) {
            throw placed(problem);
        }
    }

    @Override
    public ProblemException refusal(RejectedInput rejected) {
        return ProblemException.ofFaults(
                rejected.faults().stream()
                        .map(error -> error.place() == null ? placed(error, error.pointer()) : error)
                        .toList(),
                true,
                false);
    }

    /** What the contract objects to, by row and column; a place of a document that nobody wrote helps nobody. */
    private ProblemException placed(ProblemException problem) {
        List<InputError> faults = new ArrayList<>();
        for (Problem.Entry entry : problem.errors()) {
            String pointer = entry.pointer() == null ? "" : entry.pointer();
            faults.add(placed(entry.fault(), pointer));
        }
        return faults.isEmpty() ? problem : ProblemException.ofFaults(faults, true, false);
    }

    /** The fault with worksheet, row and column of the list that its place of the question comes from, if it comes from one. */
    private InputError placed(InputError fault, String pointer) {
        for (ReadList list : lists) {
            Optional<CellRef> found = cell(list, pointer);
            for (int i = 0; i < list.reading().readings().places().size() && found.isEmpty(); i++) {
                if (isWithin(pointer, "/" + QuestionOfLists.READINGS + "/" + i)) {
                    found = Optional.of(list.reading().readings().places().get(i));
                }
            }
            if (found.isPresent()) {
                return list.marked(fault, found.get());
            }
        }
        return fault;
    }

    /** The cell that the nearest enclosing value of a place comes from. */
    private static Optional<CellRef> cell(ReadList list, String pointer) {
        if (!isWithin(pointer, list.pointer())) {
            return Optional.empty();
        }
        Map<String, CellRef> places = list.reading().places();
        String at = pointer.substring(list.pointer().length());
        while (!places.containsKey(at) && at.indexOf('/') >= 0) {
            at = at.substring(0, at.lastIndexOf('/'));
        }
        return Optional.ofNullable(places.get(at));
    }

    private static boolean isWithin(String pointer, String place) {
        return pointer.equals(place) || pointer.startsWith(place + "/");
    }

    /** What was assumed while reading, for an answer. */
    public List<Assumption> assumptions() {
        return lists.stream().flatMap(ListInput::assumptions).toList();
    }

    private static Stream<Assumption> assumptions(ReadList list) {
        return said(list, list.reading().assumptions());
    }

    private static Stream<Assumption> said(ReadList list, List<ListAssumption> assumptions) {
        return assumptions.stream().map(each -> {
            Map<String, Object> assumed = new LinkedHashMap<>();
            each.message().arguments().forEach((name, value) -> assumed.put(name, text(value)));
            assumed.put("place", list.place(each.at().inWords()));
            assumed.put("instead", each.instead().text());
            if (each.basis() != null) {
                assumed.put("basis", each.basis().inWords());
            }
            return new Assumption(
                    Assumption.OF_LIST + each.message().code().code(),
                    each.about(),
                    assumed,
                    each.message(),
                    List.of());
        });
    }

    private static String text(Argument value) {
        return value instanceof Argument.Verbatim verbatim ? verbatim.text() : String.valueOf(value);
    }

    /**
     * An answer to a list: what was asked in return, and the plan that the list was read as, which patches of remedies fit.
     *
     * @param answer the answer itself
     * @param questions all that could not be guessed
     * @param plan the plan document; of two plans the one before the change
     * @param after the plan after the change; absent if there is one plan
     */
    public record Answered<T>(
            @JsonUnwrapped Answer<T> answer,
            List<AskedBack> questions,
            @Nullable JsonNode plan,
            @Nullable JsonNode after) {}

    /**
     * One question.
     *
     * @param code what is asked; stable
     * @param ids the parts and wires whose results depend on it
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
        static AskedBack of(ReadList list, Question question) {
            return new AskedBack(
                    question.message().code().code(),
                    question.about(),
                    list.place(question.at().inWords()),
                    question.at().row(),
                    question.at().column(),
                    question.written(),
                    question.choices(),
                    question.taken(),
                    question.message().text());
        }
    }

    /** All that could not be guessed. */
    public List<AskedBack> questions() {
        return lists.stream()
                .flatMap(list -> list.reading().questions().stream().map(each -> AskedBack.of(list, each)))
                .toList();
    }

    /** The answer with all that was assumed while reading. */
    public <T> Answer<T> withAllAssumed(Answer<T> answer) {
        return marked(answer).withAssumptionsFirst(assumptions());
    }

    /** Each finding with what was guessed about the parts and wires that it is about. */
    @SuppressWarnings("unchecked")
    private <T> Answer<T> marked(Answer<T> answer) {
        return answer.result() instanceof WithFindings<?> found
                ? answer.with((T) found.with(finding ->
                        finding.restingOn(Stream.concat(finding.restsOn().stream(), guesses(finding).stream())
                                .toList())))
                : answer;
    }

    /** What the figures of a finding may depend on; a finding that something is not connected has no figures. */
    private List<Message> guesses(Finding finding) {
        boolean hasFigures = !OF_CONNECTIONS.contains(finding.code());
        List<Message> guesses = new ArrayList<>();
        for (ReadList list : lists) {
            list.reading().questions().stream()
                    .filter(each -> hasFigures || each.isOfConnections())
                    .filter(each -> !Collections.disjoint(each.about(), finding.ids()))
                    .forEach(each -> guesses.add(each.message()));
            List<ListAssumption> values = list.reading().assumptions().stream()
                    .filter(each ->
                            hasFigures && each.isOfValue() && !Collections.disjoint(each.about(), finding.ids()))
                    .toList();
            AssumptionGroups.of(values).forEach(each -> guesses.add(each.message()));
        }
        return guesses;
    }

    /** The answer with what a list's owner must know of how it was read. */
    public <T> Answered<T> answered(Answer<T> answer) {
        JsonNode plan = question.has("schema")
                ? question
                : question.has("before") ? question.get("before") : question.get("plan");
        return new Answered<>(withAllAssumed(answer), questions(), plan, question.get("after"));
    }

    private static Assumption atPlace(Assumption each) {
        String place = String.valueOf(each.assumed().get("place"));
        return new Assumption(
                each.code(),
                each.ids(),
                each.assumed(),
                ListText.AT_PLACE.with(arg("text", each.text()), arg("place", place)),
                each.findings());
    }

    /** How what was read is said where there is text only. */
    private enum ListText implements MessageCode {
        QUESTION,
        AT_PLACE
    }

    /** The answer for forms that have no place of their own for questions: they stand before what was assumed. */
    public <T> Answer<T> withAllSaid(Answer<T> answer) {
        List<Assumption> said = new ArrayList<>();
        for (ReadList list : lists) {
            for (Question each : list.reading().questions()) {
                said.add(new Assumption(
                        Assumption.QUESTION + each.message().code().code(),
                        each.about(),
                        Map.of("place", list.place(each.at().inWords()), "taken", each.taken()),
                        ListText.QUESTION.with(
                                arg("question", each.message()),
                                texts("taken", each.taken().isEmpty() ? List.of() : List.of(each.taken())),
                                arg("place", list.place(each.at().inWords()))),
                        List.of()));
            }
        }
        for (ReadList list : lists) {
            for (ListAssumption each : AssumptionGroups.of(list.reading().assumptions())) {
                // What names no part or wire can only be found by its row.
                boolean placed = each.about().isEmpty() && each.at().row() > 0;
                said(list, List.of(each))
                        .map(one -> placed ? atPlace(one) : one)
                        .forEach(said::add);
            }
        }
        return marked(answer).withAssumptionsFirst(said);
    }
}
