package loomwright.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.ValidationMessage;
import io.restassured.filter.Filter;
import io.restassured.filter.FilterContext;
import io.restassured.response.Response;
import io.restassured.specification.FilterableRequestSpecification;
import io.restassured.specification.FilterableResponseSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import loomwright.service.input.Contract;
import loomwright.service.input.Contract.Operation;
import loomwright.service.problem.Problem;
import org.jspecify.annotations.Nullable;

/** Fails a test whose answer is not in the contract: status, media type or body. */
final class ContractFilter implements Filter {
    /** Answers of the web server that need no operation; the contract's introduction names them. */
    private static final Set<Integer> ANYWHERE = Set.of(400, 401, 404, 405, 414, 429, 431, 501);

    /** What {@code default} stands for, and nothing else. */
    private static final Set<Integer> OTHERS = Set.of(405, 406, 408, 413, 414, 415, 431, 500);

    private static final JsonMapper MAPPER = new JsonMapper();

    private final Contract contract;
    private final Contract.Schema problem;
    private final Map<String, Contract.Schema> schemas = new ConcurrentHashMap<>();
    private final Set<String> covered = ConcurrentHashMap.newKeySet();

    ContractFilter(Contract contract) {
        this.contract = contract;
        this.problem = contract.schema("/components/schemas/Problem");
    }

    /** Pairs of operation and status that were answered so far. */
    Set<String> covered() {
        return Set.copyOf(covered);
    }

    @Override
    public Response filter(
            FilterableRequestSpecification request, FilterableResponseSpecification spec, FilterContext context) {
        Response response = context.next(request, spec);
        check(request.getMethod(), URI.create(request.getURI()).getRawPath(), response);
        return response;
    }

    private void check(String method, String path, Response response) {
        Operation operation = operation(method, path);
        int status = response.statusCode();
        if (status == 304 && operation != null) {
            require(response.asByteArray().length == 0, "a body for 304");
            covered.add(operation.id() + " " + status);
            return;
        }
        if (response.asByteArray().length == 0) {
            require(method.equals("HEAD") || method.equals("OPTIONS"), "an empty body for " + method + " " + path);
            return;
        }
        String mediaType = response.contentType().replaceFirst(";.*", "").trim().toLowerCase(Locale.ROOT);
        String pointer = operation == null ? "/nothing" : pointer(operation, status);
        JsonNode listed = contract.document().at(pointer);
        if (operation == null || listed.isMissingNode()) {
            require(ANYWHERE.contains(status), status + " is not listed for " + method + " " + path);
            require(mediaType.equals(Problem.MEDIA_TYPE), "not a problem document: " + mediaType);
            validate(problem, response.asByteArray());
            return;
        }
        if (listed.has("$ref")) {
            pointer = listed.get("$ref").asText().substring(1);
        }
        String content = pointer + "/content/" + Contract.escaped(mediaType);
        require(
                !contract.document().at(content).isMissingNode(),
                mediaType + " is not listed for " + status + " of " + operation.id());
        if (!contract.document().at(content + "/schema/contentSchema").isMissingNode()) {
            Contract.Schema item = schemas.computeIfAbsent(content + "/schema/contentSchema", contract::schema);
            response.asString().lines().forEach(line -> validate(item, line.getBytes(StandardCharsets.UTF_8)));
        } else if (mediaType.endsWith("json")) {
            validate(schemas.computeIfAbsent(content + "/schema", contract::schema), response.asByteArray());
        }
        covered.add(operation.id() + " " + status);
    }

    private String pointer(Operation operation, int status) {
        String responses = "/paths/" + Contract.escaped(operation.path()) + "/"
                + operation.method().toLowerCase(Locale.ROOT) + "/responses/";
        return OTHERS.contains(status) ? responses + "default" : responses + status;
    }

    private static void validate(Contract.Schema schema, byte[] json) {
        try {
            Set<ValidationMessage> messages = schema.validate(MAPPER.readTree(json));
            require(messages.isEmpty(), "the body does not follow the contract: " + messages);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private @Nullable Operation operation(String method, String path) {
        for (Operation operation : contract.operations()) {
            if (operation.method().equals(method)
                    && path.matches(operation.path().replaceAll("\\{[^}]+}", "[^/]+"))) {
                return operation;
            }
        }
        return null;
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }
}
