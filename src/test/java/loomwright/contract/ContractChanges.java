package loomwright.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What a newer contract breaks for a client of an older one, by the rules of {@code docs/compatibility.md}: a request that
 * was accepted must stay so and mean the same, an answer that could be read must stay readable.
 *
 * <p>The library for this, openapi-diff 2.1.7, reports nothing where a type changes in OpenAPI 3.1 (its issues 745 and 910).
 */
final class ContractChanges {
    /** Bounds of what is accepted, and whether a larger value accepts more. */
    private static final Map<String, Boolean> BOUNDS = Map.of(
            "minimum", false,
            "exclusiveMinimum", false,
            "minLength", false,
            "minItems", false,
            "minProperties", false,
            "maximum", true,
            "exclusiveMaximum", true,
            "maxLength", true,
            "maxItems", true,
            "maxProperties", true);

    private enum Direction {
        /** What clients send. */
        INPUT,
        /** What clients read. */
        ANSWER
    }

    private final JsonNode before;
    private final JsonNode after;
    private final List<String> broken = new ArrayList<>();
    private final Set<String> seen = new HashSet<>();

    private ContractChanges(JsonNode before, JsonNode after) {
        this.before = before;
        this.after = after;
    }

    /** What is broken, each with its place; empty if the newer contract only grew. */
    static List<String> broken(JsonNode before, JsonNode after) {
        ContractChanges changes = new ContractChanges(before, after);
        before.path("paths")
                .forEachEntry((path, item) -> item.forEachEntry((method, operation) -> changes.operation(
                        method + " " + path,
                        operation,
                        after.path("paths").path(path).path(method))));
        return List.copyOf(changes.broken);
    }

    private void operation(String place, JsonNode was, JsonNode is) {
        if (is.isMissingNode()) {
            broken.add(place + " is gone");
            return;
        }
        if (!was.path("operationId").equals(is.path("operationId"))) {
            broken.add(place + " has another operationId");
        }
        parameters(place, was, is);
        JsonNode body = resolved(before, was.path("requestBody"));
        JsonNode newBody = resolved(after, is.path("requestBody"));
        if (newBody.path("required").asBoolean() && !body.path("required").asBoolean()) {
            broken.add(place + " asks for a body");
        }
        content(place + " body", body, newBody, Direction.INPUT);
        was.path("responses").forEachEntry((status, response) -> {
            JsonNode now = is.path("responses").path(status);
            if (status.startsWith("2")) {
                if (now.isMissingNode()) {
                    broken.add(place + " " + status + " is gone");
                }
                content(place + " " + status, resolved(before, response), resolved(after, now), Direction.ANSWER);
            }
        });
    }

    private void parameters(String place, JsonNode was, JsonNode is) {
        for (JsonNode one : was.path("parameters")) {
            JsonNode parameter = resolved(before, one);
            String name = parameter.path("name").asText();
            JsonNode now = parameter(is, parameter);
            if (now == null) {
                broken.add(place + " parameter " + name + " is gone");
                continue;
            }
            if (now.path("required").asBoolean() && !parameter.path("required").asBoolean()) {
                broken.add(place + " parameter " + name + " is required now");
            }
            schema(place + " parameter " + name, parameter.path("schema"), now.path("schema"), Direction.INPUT);
        }
        for (JsonNode one : is.path("parameters")) {
            JsonNode parameter = resolved(after, one);
            boolean known = false;
            for (JsonNode old : was.path("parameters")) {
                known |= isSame(resolved(before, old), parameter);
            }
            if (!known && parameter.path("required").asBoolean()) {
                broken.add(place + " parameter " + parameter.path("name").asText() + " is new and required");
            }
        }
    }

    private @Nullable JsonNode parameter(JsonNode operation, JsonNode like) {
        for (JsonNode one : operation.path("parameters")) {
            JsonNode parameter = resolved(after, one);
            if (isSame(parameter, like)) {
                return parameter;
            }
        }
        return null;
    }

    private static boolean isSame(JsonNode one, JsonNode other) {
        return one.path("name").equals(other.path("name")) && one.path("in").equals(other.path("in"));
    }

    private void content(String place, JsonNode was, JsonNode is, Direction direction) {
        was.path("content").forEachEntry((mediaType, content) -> {
            JsonNode now = is.path("content").path(mediaType);
            if (now.isMissingNode()) {
                broken.add(place + " " + mediaType + " is gone");
                return;
            }
            schema(place + " " + mediaType, content.path("schema"), now.path("schema"), direction);
        });
    }

