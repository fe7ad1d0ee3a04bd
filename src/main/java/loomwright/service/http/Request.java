package loomwright.service.http;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import loomwright.answer.RejectedInput;
import loomwright.service.input.Bodies;
import loomwright.service.input.BodyInput;
import loomwright.service.input.Contract;
import loomwright.service.input.Contract.Operation;
import loomwright.service.input.Contract.Parameter;
import loomwright.service.input.ContractErrors;
import loomwright.service.input.Json;
import loomwright.service.input.ListInput;
import loomwright.service.input.Queries;
import loomwright.service.input.QueryInput;
import loomwright.service.input.QuestionOfLists;
import loomwright.service.input.RequestInput;
import loomwright.service.limits.Options;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.EndPoint;
import org.jspecify.annotations.Nullable;

/** One request, its query already held to the contract. */
public final class Request implements RequestInput {
    private final Context context;
    private final Operation operation;
    private final Reading reading;
    private final ObjectNode query;
    private @Nullable RequestInput input;
    private @Nullable ListInput list;

    /** What reading needs, the same for all requests. */
    public record Reading(ServiceLimits limits, Json json, Bodies bodies, Queries queries, Problems problems) {
        public static Reading of(Contract contract, Options options) {
            ServiceLimits limits = options.limits();
            Json json = new Json(limits);
            ContractErrors contractFaults = new ContractErrors(contract);
            return new Reading(
                    limits,
                    json,
                    new Bodies(json, limits, contractFaults, options.checkEveryRequest()),
                    new Queries(json, contractFaults),
                    new Problems(json, limits));
        }
    }

    public Request(Context context, Operation operation, Reading reading) {
        this.context = context;
        this.operation = operation;
        this.reading = reading;
        this.query = reading.queries().parse(context.queryString(), operation);
    }

    /** From the body, or from query and path if the contract gives the operation no body. */
    @Override
    public <T> T read(Class<T> type) throws IOException {
        return input().read(type);
    }

    @Override
    public ProblemException refusal(RejectedInput rejected) throws IOException {
        return input().refusal(rejected);
    }

    /** Read once: a body does not come a second time. */
    private RequestInput input() throws IOException {
        RequestInput known = input;
        if (known == null) {
            known = readInput();
            input = known;
        }
        return known;
    }

    private RequestInput readInput() throws IOException {
        Contract.Schema schema = operation.body();
        Optional<String> inAddress = query(ListInput.LIST);
        if (schema != null && inAddress.isPresent()) {
            return stated(
                    QuestionOfLists.ofAddress(inAddress.get(), operation, schema, reading.json(), reading.bodies()));
        }
        if (schema != null) {
            String type = bodyType(operation.bodyTypes());
            if (!type.equals(Json.MEDIA_TYPE)) {
                return stated(QuestionOfLists.of(
                        type, contentType(), wholeBody(), operation, schema, reading.json(), reading.bodies()));
            }
            return new BodyInput(wholeBody(), schema, reading.bodies());
        }
        ObjectNode fromQuery = options();
        addPath(fromQuery);
        return new QueryInput(fromQuery, reading.queries());
    }

    private ListInput stated(ListInput fromList) {
        if (isSet(ListInput.STRICT)) {
            fromList.requireStated();
        }
        list = fromList;
        return fromList;
    }

    /** The query of an operation as a record, beside what {@link #read} gives. */
    public <T> T readOptions(Class<T> type) {
        return reading.queries().bind(options(), type);
    }

    @Override
    public <O> O options(Class<O> type, O usual) {
        return readOptions(type);
    }

    private ObjectNode options() {
        ObjectNode options = query.deepCopy();
        options.remove(Representations.PARAMETERS);
        return options;
    }

    private void addPath(ObjectNode input) {
        for (Parameter parameter : operation.parameters()) {
            if (parameter.in().equals("path")) {
                input.put(parameter.name(), known(parameter));
            }
        }
    }

    /** A value of the path: what the contract does not know is not there, 404. */
    private String known(Parameter parameter) {
        String value = path(parameter.name());
        reading.queries().checkPath(parameter, value);
        return value;
    }

    /**
     * A word of the path.
     *
     * @throws ProblemException 404 if the contract does not know it
     */
    public String known(String name) {
        Parameter parameter = operation.path(name);
        if (parameter == null) {
            throw new IllegalArgumentException("no such parameter: " + name);
        }
        return known(parameter);
    }

    /** A query parameter that is a whole number. */
    public OptionalLong number(String name) {
        JsonNode value = query.get(name);
        return value == null ? OptionalLong.empty() : OptionalLong.of(value.asLong());
    }

    /** A query parameter as text. */
    public Optional<String> query(String name) {
        return Optional.ofNullable(query.get(name)).map(JsonNode::asText);
    }

    @Override
    public boolean isSet(String name) {
        return query(name).filter("true"::equals).isPresent();
    }

    public String path(String name) {
        return context.pathParam(name);
    }

