package loomwright.answer;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.message.Message;

/**
 * Something that the question left out and that therefore was filled in.
 *
 * @param code stable name of the rule by which it was filled in; tests and callers may rely on it
 * @param ids the parts and wires for which it was
 * @param assumed what counts, as the document would say it: property names with their values
 * @param text the assumption as a sentence, with the reason
 * @param findings codes of the findings in the same answer that rest on it
 */
public record Assumption(
        String code, List<String> ids, Map<String, Object> assumed, Message text, List<String> findings) {
    public Assumption {
        ids = List.copyOf(ids);
        assumed = Collections.unmodifiableMap(new LinkedHashMap<>(assumed));
        findings = List.copyOf(findings);
    }

    /** How what was filled in while a list was read is named: its code behind this. */
    public static final String OF_LIST = "list-";

    /** How a question about a list is named, where it stands among what was taken. */
    public static final String QUESTION = "question-";

    /** Whether it is a question that is still open, on whose first choice the answer stands. */
    public boolean isQuestion() {
        return code.startsWith(QUESTION);
    }

    /** Whether it tells how a list was read, which its owner must know before anything else. */
    public boolean isOfReading() {
        return isQuestion() || code.startsWith(OF_LIST);
    }
}
