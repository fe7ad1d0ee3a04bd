package loomwright.service.input;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/** What a schema of the contract accepts, as words for the person whose input it does not. */
final class AcceptedInput {
    /** Forms that a person is better told in words, by the pattern that states them in the contract. */
    private static final Map<String, String> FORMS = Map.of(
            "^" + TerminalRef.FORM + "$", TerminalRef.ACCEPTED, "^" + Wire.COLOUR_FORM + "$", Wire.COLOUR_ACCEPTED);

    private final Contract contract;

    AcceptedInput(Contract contract) {
        this.contract = contract;
    }

    String by(JsonNode unresolved) {
        JsonNode schema = contract.resolved(unresolved);
        if (schema.has("enum")) {
            return "one of: " + listed(schema.get("enum"));
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

    /** The property names an object may have. */
    String namesOf(JsonNode unresolved) {
        JsonNode schema = contract.resolved(unresolved);
        StringJoiner names = new StringJoiner(", ", "one of: ", "").setEmptyValue("no property at all");
        schema.path("properties").fieldNames().forEachRemaining(names::add);
        return names.toString();
    }

    /** The tags of a tagged choice. */
    String kindsOf(JsonNode unresolved) {
        StringJoiner kinds = new StringJoiner(", ", "one of: ", "");
        contract.resolved(unresolved).at("/discriminator/mapping").fieldNames().forEachRemaining(kinds::add);
        return kinds.toString();
    }

    private static String type(JsonNode schema) {
        JsonNode type = schema.path("type");
        return type.isArray() ? type.path(0).asText() : type.asText();
    }

    private static String range(JsonNode schema) {
        if (schema.has("minimum") && schema.has("maximum")) {
            return " from " + schema.get("minimum").asText() + " to "
                    + schema.get("maximum").asText();
        }
        List<String> bounds = new ArrayList<>();
        if (schema.has("minimum")) {
            bounds.add("of at least " + schema.get("minimum").asText());
        }
        if (schema.has("exclusiveMinimum")) {
            bounds.add("above " + schema.get("exclusiveMinimum").asText());
        }
        if (schema.has("maximum")) {
            bounds.add("of at most " + schema.get("maximum").asText());
        }
        if (schema.has("exclusiveMaximum")) {
            bounds.add("below " + schema.get("exclusiveMaximum").asText());
        }
        return bounds.isEmpty() ? "" : " " + String.join(" and ", bounds);
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

    private static String listed(JsonNode values) {
        StringJoiner joined = new StringJoiner(", ");
        values.forEach(value -> joined.add(value.asText()));
        return joined.toString();
    }
}
