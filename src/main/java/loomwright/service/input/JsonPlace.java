package loomwright.service.input;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import loomwright.answer.InputError;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/** Says where a fault of a JSON document is by what its writer calls it: wire W8, the third entry of a list, a property. */
final class JsonPlace {
    /** Lists whose entries a person speaks of by their kind and id. */
    private enum Code implements MessageCode {
        PARTS,
        WIRES,
        CONDITIONS,
        CONNECTORS,
        ELEMENTS,
        ENTRY,
        PROPERTY
    }

    private JsonPlace() {}

    /**
     * The fault with its place in words, unless it has one.
     *
     * @param root the document
     */
    static InputError of(InputError fault, JsonNode root) {
        if (fault.place() != null || !fault.pointer().startsWith("/")) {
            return fault;
        }
        JsonPointer at = JsonPointer.compile(fault.pointer());
        boolean unknown = fault.code() == InputError.Code.UNKNOWN_NAME;
        return fault.at(inWords(unknown ? at.head() : at, root));
    }

    private static @Nullable String inWords(JsonPointer at, JsonNode root) {
        String within = "";
        for (JsonPointer above = at; !above.matches(); above = above.head()) {
            JsonPointer list = above.head();
            if (root.at(list).isArray() && above.last().getMatchingIndex() >= 0) {
                String entry = entry(list, above.last().getMatchingIndex(), root);
                return within.isEmpty()
                        ? entry
                        : Code.PROPERTY
                                .with(arg("entry", entry), arg("name", within))
                                .text();
            }
            String name = above.last().getMatchingProperty();
            within = within.isEmpty() ? name : name + "." + within;
        }
        return within.isEmpty() ? null : within;
    }

    private static String entry(JsonPointer list, int index, JsonNode root) {
        String name = list.matches() ? "" : list.last().getMatchingProperty();
        String id = root.at(list).path(index).path("id").asText("");
        for (Code code : Code.values()) {
            if (code.code().equals(name) && !id.isEmpty()) {
                return code.with(arg("id", id)).text();
            }
        }
        Message entry = Code.ENTRY.with(arg("number", index + 1), arg("list", name));
        return entry.text();
    }
}