    private void schema(String place, JsonNode writtenBefore, JsonNode writtenNow, Direction direction) {
        if (writtenBefore.has("$ref")
                && writtenNow.has("$ref")
                && !seen.add(direction + " " + writtenBefore.get("$ref") + " " + writtenNow.get("$ref"))) {
            return;
        }
        JsonNode was = resolved(before, writtenBefore);
        JsonNode is = resolved(after, writtenNow);
        String named =
                writtenBefore.has("$ref") ? writtenBefore.get("$ref").asText().replaceFirst(".*/", "") : place;
        if (!was.path("type").equals(is.path("type")) || !was.path("format").equals(is.path("format"))) {
            broken.add(named + " has another type");
            return;
        }
        words(named, was, is, direction);
        if (direction == Direction.INPUT) {
            accepted(named, was, is);
        }
        properties(named, was, is, direction);
        for (String part : List.of("items", "contentSchema")) {
            if (was.has(part)) {
                schema(named + " " + part, was.get(part), is.path(part), direction);
            }
        }
        JsonNode kinds = was.at("/discriminator/mapping");
        JsonNode kindsNow = is.at("/discriminator/mapping");
        kinds.forEachEntry((kind, target) -> {
            if (!kindsNow.has(kind)) {
                broken.add(named + " knows no " + kind);
            } else {
                schema(named + " " + kind, reference(target), reference(kindsNow.get(kind)), direction);
            }
        });
    }

    /** A word taken away is no longer accepted; a word added to a closed list surprises who reads it. */
    private void words(String place, JsonNode was, JsonNode is, Direction direction) {
        Set<String> old = texts(was.path("enum"));
        Set<String> now = texts(is.path("enum"));
        if (direction == Direction.INPUT && is.has("enum") && !(was.has("enum") && now.containsAll(old))) {
            broken.add(place + " accepts fewer words");
        }
        if (direction == Direction.ANSWER && was.has("enum") && !(is.has("enum") && old.containsAll(now))) {
            broken.add(place + " is a closed list with a new word");
        }
    }

    private void accepted(String place, JsonNode was, JsonNode is) {
        BOUNDS.forEach((bound, isUpper) -> {
            JsonNode now = is.path(bound);
            if (now.isMissingNode()) {
                return;
            }
            JsonNode old = was.path(bound);
            boolean isNarrower = old.isMissingNode()
                    || (isUpper ? now.asDouble() < old.asDouble() : now.asDouble() > old.asDouble());
            if (isNarrower) {
                broken.add(place + " has a narrower " + bound);
            }
        });
        if (is.has("pattern") && !is.path("pattern").equals(was.path("pattern"))) {
            broken.add(place + " has another pattern");
        }
        if (!was.path("default").equals(is.path("default"))) {
            broken.add(place + " has another default");
        }
    }

    private void properties(String place, JsonNode was, JsonNode is, Direction direction) {
        was.path("properties").forEachEntry((name, schema) -> {
            JsonNode now = is.path("properties").path(name);
            if (now.isMissingNode()) {
                broken.add(place + "." + name + " is gone");
            } else {
                schema(place + "." + name, schema, now, direction);
            }
        });
        if (was.path("additionalProperties").isObject()
                && is.path("additionalProperties").isObject()) {
            schema(place + ".*", was.get("additionalProperties"), is.get("additionalProperties"), direction);
        }
        Set<String> required = texts(was.path("required"));
        Set<String> requiredNow = texts(is.path("required"));
        if (direction == Direction.INPUT) {
            requiredNow.removeAll(required);
            requiredNow.forEach(name -> broken.add(place + "." + name + " is required now"));
        } else {
            required.removeAll(requiredNow);
            required.stream()
                    .filter(name -> is.path("properties").has(name))
                    .forEach(name -> broken.add(place + "." + name + " may be left out now"));
        }
    }

    private static Set<String> texts(JsonNode list) {
        Set<String> texts = new TreeSet<>();
        list.forEach(one -> texts.add(one.asText()));
        return texts;
    }

    private static JsonNode reference(JsonNode target) {
        return JsonNodeFactory.instance.objectNode().set("$ref", target);
    }

    private static JsonNode resolved(JsonNode contract, JsonNode node) {
        JsonNode at = node;
        while (at.has("$ref")) {
            at = contract.at(at.get("$ref").asText().substring(1));
            if (at.isMissingNode()) {
                return MissingNode.getInstance();
            }
        }
        return at;
    }
}
