package loomwright.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.restassured.http.Method;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import loomwright.contract.ContractBundle;
import loomwright.service.input.Contract;
import loomwright.service.input.Contract.Operation;

/**
 * The examples of the contract as requests. A request example, or the examples of several parameters, and the response
 * example of the same name belong together.
 */
public final class ContractExamples {
    private static final List<String> TEXT_BODIES = List.of("application/x-ndjson", "text/csv");
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final JsonNode ANSWERS = answers();
    private static final Map<String, JsonNode> INPUTS = new ConcurrentHashMap<>();

    private ContractExamples() {}

    /**
     * One example.
     *
     * @param name its name; {@code plain} for an operation that takes nothing
     */
    public record Example(Operation operation, String name) {
        JsonNode node() {
            return LiveService.CONTRACT.document().at(pointer());
        }

        private String pointer() {
            return "/paths/" + Contract.escaped(operation.path()) + "/"
                    + operation.method().toLowerCase(Locale.ROOT);
        }

        /** Its 200 response. */
        JsonNode answer() {
            return LiveService.CONTRACT.resolved(node().at("/responses/200"));
        }

        /** The body if it is JSON. */
        JsonNode body() {
            return body("application/json");
        }

        private JsonNode body(String mediaType) {
            return valueOf(bodyOf(node())
                    .at("/content/" + Contract.escaped(mediaType) + "/examples/" + Contract.escaped(name)));
        }

        /** Path and query with the parameters' values of this example. */
        String url() {
            String path = operation.path();
            StringBuilder query = new StringBuilder();
            for (JsonNode unresolved : node().path("parameters")) {
                JsonNode parameter = LiveService.CONTRACT.resolved(unresolved);
                JsonNode value = parameter.path("examples").path(name).path("value");
                String parameterName = parameter.path("name").asText();
                if (value.isMissingNode()) {
                    continue;
                }
                if (parameter.path("in").asText().equals("path")) {
                    path = path.replace("{" + parameterName + "}", encoded(value));
                    continue;
                }
                query.append(query.isEmpty() ? "?" : "&")
                        .append(parameterName)
                        .append('=')
                        .append(encoded(value));
            }
            return path + query;
        }

        /** A list is written with commas. */
        private static String encoded(JsonNode value) {
            StringJoiner text = new StringJoiner(",");
            for (JsonNode one : value.isArray() ? value : List.of(value)) {
                text.add(one.asText());
            }
            return URLEncoder.encode(text.toString(), StandardCharsets.UTF_8);
        }

        /** Responses of this name: status to media type to value. */
        public Map<Integer, Map<String, JsonNode>> responses() {
            Map<Integer, Map<String, JsonNode>> found = new TreeMap<>();
            node().path("responses")
                    .forEachEntry((status, unresolved) -> LiveService.CONTRACT
                            .resolved(unresolved)
                            .path("content")
                            .forEachEntry((mediaType, content) -> {
                                JsonNode value =
                                        valueOf(content.path("examples").path(name));
                                if (!value.isMissingNode()) {
                                    found.computeIfAbsent(Integer.valueOf(status), key -> new TreeMap<>())
                                            .put(mediaType, value);
                                }
                            }));
            return found;
        }

        /** The responses shown under this name that the service gives by their address. */
        public List<Shown> shown() {
            List<Shown> found = new ArrayList<>();
            node().path("responses").forEachEntry((status, response) -> {
                String at = response.has("$ref")
                        ? response.get("$ref").asText().substring(1)
                        : pointer() + "/responses/" + status;
                LiveService.CONTRACT.document().at(at + "/content").forEachEntry((mediaType, content) -> {
                    String address = content.path("examples")
                            .path(name)
                            .path("externalValue")
                            .asText();
                    if (address.startsWith(ContractBundle.SERVED_ANSWERS)) {
                        String schema = at + "/content/" + Contract.escaped(mediaType) + "/schema";
                        String answer = address.substring(ContractBundle.SERVED_ANSWERS.length());
                        found.add(new Shown(this, Integer.parseInt(status), mediaType, schema, answer));
                    }
                });
            });
            return found;
        }

        public RequestSpecification request() {
            RequestSpecification request = LiveService.ask();
            for (String mediaType : TEXT_BODIES) {
                if (!body(mediaType).isMissingNode()) {
                    return request.contentType(mediaType + "; charset=utf-8")
                            .body(body(mediaType).asText().getBytes(StandardCharsets.UTF_8));
                }
            }
            return body().isMissingNode()
                    ? request
                    : request.contentType("application/json").body(body().toString());
        }

        public Response send(RequestSpecification request) {
            return request.request(Method.valueOf(operation.method()), url());
        }

        @Override
        public String toString() {
            return operation.id() + ": " + name;
        }
    }

    /**
     * A response that the contract shows.
     *
     * @param schema where its schema stands
     * @param answer its name among the answers, such as {@code fuse-heater-fan}
     */
    public record Shown(Example example, int status, String mediaType, String schema, String answer) {
        /** What is shown; missing if it was not written yet. */
        public JsonNode value() {
            return ANSWERS.path(answer).path("value");
        }
    }

    /** The value of an example, wherever it stands: in place, elsewhere in the contract, or as an input of the service. */
    private static JsonNode valueOf(JsonNode example) {
        JsonNode resolved = LiveService.CONTRACT.resolved(example);
        JsonNode address = resolved.path("externalValue");
        if (address.isMissingNode()) {
            return resolved.path("value");
        }
        return address.asText().startsWith(ContractBundle.SERVED_ANSWERS)
                ? ANSWERS.path(address.asText().substring(ContractBundle.SERVED_ANSWERS.length()))
                        .path("value")
                : INPUTS.computeIfAbsent(address.asText(), ContractExamples::input);
    }

    private static JsonNode bodyOf(JsonNode operation) {
        return LiveService.CONTRACT.resolved(operation.path("requestBody"));
    }

    private static JsonNode answers() {
        try {
            return new YAMLMapper().readTree(ContractBundle.ANSWERS.toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static JsonNode input(String address) {
        try {
            return MAPPER.readTree(LiveService.ask()
                    .get(address)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static List<Example> all() {
        List<Example> examples = new ArrayList<>();
        for (Operation operation : LiveService.CONTRACT.operations()) {
            JsonNode node = new Example(operation, "").node();
            Set<String> names = new LinkedHashSet<>();
            bodyOf(node).at("/content/application~1json/examples").fieldNames().forEachRemaining(names::add);
            node.path("parameters")
                    .forEach(parameter -> LiveService.CONTRACT
                            .resolved(parameter)
                            .path("examples")
                            .fieldNames()
                            .forEachRemaining(names::add));
            if (names.isEmpty()) {
                new Example(operation, "")
                        .answer()
                        .at("/content/application~1json/examples")
                        .fieldNames()
                        .forEachRemaining(names::add);
            }
            if (names.isEmpty()) {
                names.add("plain");
            }
            names.forEach(name -> examples.add(new Example(operation, name)));
        }
        return examples;
    }

    /** The first example of each operation that is answered with 200. */
    static Example good(Operation operation) {
        return all().stream()
                .filter(example -> example.operation().id().equals(operation.id())
                        && (example.responses().isEmpty() || example.responses().containsKey(200)))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no good example for " + operation.id()));
    }
}