    @Nullable
    public String accept() {
        List<String> lines = Collections.list(context.req().getHeaders("Accept"));
        // RFC 9110, section 5.3: lines of one name are one list.
        return lines.isEmpty() ? null : String.join(", ", lines);
    }

    public Json json() {
        return reading.json();
    }

    public Reading reading() {
        return reading;
    }

    /** Names this request in the log and in problem documents. */
    public String id() {
        return String.valueOf(context.res().getHeader(RequestId.HEADER));
    }

    /** The media type of the body with its parameters, as sent. */
    public String contentType() {
        return String.valueOf(context.header("Content-Type"));
    }

    /**
     * All of the body.
     *
     * @throws ProblemException 413 if it is too large; 408 if it comes too slowly
     */
    public byte[] wholeBody() throws IOException {
        return Arrival.of(context, reading.limits(), reading.problems());
    }

    /** Whether the sender has said how long the body is, and it may be read as a whole. */
    public boolean hasShortBody() {
        return Arrival.isShort(context, reading.limits());
    }

    /** The body as it arrives, unpacked, of any length. */
    public InputStream body() throws IOException {
        return Arrival.stream(context);
    }

    /** Lets the connection be silent for longer than usual while this request lasts. */
    public void allowSilence(int ms) {
        connection(context).setIdleTimeout(ms);
    }

    static EndPoint connection(Context context) {
        return ServletContextRequest.getServletContextRequest(context.req())
                .getConnectionMetaData()
                .getConnection()
                .getEndPoint();
    }

    /** For operations with one form. */
    public void checkAccepts(String mediaType) {
        if (Accept.choose(accept(), List.of(mediaType)).isEmpty()) {
            throw notAcceptable(List.of(mediaType));
        }
    }

    public static ProblemException notAcceptable(List<String> mediaTypes) {
        return new ProblemException(
                ProblemType.NOT_ACCEPTABLE,
                ProblemText.OTHER_FORMS.with(arg("mediaTypes", String.join(", ", mediaTypes))),
                List.of(),
                Map.of("Vary", "Accept"));
    }

    private String bodyType(List<String> mediaTypes) {
        return bodyType(mediaTypes.size() == 1 ? "JSON" : "JSON or as a list", mediaTypes);
    }

    /** The list that was sent instead of a plan in JSON, once it is read. */
    public Optional<ListInput> list() {
        return Optional.ofNullable(list);
    }

    private static String shortened(@Nullable String header) {
        return header == null ? "" : Problem.shortened(header);
    }

    /**
     * The media type of the body, one of those given.
     *
     * @param called what they are in words
     * @throws ProblemException 415 if it is none of them, compressed other than by gzip, or not UTF-8
     */
    public String bodyType(String called, List<String> mediaTypes) {
        String type = context.header("Content-Type");
        String encoding = context.header("Content-Encoding");
        Optional<String> mediaType = mediaTypes.stream()
                .filter(one -> isInUtf8(type, one) || (mediaTypes.size() > 2 && isList(type, one)))
                .findFirst();
        String transfer = context.header("Transfer-Encoding");
        boolean plain = encoding == null || encoding.equalsIgnoreCase("identity") || Arrival.isPacked(encoding);
        boolean plainlySent = transfer == null || transfer.equalsIgnoreCase("chunked");
        if (mediaType.isEmpty() || !plain || !plainlySent) {
            throw new ProblemException(
                    ProblemType.UNSUPPORTED_MEDIA_TYPE,
                    ProblemText.OTHER_BODY.with(
                            arg("called", called),
                            arg("mediaTypes", String.join(" or ", mediaTypes)),
                            arg("types", type == null ? 0 : 1),
                            arg("type", shortened(type)),
                            arg("encodings", encoding == null ? 0 : 1),
                            arg("encoding", shortened(encoding)),
                            arg("transfers", plainlySent ? 0 : 1),
                            arg("transfer", shortened(transfer))),
                    List.of(),
                    Map.of("Accept-Post", String.join(", ", mediaTypes), "Accept-Encoding", "gzip"));
        }
        return mediaType.get();
    }

    /** A list tells its encoding itself, and a workbook has none. */
    private static boolean isList(@Nullable String contentType, String mediaType) {
        return contentType != null
                && !mediaType.equals(Json.MEDIA_TYPE)
                && !mediaType.equals(Json.LINES)
                && contentType.toLowerCase(Locale.ROOT).split(";", 2)[0].trim().equals(mediaType);
    }

    private static boolean isInUtf8(@Nullable String contentType, String mediaType) {
        if (contentType == null) {
            return false;
        }
        String[] parts = contentType.toLowerCase(Locale.ROOT).split(";", -1);
        if (!parts[0].trim().equals(mediaType)) {
            return false;
        }
        for (int i = 1; i < parts.length; i++) {
            String parameter = parts[i].trim().replace("\"", "");
            if (parameter.startsWith("charset=")
                    && !mediaType.startsWith("text/")
                    && !parameter.equals("charset=utf-8")) {
                return false;
            }
        }
        return true;
    }
}
