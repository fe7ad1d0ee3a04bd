package loomwright.service.input;

import com.fasterxml.jackson.databind.node.ObjectNode;
import loomwright.answer.RejectedInput;
import loomwright.service.problem.ProblemException;

/** RequestInput that stands in query and path, or in a row under the names of a query. */
public record QueryInput(ObjectNode values, Queries queries) implements RequestInput {
    @Override
    public <T> T read(Class<T> type) {
        return queries.bind(values, type);
    }

    @Override
    public ProblemException refusal(RejectedInput rejected) {
        return ProblemException.ofFaults(rejected.faults(), false, false);
    }
}
