package loomwright.service;

import com.fasterxml.jackson.databind.node.ObjectNode;
import loomwright.answer.RejectedInput;

/** Input that stands in query and path, or in a row under the names of a query. */
record QueryInput(ObjectNode values, Queries queries) implements Input {
    @Override
    public <T> T read(Class<T> type) {
        return queries.bind(values, type);
    }

    @Override
    public Refusal refusal(RejectedInput rejected) {
        return Refusal.ofFaults(rejected.faults(), false, false);
    }
}
