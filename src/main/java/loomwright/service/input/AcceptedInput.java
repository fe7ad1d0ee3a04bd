package loomwright.service.input;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/** What a schema of the contract accepts, as words for the person whose input it does not. */
final class AcceptedInput {
    /** Forms that a person is better told in words, by the pattern that states them in the contract. */
    private static final Map<String, String> FORMS = Map.of(
            "^" + TerminalRef.FORM + "$", TerminalRef.ACCEPTED, "^" + Wire.COLOUR_FORM + "$", Wire.COLOUR_ACCEPTED);

    private static final int MOST_LISTED = 12;
    /** Of a longer list. */
    private static final int LISTED = 8;

    private final Contract contract;

    AcceptedInput(Contract contract) {
        this.contract = contract;
    }

    String by(JsonNode unresolved) {
        JsonNode schema = contract.resolved(unresolved);
        if (schema.has("enum")) {
            return oneOf(wordsOf(schema));
        }
        if (schema.has("discriminator")) {
            return "an object with " + schema.at("/discriminator/propertyName").asText() + " " + kindsOf(schema);
        }
        return switch (type(schema)) {
            case "number" -> "a number" + range(schema);
            case "integer" -> "a whole number" + range(schema);
            case "string" -> text(schema);
            case "array" -> "a list" + size(schema, "minItems", "maxItems", "items");
            case "object" -> "an object";
            case "boolean" -> "true or false";
            default -> "a value as the contract describes it";
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

    /** The property names an object may have, in words. */
    String namesOf(JsonNode unresolved) {
        List<String> names = propertiesOf(unresolved);
        return names.isEmpty() ? "no property at all" : oneOf(names);
    }

    /** The tags of a tagged choice. */
    String kindsOf(JsonNode unresolved) {
        List<String> kinds = new ArrayList<>();
        contract.resolved(unresolved).at("/discriminator/mapping").fieldNames().forEachRemaining(kinds::add);
        return oneOf(kinds);
    }

    /** Words of a closed set. Nobody reads a long list in a sentence, so it is cut and says where the whole one stands. */
    static String oneOf(List<String> words) {
        return words.size() <= MOST_LISTED
                ? "one of " + String.join(", ", words)
                : "one of " + String.join(", ", words.subList(0, LISTED)) + " … (all " + words.size()
                        + " stand in GET /docs)";
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

    private static String range(JsonNode schema) {
        if (schema.has("minimum") && schema.has("maximum")) {
            return " from " + plain(schema.get("minimum")) + " to " + plain(schema.get("maximum"));
        }
        List<String> bounds = new ArrayList<>();
        if (schema.has("minimum")) {
            bounds.add("of at least " + plain(schema.get("minimum")));
        }
        if (schema.has("exclusiveMinimum")) {
            bounds.add("above " + plain(schema.get("exclusiveMinimum")));
        }
        if (schema.has("maximum")) {
            bounds.add("of at most " + plain(schema.get("maximum")));
        }
        if (schema.has("exclusiveMaximum")) {
            bounds.add("below " + plain(schema.get("exclusiveMaximum")));
        }
        return bounds.isEmpty() ? "" : " " + String.join(" and ", bounds);
    }

    /** A number as a person writes it: 0.000001, not 1.0E-6. */
    static String plain(JsonNode number) {
        boolean written = number.isNumber() && Math.abs(number.doubleValue()) < 1e15;
        return written ? number.decimalValue().stripTrailingZeros().toPlainString() : number.asText();
    }

    private static String size(JsonNode schema, String min, String max, String of) {
        if (schema.has(min) && schema.path(min).equals(schema.path(max))) {
            return " of exactly " + schema.get(min).asText() + " " + of;
        }
        if (schema.has(min) && schema.has(max)) {
            return " of " + schema.get(min).asText() + " to " + schema.get(max).asText() + " " + of;
        }
        if (schema.has(max)) {
            return " of at most " + schema.get(max).asText() + " " + of;
        }
        return schema.has(min) ? " of at least " + schema.get(min).asText() + " " + of : "";
    }

    private static String text(JsonNode schema) {
        String inWords = FORMS.get(schema.path("pattern").asText());
        return inWords == null
                ? "a text" + size(schema, "minLength", "maxLength", "characters") + pattern(schema)
                : inWords;
    }

    private static String pattern(JsonNode schema) {
        return schema.has("pattern") ? " that matches " + schema.get("pattern").asText() : "";
    }
}
