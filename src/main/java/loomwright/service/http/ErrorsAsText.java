package loomwright.service.http;

import java.util.List;
import java.util.stream.Stream;
import loomwright.service.input.Contract.Operation;
import org.jspecify.annotations.Nullable;

/**
 * On request, what is wrong with a request stands in the answer with status 200, as plain text: a spreadsheet shows
 * nothing of an answer with any other status. Faults of the service keep their status.
 */
public final class ErrorsAsText {
    /** The parameter that asks for it; operations that take it list it. */
    public static final String PARAMETER = "errors";

    /** Request attribute: set if it was asked for. */
    public static final String ASKED = "loomwright.errors-as-text";

    private static final List<String> FORMS = Stream.of(
                    Representation.TEXT, Representation.CSV, Representation.MARKDOWN)
            .map(Representation::word)
            .toList();

    private ErrorsAsText() {}

    /** Whether a raw query asks for it: it must be told before the query can be found faulty. */
    public static boolean isAsked(@Nullable String rawQuery, Operation operation) {
        if (rawQuery == null || operation.query(PARAMETER) == null) {
            return false;
        }
        List<String> pairs = List.of(rawQuery.split("&", -1));
        return pairs.contains(PARAMETER + "=text")
                && FORMS.stream().anyMatch(form -> pairs.contains(Representations.PARAMETER + "=" + form));
    }
}
