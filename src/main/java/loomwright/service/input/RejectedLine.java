package loomwright.service.input;

import loomwright.answer.RejectedInput;
import loomwright.service.problem.ProblemException;

/** RequestInput of which it is known already that it cannot be read. */
public record RejectedLine(ProblemException why) implements RequestInput {
    @Override
    public <T> T read(Class<T> type) {
        throw why;
    }

    @Override
    public ProblemException refusal(RejectedInput rejected) {
        return why;
    }
}
