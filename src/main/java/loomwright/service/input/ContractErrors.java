package loomwright.service.input;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonNodePath;
import com.networknt.schema.ValidationMessage;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputError.Code;
import loomwright.list.Spelling;
import loomwright.message.Message;
import loomwright.service.problem.ProblemException;
import org.jspecify.annotations.Nullable;

/** Says in the words of this service what the contract has against a value. */
public final class ContractErrors {
    /** How many items of each list are judged first: more than most lists may have. */
    private static final int FIRST_ITEMS = 1_001;

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?([eE][+-]?\\d+)?");

    private final Contract contract;
    private final AcceptedInput accepted;

    public ContractErrors(Contract contract) {
        this.contract = contract;
        this.accepted = new AcceptedInput(contract);
    }

    /**
     * The faults of {@code value}, with JSON pointers from it; none if the contract accepts it. Where there are more than
     * {@link ProblemException#MOST_LISTED} they may not be all: of a long list its beginning is judged first, because to find all
     * that is wrong with each of its items takes far longer than to read them.
     */
    public List<InputError> of(Contract.Schema schema, JsonNode value) {
        List<InputError> faults = faults(schema, value);
        return faults.isEmpty()
                ? faults
                : BodyShape.fault(schema.form(), value).map(List::of).orElse(faults);
    }

    private List<InputError> faults(Contract.Schema schema, JsonNode value) {
        int longest = longestList(value);
        for (int items = FIRST_ITEMS; items < longest; items *= 4) {
            List<InputError> faults = faults(schema, beginning(value, items), value);
            if (faults.size() > ProblemException.MOST_LISTED) {
                return faults;
            }
        }
        return faults(schema, value, value);
    }

    private static int longestList(JsonNode value) {
        int longest = value.isArray() ? value.size() : 0;
        for (JsonNode inner : value) {
            longest = Math.max(longest, longestList(inner));
        }
        return longest;
    }

    /** A copy of the value with each list cut down to so many items. */
    private static JsonNode beginning(JsonNode value, int items) {
        if (value.isArray()) {
            ArrayNode cut = JsonNodeFactory.instance.arrayNode();
            for (int i = 0; i < Math.min(value.size(), items); i++) {
                cut.add(beginning(value.get(i), items));
            }
            return cut;
        } else if (value.isObject()) {
            ObjectNode cut = JsonNodeFactory.instance.objectNode();
            value.properties().forEach(property -> cut.set(property.getKey(), beginning(property.getValue(), items)));
            return cut;
        }
        return value;
    }

    /**
     * What the contract has against a value.
     *
     * @param told the value as it came, of which this is the beginning
     */
    private List<InputError> faults(Contract.Schema schema, JsonNode value, JsonNode told) {
        Set<ValidationMessage> messages = schema.validate(value);
        Set<JsonNodePath> choices = new HashSet<>();
        for (ValidationMessage message : messages) {
            if (isChoice(message) && !branchIsKnown(message, value)) {
                choices.add(message.getInstanceLocation());
            }
        }
        Set<InputError> faults = new LinkedHashSet<>();
        for (ValidationMessage message : messages) {
            JsonNodePath place = message.getInstanceLocation();
            boolean undecided = isWithin(place, choices);
            // Undecided, the branches have nothing useful to say; decided, the choice has not.
            if (undecided ? choices.contains(place) && isChoice(message) : !isChoice(message)) {
                faults.add(fault(message, told));
            }
        }
        return new ArrayList<>(faults);
    }

    private static boolean isWithin(JsonNodePath place, Set<JsonNodePath> places) {
        for (JsonNodePath at = place; at != null; at = at.getParent()) {
            if (places.contains(at)) {
                return true;
            }
        }
        return false;
    }

    /** What {@code schema} accepts. */
    Message accepted(JsonNode schema) {
        return accepted.by(schema);
    }

    /** Whether the tag of a value says which branch of a choice is meant. */
    private boolean branchIsKnown(ValidationMessage message, JsonNode root) {
        JsonNode discriminator = schemaAround(message).path("discriminator");
        JsonNode tag = root.at(message.getInstanceLocation().toString())
                .path(discriminator.path("propertyName").asText());
        return tag.isTextual() && discriminator.path("mapping").has(tag.asText());
    }

    private static boolean isChoice(ValidationMessage message) {
        return message.getType().equals("oneOf")
                || message.getType().equals("anyOf")
                || message.getType().equals("discriminator");
    }

