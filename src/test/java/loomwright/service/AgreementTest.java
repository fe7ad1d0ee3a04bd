package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import loomwright.service.ContractExamples.Example;
import loomwright.service.input.Contract;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * The records and the contract give the same verdict: a body that the contract rejects is answered 400, any other is
 * not. Bodies are made by changing the examples of the contract in one or two places, so a new operation is covered by
 * its example.
 */
class AgreementTest {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final JsonMapper MAPPER = new JsonMapper();

    /** A change made of an example. */
    record Changed(Example example, JsonNode body) {
        @Override
        public String toString() {
            return example + " " + body;
        }
    }

    @Property(seed = "20261125", tries = 800)
    void theRecordsRejectWhatTheContractRejects(@ForAll("changedBodies") Changed changed) {
        Contract.Schema schema =
                Objects.requireNonNull(changed.example().operation().body());
        boolean accepted = schema.validate(changed.body()).isEmpty();
        Response response = LiveService.ask()
                .contentType("application/json")
                .body(changed.body().toString())
                .post(changed.example().operation().path());
        if (accepted) {
            assertThat(response.statusCode()).as(response.asString()).isIn(200, 422);
        } else {
            assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        }
    }

    @Provide
    static Arbitrary<Changed> changedBodies() {
        List<Example> examples = ContractExamples.all().stream()
                .filter(example -> !example.body().isMissingNode())
                .toList();
        return Arbitraries.of(examples)
                .flatMap(example -> Arbitraries.longs()
                        .map(seed -> new Changed(example, changed(example.body(), new Random(seed)))));
    }

    private static JsonNode changed(JsonNode body, Random random) {
        JsonNode root = body.deepCopy();
        int changes = 1 + random.nextInt(2);
        for (int i = 0; i < changes; i++) {
            List<JsonNode> containers = JsonContainers.in(root);
            JsonNode container = containers.get(random.nextInt(containers.size()));
            if (container instanceof ObjectNode object) {
                change(object, random);
            } else {
                change((ArrayNode) container, random);
            }
        }
        return root;
    }

    private static void change(ObjectNode object, Random random) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        if (names.isEmpty() || random.nextInt(10) == 0) {
            object.set("noSuch", value(random, NODES.numberNode(1)));
            return;
        }
        String name = names.get(random.nextInt(names.size()));
        switch (random.nextInt(6)) {
            case 0 -> object.remove(name);
            case 1 -> object.set(name + "x", object.remove(name));
            default -> object.set(name, value(random, object.path(name)));
        }
    }

    private static void change(ArrayNode list, Random random) {
        if (list.isEmpty() || random.nextInt(5) == 0) {
            list.add(value(random, NODES.objectNode()));
            return;
        }
        int at = random.nextInt(list.size());
        switch (random.nextInt(4)) {
            case 0 -> list.remove(at);
            case 1 -> list.add(list.get(at).deepCopy());
            default -> list.set(at, value(random, list.get(at)));
        }
    }

    /** Values of the wrong type, at and beyond the edges, and a few that are right. */
    private static JsonNode value(Random random, JsonNode before) {
        double number = before.isNumber() ? before.asDouble() : 1;
        List<JsonNode> values = Stream.of(
                        "null",
                        "true",
                        "false",
                        "0",
                        "1",
                        "-1",
                        "1.0",
                        "1.5",
                        "-0.0",
                        "1e-300",
                        "1e300",
                        "-1e300",
                        "1000001",
                        "1e12",
                        "1.1e12",
                        "2147483648",
                        "1e-12",
                        "\"\"",
                        "\"a\"",
                        "\"1\"",
                        "\"true\"",
                        "\"resistor\"",
                        "\"Resistor\"",
                        "\"lamp\"",
                        "\"switch\"",
                        "[]",
                        "{}",
                        "[1]",
                        "[\"a\",\"b\"]",
                        "[null]",
                        "\"" + "x".repeat(100) + "\"",
                        "\"" + "x".repeat(101) + "\"",
                        "\"" + "\uD83D\uDE97".repeat(60) + "\"",
                        number * 2 + "",
                        number * -1 + "",
                        number * 1e6 + "")
                .map(AgreementTest::parsed)
                .toList();
        return values.get(random.nextInt(values.size()));
    }

    private static JsonNode parsed(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
