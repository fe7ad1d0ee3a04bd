package loomwright.service.input;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.JsonMetaSchema;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.PathType;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.ValidationMessage;
import com.networknt.schema.oas.OpenApi31;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** {@code openapi.yaml}: what each operation takes. The file that is served is the file that judges. */
public final class Contract {
    private static final String FILE = "openapi.yaml";
    /** The same, as a distribution has it: see {@link ContractAsJson}. */
    private static final String AS_JSON = "openapi.json";

    private final byte[] text;
    private final JsonNode document;
    private final Map<String, Operation> operations = new LinkedHashMap<>();
    private final Map<String, JsonSchema> readySchemas = new ConcurrentHashMap<>();
    private @Nullable JsonSchema whole;

    /**
     * One operation.
     *
     * @param parameters those of the query and of the path
     * @param body schema of the JSON body, if the operation takes one
     * @param bodyForm the same as written, {@code $ref} followed; missing if the operation takes none
     * @param plans the properties of the body that are plans; one empty text if all of it is a plan
     * @param bodyTypes the media types of the bodies that it takes
     * @param formats the words of {@code format=} whose form it answers in
     * @param isOpen whether it is for everybody even where the operator asks for keys
     */
    public record Operation(
            String id,
            String method,
            String path,
            List<Parameter> parameters,
            @Nullable Schema body,
            JsonNode bodyForm,
            List<String> plans,
            List<String> bodyTypes,
            List<String> formats,
            boolean isOpen) {
        @Nullable
        public Parameter query(String name) {
            return find("query", name);
        }

        @Nullable
        public Parameter path(String name) {
            return find("path", name);
        }

        private @Nullable Parameter find(String in, String name) {
            for (Parameter parameter : parameters) {
                if (parameter.in().equals(in) && parameter.name().equals(name)) {
                    return parameter;
                }
            }
            return null;
        }
    }

    /**
     * One parameter.
     *
     * @param in {@code query} or {@code path}
     * @param form its schema as written
     * @param schema its schema to judge a value by
     */
    public record Parameter(String name, String in, boolean required, JsonNode form, Schema schema) {
        boolean is(String type) {
            JsonNode types = form.path("type");
            if (types.isTextual()) {
                return types.asText().equals(type);
            }
            for (JsonNode one : types) {
                if (one.asText().equals(type)) {
                    return true;
                }
            }
            return false;
        }
    }

    /**
     * One schema. It is made ready when it first judges: most requests never need theirs, and making all of them ready
     * would take half of a start.
     */
    public final class Schema {
        private final String pointer;
        private final String fragment;

        private Schema(String pointer) {
            this.pointer = pointer;
            this.fragment = pointer.replace("{", "%7B").replace("}", "%7D");
        }

        /** As it is written, a reference followed. */
        JsonNode form() {
            return resolved(document.at(pointer.replaceFirst("^#", "")));
        }

        public Set<ValidationMessage> validate(JsonNode value) {
            JsonSchema ready = readySchemas.get(fragment);
            return (ready == null ? ready(fragment) : ready).validate(value);
        }
    }

    private Contract(byte[] text, JsonNode document) {
        this.text = text;
        this.document = document;
        document.path("paths")
                .forEachEntry((path, item) -> item.forEachEntry((method, operation) -> add(path, method, operation)));
    }

