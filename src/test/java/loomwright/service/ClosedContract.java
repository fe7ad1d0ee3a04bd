package loomwright.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import loomwright.service.input.Contract;

/**
 * The contract with its answers closed. Answers may get properties and words that an old client has not heard of; what
 * this version answers has to be in this contract.
 */
final class ClosedContract {
    private static final String OPEN_WORDS = "x-extensible-enum";

    private ClosedContract() {}

    static Contract of(Contract contract) {
        JsonNode copy = contract.document().deepCopy();
        close(copy);
        return Contract.of(copy);
    }

    private static void close(JsonNode node) {
        if (node instanceof ObjectNode object) {
            if (object.has(OPEN_WORDS)) {
                object.set("enum", object.remove(OPEN_WORDS));
            }
            // Without properties of its own it is open for good, as the rows of a table are.
            if (object.path("additionalProperties").asBoolean() && object.has("properties")) {
                object.put("additionalProperties", false);
            }
        }
        node.forEach(ClosedContract::close);
    }
}