    private InputError fault(ValidationMessage message, JsonNode root) {
        String pointer = message.getInstanceLocation().toString();
        JsonNode value = root.at(pointer);
        JsonNode schema = schemaAround(message);
        return switch (message.getType()) {
            case "required" ->
                new InputError(
                        Code.MISSING,
                        pointer + "/" + Contract.escaped(message.getProperty()),
                        null,
                        accepted.by(schema.path("properties").path(message.getProperty())));
            case "additionalProperties", "unevaluatedProperties" ->
                new InputError(
                                Code.UNKNOWN_NAME,
                                pointer + "/" + Contract.escaped(message.getProperty()),
                                said(value.path(message.getProperty())),
                                accepted.namesOf(schema))
                        .suggesting(nearest(message.getProperty(), accepted.propertiesOf(schema)));
            case "oneOf", "anyOf", "discriminator" -> choice(pointer, value, schema);
            default ->
                fault(code(message.getType(), value, schema), pointer, value, accepted.by(schema))
                        .suggesting(value.isTextual() ? nearest(value.asText(), accepted.wordsOf(schema)) : null);
        };
    }

    private InputError choice(String pointer, JsonNode value, JsonNode schema) {
        String tag = schema.path("discriminator").path("propertyName").asText("");
        if (tag.isEmpty() || !value.isObject()) {
            return fault(Code.WRONG_TYPE, pointer, value, accepted.by(schema));
        }
        if (!value.has(tag)) {
            return misnamedTag(pointer, value, tag, schema)
                    .orElseGet(() -> new InputError(Code.MISSING, pointer + "/" + tag, null, accepted.kindsOf(schema)));
        }
        return fault(Code.NOT_ONE_OF, pointer + "/" + tag, value.path(tag), accepted.kindsOf(schema))
                .suggesting(nearest(value.path(tag).asText(), kinds(schema)));
    }

    /** A kind that stands under another name: "type" for "kind". */
    private Optional<InputError> misnamedTag(String pointer, JsonNode value, String tag, JsonNode schema) {
        for (Map.Entry<String, JsonNode> property : value.properties()) {
            if (property.getValue().isTextual()
                    && kinds(schema).contains(property.getValue().asText())
                    && !isPropertyOfAny(property.getKey(), schema)) {
                return Optional.of(new InputError(
                                Code.UNKNOWN_NAME,
                                pointer + "/" + Contract.escaped(property.getKey()),
                                property.getValue().asText(),
                                accepted.kindsOf(schema))
                        .suggesting(tag));
            }
        }
        return Optional.empty();
    }

    private boolean isPropertyOfAny(String name, JsonNode schema) {
        for (JsonNode branch : contract.resolved(schema).path("oneOf")) {
            if (accepted.propertiesOf(branch).contains(name)) {
                return true;
            }
        }
        return false;
    }

    private List<String> kinds(JsonNode schema) {
        List<String> kinds = new ArrayList<>();
        contract.resolved(schema).at("/discriminator/mapping").fieldNames().forEachRemaining(kinds::add);
        return kinds;
    }

    private static @Nullable String nearest(String word, List<String> known) {
        return Spelling.nearest(word, known).orElse(null);
    }

    private Code code(String keyword, JsonNode value, JsonNode schema) {
        return switch (keyword) {
            case "type" ->
                value.isTextual() && NUMBER.matcher(value.asText()).matches() && accepted.isNumber(schema)
                        ? Code.NUMBER_AS_TEXT
                        : Code.WRONG_TYPE;
            case "enum", "const" -> Code.NOT_ONE_OF;
            case "pattern", "format" -> Code.MALFORMED;
            case "uniqueItems" -> Code.DUPLICATE;
            case "dependentRequired", "not" -> Code.CONTRADICTION;
            default -> Code.OUT_OF_RANGE;
        };
    }

    /** The schema that holds the keyword which failed. */
    private JsonNode schemaAround(ValidationMessage message) {
        String fragment = URLDecoder.decode(
                message.getSchemaLocation().getFragment().toString().replace("+", "%2B"), StandardCharsets.UTF_8);
        JsonPointer keyword = JsonPointer.compile(fragment);
        return contract.document().at(keyword.head());
    }

    /** A value as it stood in the input; containers by their kind. */
    static @Nullable String said(JsonNode value) {
        if (value.isMissingNode()) {
            return null;
        }
        return value.isContainerNode()
                ? found(value).text()
                : value.isNumber() ? AcceptedInput.plain(value) : value.asText();
    }

    private static Message found(JsonNode container) {
        return container.isObject() ? Accepted.OBJECT.with() : Accepted.LIST_OF.with(arg("count", container.size()));
    }

    private static InputError fault(Code code, String pointer, JsonNode value, Message accepted) {
        return value.isContainerNode()
                ? InputError.described(code, pointer, found(value), accepted)
                : new InputError(code, pointer, said(value), accepted);
    }
}
