package loomwright.service.input;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.answer.Accepted;
import loomwright.circuit.AcceptedPlan;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/** What a schema of the contract accepts, for the person whose input it does not. */
final class AcceptedInput {
    /** The forms of texts, by the pattern that states them in the contract. */
    private static final Map<String, MessageCode> FORMS = AcceptedPlan.forms();

    private static final int MOST_LISTED = 12;
    /** Of a longer list. */
    private static final int LISTED = 8;

    private final Contract contract;

    AcceptedInput(Contract contract) {
        this.contract = contract;
    }

    Message by(JsonNode unresolved) {
        JsonNode schema = contract.resolved(unresolved);
        if (schema.has("enum")) {
            return oneOf(wordsOf(schema));
        }
        if (schema.has("discriminator")) {
            return Accepted.OBJECT_OF_KIND.with(
                    arg("tag", schema.at("/discriminator/propertyName").asText()), arg("kinds", kindsOf(schema)));
        }
        return switch (type(schema)) {
            case "number" -> number(schema, Accepted.ANY_NUMBER, Accepted.NUMBER, Accepted.BOUNDED_NUMBER);
            case "integer" ->
                number(schema, Accepted.WHOLE_NUMBER, Accepted.WHOLE_NUMBER_BETWEEN, Accepted.BOUNDED_WHOLE_NUMBER);
            case "string" -> text(schema);
            case "array" -> list(schema);
            case "object" -> Accepted.OBJECT.with();
            case "boolean" -> Accepted.TRUE_OR_FALSE.with();
            default -> Accepted.BY_CONTRACT.with();
        };
    }

    /** The property names an object may have, in the order of the contract. */
    List<String> propertiesOf(JsonNode unresolved) {
        List<String> names = new ArrayList<>();
        contract.resolved(unresolved).path("properties").fieldNames().forEachRemaining(names::add);
        return names;
    }

    /** The words a text may be; none if it may be others. */
    List<String> wordsOf(JsonNode unresolved) {
        List<String> words = new ArrayList<>();
        contract.resolved(unresolved).path("enum").forEach(word -> words.add(word.asText()));
        return words;
    }

    /** The property names an object may have. */
    Message namesOf(JsonNode unresolved) {
        return oneOf(propertiesOf(unresolved));
    }

    /** The tags of a tagged choice. */
    Message kindsOf(JsonNode unresolved) {
        List<String> kinds = new ArrayList<>();
        contract.resolved(unresolved).at("/discriminator/mapping").fieldNames().forEachRemaining(kinds::add);
        return oneOf(kinds);
    }

    /** Words of a closed set. Nobody reads a long list in a sentence, so it is cut and says where the whole one stands. */
    static Message oneOf(List<String> words) {
        if (words.isEmpty()) {
            return Accepted.NO_NAME.with();
        }
        return words.size() <= MOST_LISTED
                ? Accepted.ONE_OF.with(texts("names", words))
                : Accepted.ONE_OF_MANY.with(texts("names", words.subList(0, LISTED)), arg("count", words.size()));
    }

    /** Whether a number is accepted, and no text. */
    boolean isNumber(JsonNode unresolved) {
        String type = type(contract.resolved(unresolved));
        return type.equals("number") || type.equals("integer");
    }

    private static String type(JsonNode schema) {
        JsonNode type = schema.path("type");
        return type.isArray() ? type.path(0).asText() : type.asText();
    }

    private static Message number(JsonNode schema, Accepted any, Accepted between, Accepted bounded) {
        if (schema.has("minimum") && schema.has("maximum")) {
            return between.with(arg("min", plain(schema.get("minimum"))), arg("max", plain(schema.get("maximum"))));
        }
        List<Message> bounds = new ArrayList<>();
        bound(schema, "minimum", Accepted.AT_LEAST, bounds);
        bound(schema, "exclusiveMinimum", Accepted.ABOVE, bounds);
        bound(schema, "maximum", Accepted.AT_MOST, bounds);
        bound(schema, "exclusiveMaximum", Accepted.BELOW, bounds);
        return bounds.isEmpty() ? any.with() : bounded.with(messages("bounds", bounds));
    }

    private static void bound(JsonNode schema, String name, Accepted words, List<Message> bounds) {
        if (schema.has(name)) {
            bounds.add(words.with(arg("limit", plain(schema.get(name)))));
        }
    }

    /** A number as a person writes it: 0.000001, not 1.0E-6. */
    static String plain(JsonNode number) {
        boolean written = number.isNumber() && Math.abs(number.doubleValue()) < 1e15;
        return written ? number.decimalValue().stripTrailingZeros().toPlainString() : number.asText();
    }

    private static Message text(JsonNode schema) {
        MessageCode form = FORMS.get(schema.path("pattern").asText());
        if (form != null) {
            return form.with();
        }
        if (schema.has("maxLength")) {
            return Accepted.CHARACTERS.with(
                    arg("min", schema.path("minLength").asInt(0)),
                    arg("max", schema.get("maxLength").asInt()));
        }
        return schema.has("minLength")
                ? Accepted.CHARACTERS_AT_LEAST.with(
                        arg("min", schema.get("minLength").asInt()))
                : Accepted.TEXT.with();
    }

    private static Message list(JsonNode schema) {
        int min = schema.path("minItems").asInt(0);
        if (!schema.has("maxItems")) {
            return min == 0 ? Accepted.LIST.with() : Accepted.ENTRIES_AT_LEAST.with(arg("min", min));
        }
        int max = schema.get("maxItems").asInt();
        if (min == max) {
            return Accepted.ENTRIES_EXACTLY.with(arg("count", max));
        }
        return min == 0
                ? Accepted.ENTRIES_AT_MOST.with(arg("max", max))
                : Accepted.ENTRIES.with(arg("min", min), arg("max", max));
    }
}
