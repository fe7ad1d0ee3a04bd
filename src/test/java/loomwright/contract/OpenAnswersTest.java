package loomwright.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Schemas that only answers use are open ({@code docs/compatibility.md}): objects with {@code additionalProperties: true},
 * lists of words as {@code x-extensible-enum}. What is asked with is closed.
 */
class OpenAnswersTest {
    private static final String SCHEMAS = "#/components/schemas/";

    private final JsonNode contract;

    OpenAnswersTest() throws IOException {
        contract = new YAMLMapper().readTree(Files.readString(ContractBundle.BUNDLE));
    }

    @Test
    void whatOnlyAnswersUseIsOpen() {
        Set<String> asked = new TreeSet<>();
        Set<String> answered = new TreeSet<>();
        contract.path("paths")
                .forEach(item -> item.forEach(operation -> {
                    collect(operation.path("parameters"), asked);
                    collect(operation.path("requestBody"), asked);
                    collect(operation.path("responses"), answered);
                }));
        assertThat(answered).contains("Finding", "Severity").doesNotContain("FuseQuestion");
        answered.removeAll(asked);
        List<String> closed = new ArrayList<>();
        for (String name : answered) {
            closedIn(contract.at("/components/schemas/" + name), name, closed);
        }
        assertThat(closed)
                .as("write x-extensible-enum instead of enum, additionalProperties: true instead of false")
                .isEmpty();
    }

    @Test
    void whatIsAskedWithIsClosed() {
        Set<String> asked = new TreeSet<>();
        contract.path("paths")
                .forEach(item -> item.forEach(operation -> {
                    collect(operation.path("parameters"), asked);
                    collect(operation.path("requestBody"), asked);
                }));
        for (String name : asked) {
            JsonNode schema = contract.at("/components/schemas/" + name);
            assertThat(schema.has("x-extensible-enum")).as(name).isFalse();
            if (schema.has("properties")) {
                assertThat(schema.path("additionalProperties").asBoolean(true))
                        .as(name)
                        .isFalse();
            }
        }
    }

    private void collect(JsonNode node, Set<String> names) {
        String reference = node.path("$ref").asText();
        if (!reference.isEmpty()) {
            boolean isNew = !reference.startsWith(SCHEMAS)
                    || names.add(reference.substring(SCHEMAS.length()).replaceFirst("/.*", ""));
            if (isNew) {
                collect(contract.at(reference.substring(1)), names);
            }
        }
        for (JsonNode target : node.at("/discriminator/mapping")) {
            if (names.add(target.asText().substring(SCHEMAS.length()))) {
                collect(contract.at(target.asText().substring(1)), names);
            }
        }
        node.forEachEntry((name, value) -> {
            if (!name.equals("examples")) {
                collect(value, names);
            }
        });
        if (node.isArray()) {
            node.forEach(value -> collect(value, names));
        }
    }

    private static void closedIn(JsonNode node, String place, List<String> closed) {
        if (node.path("enum").size() > 1 && node.path("type").asText().equals("string")) {
            closed.add(place + ": enum");
        }
        if (node.path("type").asText().equals("object")
                && node.has("properties")
                && !node.path("additionalProperties").asBoolean()) {
            closed.add(place + ": additionalProperties");
        }
        node.forEachEntry((name, value) -> closedIn(value, place + "." + name, closed));
        if (node.isArray()) {
            node.forEach(value -> closedIn(value, place, closed));
        }
    }
}
