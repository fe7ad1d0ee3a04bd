package loomwright.service;

import java.util.List;
import loomwright.service.Contract.Operation;
import org.jspecify.annotations.Nullable;

/**
 * On request, what is wrong with a request stands in the answer with status 200, as plain text: a spreadsheet shows
 * nothing of an answer with any other status. Faults of the service keep their status.
 */
final class ReasonInCell {
    /** The parameter that asks for it; operations that take it list it. */
    static final String PARAMETER = "problems";

    /** Request attribute: set if it was asked for. */
    static final String ASKED = "loomwright.reason-in-cell";

    private static final List<String> FORMS = List.of(Face.TEXT.word(), Face.CSV.word());

    private ReasonInCell() {}

    /** Whether a raw query asks for it: it must be told before the query can be found faulty. */
    static boolean isAsked(@Nullable String rawQuery, Operation operation) {
        if (rawQuery == null || operation.query(PARAMETER) == null) {
            return false;
        }
        List<String> pairs = List.of(rawQuery.split("&", -1));
        return pairs.contains(PARAMETER + "=text")
                && FORMS.stream().anyMatch(form -> pairs.contains(Faces.PARAMETER + "=" + form));
    }
}
