package loomwright.answer;

import java.util.List;
import loomwright.message.Message;

/**
 * A calculated result with what a person needs to follow and trust it.
 *
 * @param result the figures
 * @param working the steps, formulas with numbers in them, in reading order
 * @param basis where each table or rule comes from
 * @param cautions only those that apply to this answer
 */
public record Answer<T>(T result, List<Message> working, List<Basis> basis, List<Caution> cautions) {
    public Answer {
        working = List.copyOf(working);
        basis = List.copyOf(basis);
        cautions = List.copyOf(cautions);
    }

    /** Another result that is followed and trusted in the same way. */
    public Answer<T> with(T other) {
        return new Answer<>(other, working, basis, cautions);
    }
}
