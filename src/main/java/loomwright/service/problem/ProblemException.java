package loomwright.service.problem;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import loomwright.answer.InputError;

/** A request that is not answered, with all that its problem document says but the request id. */
public final class ProblemException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final ProblemType type;
    private final transient List<Problem.Entry> errors;
    private final transient Map<String, String> headers;

    public ProblemException(ProblemType type, String detail, List<Problem.Entry> errors, Map<String, String> headers) {
        // Made for the caller and never logged: no stack trace.
        super(detail, null, false, false);
        this.type = type;
        this.errors = List.copyOf(errors);
        this.headers = Map.copyOf(headers);
    }

    public ProblemException(ProblemType type, String detail) {
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
        List<Problem.Entry> entries = faults.stream()
                .limit(MOST_LISTED)
                .map(fault -> Problem.Entry.of(fault, inBody))
                .toList();
        return new ProblemException(type, said(entries, faults.size()), entries, Map.of());
    }

    /** The first fault in words, for readers who see the detail only. */
    private static String said(List<Problem.Entry> entries, int count) {
        Problem.Entry first = entries.get(0);
        String place = placeOf(first);
        String fault = first.code() == InputError.Code.MISSING
                ? place + " is missing; accepted is "
                : first.value() == null
                        ? place + ": accepted is "
                        : place + " is '" + first.value() + "'; accepted is ";
        String more = count == 1
                ? ""
                : " There are "
                        + (count > MOST_LISTED ? "more than " + MOST_LISTED + " faults" : count + " faults in all")
                        + "; see errors.";
        // What is accepted may show the place in a second line; a detail is one sentence.
        String accepted = first.accepted().lines().findFirst().orElse("");
        String sentence = first.code() == InputError.Code.NOT_STATED ? place + ": " + accepted : fault + accepted + ".";
        return sentence + more;
    }

    private static String placeOf(Problem.Entry entry) {
        String inWords = entry.place();
        if (inWords != null && !inWords.isEmpty()) {
            return inWords.substring(0, 1).toUpperCase(Locale.ROOT) + inWords.substring(1);
        }
        if (entry.parameter() != null) {
            return "Parameter '" + Problem.shortened(entry.parameter()) + "'";
        }
        String pointer = String.valueOf(entry.pointer());
        return pointer.isEmpty() ? "The body" : "'" + Problem.shortened(pointer) + "'";
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
