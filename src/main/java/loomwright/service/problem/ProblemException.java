package loomwright.service.problem;

import static loomwright.message.Arg.arg;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.InputError;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/** A request that is not answered, with all that its problem document says but the request id. */
public final class ProblemException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final ProblemType type;
    private final transient List<Problem.Entry> errors;
    private final transient Map<String, String> headers;

    public ProblemException(ProblemType type, Message detail, List<Problem.Entry> errors, Map<String, String> headers) {
        // Made for the caller and never logged: no stack trace.
        super(detail.text(), null, false, false);
        this.type = type;
        this.errors = List.copyOf(errors);
        this.headers = Map.copyOf(headers);
    }

    public ProblemException(ProblemType type, Message detail) {
        this(type, detail, List.of(), Map.of());
    }

    /** Most faults listed; a longer list helps nobody. */
    public static final int MOST_LISTED = 100;

    public static ProblemException ofFaults(List<InputError> faults, boolean inBody, boolean byContract) {
        ProblemType type = !byContract
                ? ProblemType.UNPROCESSABLE_INPUT
                : faults.stream().allMatch(f -> f.code() == InputError.Code.UNKNOWN_NAME)
                        ? ProblemType.UNKNOWN_NAME
                        : ProblemType.INVALID_INPUT;
        List<InputError> told = withoutRepeats(faults);
        List<Problem.Entry> entries = told.stream()
                .limit(MOST_LISTED)
                .map(fault -> new Problem.Entry(fault, inBody))
                .toList();
        return new ProblemException(type, said(entries, told.size()), entries, Map.of());
    }

    /** A name that was misspelt is not missing besides, and a number in quotes is not out of its range besides. */
    private static List<InputError> withoutRepeats(List<InputError> faults) {
        Set<String> explained = new HashSet<>();
        for (InputError fault : faults) {
            if (fault.code() == InputError.Code.NUMBER_AS_TEXT) {
                explained.add(fault.pointer());
            } else if (fault.code() == InputError.Code.UNKNOWN_NAME && fault.suggestion() != null) {
                int last = fault.pointer().lastIndexOf('/') + 1;
                explained.add(fault.pointer().substring(0, last) + fault.suggestion());
            }
        }
        return faults.stream()
                .filter(fault -> fault.code() == InputError.Code.NUMBER_AS_TEXT || !explained.contains(fault.pointer()))
                .toList();
    }

    /** The first fault in words, for readers who see the detail only. */
    private static Message said(List<Problem.Entry> entries, int count) {
        FaultCount said = count > MOST_LISTED ? FaultCount.TOO_MANY : FaultCount.SOME;
        return said.with(arg("first", entries.get(0).text()), arg("others", count - 1), arg("most", MOST_LISTED));
    }

    private enum FaultCount implements MessageCode {
        SOME,
        TOO_MANY
    }

    public ProblemType type() {
        return type;
    }

    public List<Problem.Entry> errors() {
        return errors;
    }

    public Map<String, String> headers() {
        return headers;
    }
}
