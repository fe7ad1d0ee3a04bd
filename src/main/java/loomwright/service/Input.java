package loomwright.service;

import java.io.IOException;
import loomwright.answer.RejectedInput;

/** What a calculation is asked with. */
interface Input {
    /**
     * The input as the record of the operation.
     *
     * @throws Refusal if it does not follow the contract
     */
    <T> T read(Class<T> type) throws IOException;

    /**
     * What to answer when the domain rejects the input: 400 if the contract objects as well, with all that it has to
     * say, else 422.
     */
    Refusal refusal(RejectedInput rejected) throws IOException;

    /** Whether an option beside the input is true; a line of many comes without options. */
    default boolean isSet(String option) {
        return false;
    }
}