    public static Contract load() {
        try {
            byte[] text = resource(FILE);
            if (text == null) {
                throw new IllegalStateException(FILE + " is not on the class path");
            }
            byte[] json = resource(AS_JSON);
            return new Contract(text, json == null ? new YAMLMapper().readTree(text) : new JsonMapper().readTree(json));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A contract from data, whose text is JSON. */
    public static Contract of(JsonNode document) {
        return new Contract(document.toString().getBytes(StandardCharsets.UTF_8), document);
    }

    private static byte @Nullable [] resource(String name) throws IOException {
        try (InputStream in = Contract.class.getClassLoader().getResourceAsStream(name)) {
            return in == null ? null : in.readAllBytes();
        }
    }

    private void add(String path, String method, JsonNode operation) {
        String here = "/paths/" + escaped(path) + "/" + method;
        List<Parameter> parameters = new ArrayList<>();
        for (int i = 0; i < operation.path("parameters").size(); i++) {
            parameters.add(parameter(here + "/parameters/" + i));
        }
        // A list in the address is held to the form of the body that the same path takes.
        boolean listed =
                parameters.stream().anyMatch(parameter -> parameter.name().equals(ListInput.LIST));
        String asked = listed ? "/paths/" + escaped(path) + "/post" : here;
        JsonNode taken = document.at(asked + "/requestBody");
        String bodies = taken.has("$ref") ? taken.get("$ref").asText().substring(1) : asked + "/requestBody";
        String body = bodies + "/content/application~1json/schema";
        Schema schema = document.at(body).isMissingNode() ? null : schema(body);
        List<String> bodyTypes = new ArrayList<>();
        resolved(operation.path("requestBody")).path("content").fieldNames().forEachRemaining(bodyTypes::add);
        String id = operation.path("operationId").asText();
        boolean open = operation.path("security").isArray()
                && operation.path("security").isEmpty();
        operations.put(
                id,
                new Operation(
                        id,
                        method.toUpperCase(Locale.ROOT),
                        path,
                        List.copyOf(parameters),
                        schema,
                        resolved(document.at(body)),
                        plans(document.at(body)),
                        List.copyOf(bodyTypes),
                        formats(operation),
                        open));
    }

    private List<String> formats(JsonNode operation) {
        List<String> mediaTypes = new ArrayList<>();
        resolved(operation.path("responses").path("200"))
                .path("content")
                .fieldNames()
                .forEachRemaining(mediaTypes::add);
        List<String> words = new ArrayList<>();
        for (JsonNode word : document.at("/components/parameters/Format/schema/enum")) {
            if (mediaTypes.stream().anyMatch(mediaType -> isCalled(word.asText(), mediaType))) {
                words.add(word.asText());
            }
        }
        return List.copyOf(words);
    }

    private static boolean isCalled(String word, String mediaType) {
        return switch (word) {
            case "text" -> mediaType.equals("text/plain");
            case "xlsx" -> mediaType.endsWith("openxmlformats-officedocument.spreadsheetml.sheet");
            case "ods" -> mediaType.endsWith("oasis.opendocument.spreadsheet");
            default -> mediaType.endsWith("/" + word) || mediaType.endsWith("/" + word + "+xml");
        };
    }

    private List<String> plans(JsonNode body) {
        if (isPlan(body)) {
            return List.of("");
        }
        List<String> names = new ArrayList<>();
        resolved(body).path("properties").forEachEntry((name, property) -> {
            if (isPlan(property)) {
                names.add(name);
            }
        });
        return List.copyOf(names);
    }

    private static boolean isPlan(JsonNode schema) {
        return schema.path("$ref").asText().equals("#/components/schemas/Plan");
    }

    private Parameter parameter(String pointer) {
        String place = pointer;
        JsonNode node = document.at(place);
        if (node.has("$ref")) {
            place = node.get("$ref").asText().substring(1);
            node = document.at(place);
        }
        return new Parameter(
                node.path("name").asText(),
                node.path("in").asText(),
                node.path("required").asBoolean(false),
                resolved(node.path("schema")),
                schema(place + "/schema"));
    }

    /** The schema at a place of the document. */
    public Schema schema(String pointer) {
        return new Schema(pointer);
    }

    /** One at a time: they refer to each other. */
    private synchronized JsonSchema ready(String fragment) {
        return readySchemas.computeIfAbsent(fragment, f -> {
            JsonSchema schema = whole().getRefSchema(SchemaLocation.Fragment.of(f));
            schema.initializeValidators();
            return schema;
        });
    }

    /** The whole document, once: asked for by location, each part would have it read again. */
    private JsonSchema whole() {
        JsonSchema known = whole;
        if (known == null) {
            JsonMetaSchema dialect = OpenApi31.getInstance();
            JsonSchemaFactory schemas = JsonSchemaFactory.builder()
                    .defaultMetaSchemaIri(dialect.getIri())
                    .metaSchema(dialect)
                    .build();
            SchemaValidatorsConfig config = SchemaValidatorsConfig.builder()
                    .pathType(PathType.JSON_POINTER)
                    .discriminatorKeywordEnabled(true)
                    .locale(Locale.ENGLISH)
                    .build();
            known = schemas.getSchema(SchemaLocation.of("classpath:" + FILE), document, config);
            whole = known;
        }
        return known;
    }

    /** {@code node}, or what it refers to. */
    public JsonNode resolved(JsonNode node) {
        JsonNode at = node;
        while (at.has("$ref")) {
            at = document.at(at.get("$ref").asText().substring(1));
        }
        return at;
    }

    public JsonNode document() {
        return document;
    }

    public byte[] text() {
        return text;
    }

    public String version() {
        return document.at("/info/version").asText();
    }

    public Operation operation(String id) {
        Operation operation = operations.get(id);
        if (operation == null) {
            throw new IllegalStateException("the contract has no operation " + id);
        }
        return operation;
    }

    public List<Operation> operations() {
        return List.copyOf(operations.values());
    }

    public static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }
}
