package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.http.Method;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import loomwright.service.ContractExamples.Example;
import loomwright.service.input.Contract.Operation;
import loomwright.service.problem.Problem;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every operation with its examples spoilt at random, the same every time: whatever comes, the answer is in the contract
 * (the filter of {@link LiveService} sees to it), is no fault of ours, tells nothing of our inside, and the service lives.
 */
class FuzzTest {
    private static final int SEED = 20261125;
    /** For each operation; {@code -Dfuzz.tries=200} looks longer. */
    private static final int TRIES = Integer.getInteger("fuzz.tries", 24);

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private static final List<String> TEXTS = List.of(
            "",
            " ",
            "a",
            "null",
            "-",
            "=1+1",
            "../../etc/passwd",
            "%00",
            "\u0000",
            "\r\nX-Injected: 1",
            "<script>alert(1)</script>",
            "\uD83D\uDE97\u202E",
            "x".repeat(20_001),
            "((((((((((",
            "1||".repeat(500),
            "NaN",
            "1e400",
            "-1e-400",
            "9".repeat(400));

    private static final List<Double> NUMBERS =
            List.of(0.0, -0.0, 1e-300, -1e300, 1.7e308, 4.9e-324, -1.0, 0.5, 1e6, 2147483648.0, 9.007199254740992e15);

    @TestFactory
    Stream<DynamicTest> noSpoiltExampleIsAFaultOfOurs() {
        return LiveService.CONTRACT.operations().stream()
                .map(operation -> DynamicTest.dynamicTest(operation.id(), () -> spoil(operation)));
    }

    private static void spoil(Operation operation) {
        List<Example> examples = ContractExamples.all().stream()
                .filter(example -> example.operation().id().equals(operation.id()))
                .toList();
        Random random = new Random(SEED + operation.id().hashCode());
        for (int i = 0; i < TRIES; i++) {
            Example example = examples.get(random.nextInt(examples.size()));
            String url = random.nextInt(4) == 0 || example.body().isMissingNode()
                    ? spoiltUrl(example.url(), random)
                    : example.url();
            RequestSpecification request = example.request();
            if (!example.body().isMissingNode()) {
                request = LiveService.ask().contentType("application/json").body(spoiltBody(example.body(), random));
            }
            Response response = request.request(Method.valueOf(operation.method()), url);
            assertThat(response.statusCode()).as("%s %s", operation.id(), url).isNotEqualTo(500);
            if (response.statusCode() >= 400) {
                assertThat(response.contentType()).isEqualTo(Problem.MEDIA_TYPE);
                assertThat(response.asString()).doesNotContain("Exception", "\tat ", "loomwright.service", "java.");
            }
        }
        LiveService.ask().get("/health").then().statusCode(200);
    }

    /** One to three changes of values; now and then of the text itself. */
    private static byte[] spoiltBody(JsonNode body, Random random) {
        JsonNode root = body.deepCopy();
        for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
            List<JsonNode> containers = JsonContainers.in(root);
            JsonNode container = containers.get(random.nextInt(containers.size()));
            if (container instanceof ObjectNode object && !object.isEmpty()) {
                change(object, random);
            } else if (container instanceof ArrayNode list && !list.isEmpty()) {
                change(list, random);
            }
        }
        byte[] text = root.toString().getBytes(StandardCharsets.UTF_8);
        if (random.nextInt(6) == 0) {
            text[random.nextInt(text.length)] = (byte) random.nextInt(256);
        }
        return text;
    }

    private static void change(ObjectNode object, Random random) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        String name = names.get(random.nextInt(names.size()));
        switch (random.nextInt(5)) {
            case 0 -> object.remove(name);
            case 1 -> object.set(TEXTS.get(random.nextInt(TEXTS.size())), object.get(name));
            case 2 -> object.set(name, object.get(names.get(random.nextInt(names.size()))));
            default -> object.set(name, value(random));
        }
    }

    private static void change(ArrayNode list, Random random) {
        int at = random.nextInt(list.size());
        switch (random.nextInt(4)) {
            case 0 -> list.remove(at);
            case 1 -> list.insert(at, list.get(at).deepCopy());
            case 2 -> list.set(at, list.get(random.nextInt(list.size())).deepCopy());
            default -> list.set(at, value(random));
        }
    }

    private static JsonNode value(Random random) {
        return switch (random.nextInt(8)) {
            case 0 -> NODES.nullNode();
            case 1 -> NODES.booleanNode(random.nextBoolean());
            case 2 -> NODES.arrayNode().add(1).add("a");
            case 3 -> NODES.objectNode().put("a", 1);
            case 4, 5 -> NODES.textNode(TEXTS.get(random.nextInt(TEXTS.size())));
            default -> NODES.numberNode(NUMBERS.get(random.nextInt(NUMBERS.size())));
        };
    }

    /** A parameter dropped, doubled, or with another value; a word of the path replaced. */
    private static String spoiltUrl(String url, Random random) {
        int mark = url.indexOf('?');
        if (mark < 0) {
            int last = url.lastIndexOf('/') + 1;
            return random.nextBoolean() || url.equals("/")
                    ? url + "?a=" + encoded(random)
                    : url.substring(0, last) + "x" + encoded(random);
        }
        List<String> pairs = new ArrayList<>(List.of(url.substring(mark + 1).split("&", -1)));
        int at = random.nextInt(pairs.size());
        String name = pairs.get(at).replaceFirst("=.*", "");
        switch (random.nextInt(4)) {
            case 0 -> pairs.remove(at);
            case 1 -> pairs.add(pairs.get(at));
            default -> pairs.set(at, name + "=" + encoded(random));
        }
        return url.substring(0, pairs.isEmpty() ? mark : mark + 1) + String.join("&", pairs);
    }

    private static String encoded(Random random) {
        String text = random.nextInt(3) == 0
                ? String.valueOf(NUMBERS.get(random.nextInt(NUMBERS.size())))
                : TEXTS.get(random.nextInt(TEXTS.size()));
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
