package loomwright.service.input;

import java.io.IOException;
import loomwright.answer.RejectedInput;
import loomwright.service.problem.ProblemException;

/** What a calculation is asked with. */
public interface RequestInput {
    /**
     * The input as the record of the operation.
     *
     * @throws ProblemException if it does not follow the contract
     */
    <T> T read(Class<T> type) throws IOException;

    /**
     * What to answer when the domain rejects the input: 400 if the contract objects as well, with all that it has to
     * say, else 422.
     */
    ProblemException refusal(RejectedInput rejected) throws IOException;

    /** Whether an option beside the input is true; a line of many comes without options. */
    default boolean isSet(String option) {
        return false;
    }

    /**
     * The options beside the input as a record.
     *
     * @param usual those of a line of many, which comes without options
     * @throws ProblemException if they cannot be what the record wants
     */
    default <O> O options(Class<O> type, O usual) {
        return usual;
    }
}
