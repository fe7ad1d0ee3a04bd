package loomwright.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.RejectedInput;
import loomwright.service.Contract.Operation;
import loomwright.service.Contract.Parameter;
import org.jspecify.annotations.Nullable;

/** One request, its query already held to the contract. */
public final class Request {
    private final Context context;
    private final Operation operation;
    private final Reading reading;
    private final ObjectNode query;

    /** What reading needs, the same for all requests. */
    record Reading(Json json, Bodies bodies, Queries queries) {}

    Request(Context context, Operation operation, Reading reading) {
        this.context = context;
        this.operation = operation;
        this.reading = reading;
        this.query = reading.queries().parse(context.queryString(), operation);
    }

    /**
     * The input of the operation: from the body, or from query and path if the contract gives the operation no body.
     *
     * @throws Refusal if it does not follow the contract
     */
    <T> T read(Class<T> type) throws IOException {
        JsonSchema schema = operation.body();
        if (schema == null) {
            ObjectNode input = options();
            addPath(input);
            return reading.queries().bind(input, type);
        }
        checkBodyIsJson();
        return reading.bodies().read(context.bodyAsBytes(), type, schema);
    }

    /** The query of an operation as a record, beside what {@link #read} gives. */
    <T> T readOptions(Class<T> type) {
        return reading.queries().bind(options(), type);
    }

    private ObjectNode options() {
        ObjectNode options = query.deepCopy();
        options.remove(List.of(Faces.PARAMETER, ReasonInCell.PARAMETER));
        return options;
    }

    /**
     * What to answer when the domain rejects the input: 400 if the contract objects as well, with all that it has to
     * say, else 422.
     */
    Refusal refusal(RejectedInput rejected) throws IOException {
        JsonSchema schema = operation.body();
        if (schema != null) {
            reading.bodies().checkByContract(context.bodyAsBytes(), schema);
        }
        return Refusal.ofFaults(rejected.faults(), schema != null, false);
    }

    /** What the address names and the contract does not know is not there: 404. */
    private void addPath(ObjectNode input) {
        for (Parameter parameter : operation.parameters()) {
            if (parameter.in().equals("path")) {
                String value = path(parameter.name());
                input.put(parameter.name(), value);
                reading.queries().checkPath(parameter, value);
            }
        }
    }

    /** A query parameter as text. */
    Optional<String> query(String name) {
        return Optional.ofNullable(query.get(name)).map(JsonNode::asText);
    }

    String path(String name) {
        return context.pathParam(name);
    }

    @Nullable
    String accept() {
        return context.header("Accept");
    }

    Json json() {
        return reading.json();
    }

    /** For operations with one form. */
    void checkAccepts(String mediaType) {
        if (Accept.choose(accept(), List.of(mediaType)).isEmpty()) {
            throw notAcceptable(List.of(mediaType));
        }
    }

    static Refusal notAcceptable(List<String> mediaTypes) {
        return new Refusal(
                ProblemType.NOT_ACCEPTABLE,
                "This answer exists as " + String.join(", ", mediaTypes)
                        + ". Name one of these in Accept, or leave the header and the format parameter out.");
    }

    private void checkBodyIsJson() {
        String type = context.header("Content-Type");
        String encoding = context.header("Content-Encoding");
        if (!isJson(type) || (encoding != null && !encoding.equalsIgnoreCase("identity"))) {
            String found = type == null
                    ? "it has no Content-Type"
                    : "its Content-Type is '" + Problem.shortened(type) + "'"
                            + (encoding == null ? "" : ", Content-Encoding '" + Problem.shortened(encoding) + "'");
            throw new Refusal(
                    ProblemType.UNSUPPORTED_MEDIA_TYPE,
                    "Send the body as uncompressed JSON in UTF-8 with Content-Type: application/json; " + found + ".",
                    List.of(),
                    Map.of("Accept-Post", Json.MEDIA_TYPE));
        }
    }

    private static boolean isJson(@Nullable String contentType) {
        if (contentType == null) {
            return false;
        }
        String[] parts = contentType.toLowerCase(Locale.ROOT).split(";", -1);
        if (!parts[0].trim().equals(Json.MEDIA_TYPE)) {
            return false;
        }
        for (int i = 1; i < parts.length; i++) {
            String parameter = parts[i].trim().replace("\"", "");
            if (parameter.startsWith("charset=") && !parameter.equals("charset=utf-8")) {
                return false;
            }
        }
        return true;
    }
}
