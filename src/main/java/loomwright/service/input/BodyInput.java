package loomwright.service.input;

import java.io.IOException;
import loomwright.answer.RejectedInput;
import loomwright.service.problem.ProblemException;

/** RequestInput that is a JSON body, or a line that could be one. */
public final class BodyInput implements RequestInput {
    private final byte[] body;
    private final Contract.Schema schema;
    private final Bodies bodies;

    public BodyInput(byte[] body, Contract.Schema schema, Bodies bodies) {
        this.body = body;
        this.schema = schema;
        this.bodies = bodies;
    }

    @Override
    public <T> T read(Class<T> type) throws IOException {
        return bodies.read(body, type, schema);
    }

    @Override
    public ProblemException refusal(RejectedInput rejected) throws IOException {
        bodies.checkByContract(body, schema);
        return ProblemException.ofFaults(bodies.placed(rejected.faults(), body), true, false);
    }
}
