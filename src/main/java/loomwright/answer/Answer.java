package loomwright.answer;

import java.util.ArrayList;
import java.util.List;
import loomwright.message.Message;

/**
 * A calculated result with what a person needs to follow and trust it.
 *
 * @param result the figures
 * @param working the steps, formulas with numbers in them, in reading order
 * @param basis where each table or rule comes from
 * @param assumptions what the question left out and was filled in
 * @param cautions only those that apply to this answer
 */
public record Answer<T>(
        T result, List<Message> working, List<Basis> basis, List<Assumption> assumptions, List<Caution> cautions) {
    public Answer {
        working = List.copyOf(working);
        basis = List.copyOf(basis);
        assumptions = List.copyOf(assumptions);
        cautions = List.copyOf(cautions);
    }

    /** An answer for which nothing had to be assumed. */
    public Answer(T result, List<Message> working, List<Basis> basis, List<Caution> cautions) {
        this(result, working, basis, List.of(), cautions);
    }

    /** The same answer, with what was assumed before the calculation began. */
    public Answer<T> withAssumptionsFirst(List<Assumption> first) {
        List<Assumption> all = new ArrayList<>(first);
        all.addAll(assumptions);
        return new Answer<>(result, working, basis, all, cautions);
    }

    /** Another result that is followed and trusted in the same way. */
    public <R> Answer<R> with(R other) {
        return new Answer<>(other, working, basis, assumptions, cautions);
    }
}
