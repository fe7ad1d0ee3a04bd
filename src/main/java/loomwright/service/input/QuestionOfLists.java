package loomwright.service.input;

import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.list.ListFile;
import loomwright.list.ListLimits;
import loomwright.list.ListReading;
import loomwright.list.ListSource;
import loomwright.list.PlanList;
import loomwright.list.TextList;
import loomwright.list.Workbooks;
import loomwright.message.Message;
import loomwright.service.input.ListInput.ReadList;
import loomwright.service.problem.ProblemException;
import org.jspecify.annotations.Nullable;

/**
 * Makes the question of an operation from lists: from one list, from one workbook with worksheets {@code before}, {@code
 * after} and {@code readings}, or from a form with a field for each property of the question.
 */
public final class QuestionOfLists {
    static final String READINGS = "readings";

    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final String ODS = "application/vnd.oasis.opendocument.spreadsheet";
    private static final String PLAN = "plan";
    private static final String BEFORE = "before";
    private static final String AFTER = "after";

    private final Contract.Operation operation;
    private final Json json;
    private final Bodies bodies;
    private final List<ReadList> lists = new ArrayList<>();
    /** Further lists of the same plan. */
    private final Map<String, List<Multipart.Field>> more = new LinkedHashMap<>();

    private ObjectNode question;

    private QuestionOfLists(Contract.Operation operation, Json json, Bodies bodies) {
        this.operation = operation;
        this.json = json;
        this.bodies = bodies;
        this.question = json.mapper().createObjectNode();
    }

    /**
     * Reads a body that is no JSON.
     *
     * @param mediaType one that the contract names
     * @param contentType the same with its parameters
     * @throws ProblemException 422 if there is no list in it, 400 if it does not follow its form
     */
    public static ListInput of(
            String mediaType,
            String contentType,
            byte[] body,
            Contract.Operation operation,
            Contract.Schema schema,
            Json json,
            Bodies bodies)
            throws IOException {
        QuestionOfLists made = new QuestionOfLists(operation, json, bodies);
        try {
            if (mediaType.equals(Multipart.MEDIA_TYPE)) {
                made.readForm(Multipart.read(contentType, body));
            } else {
                made.readOne(source(mediaType, body));
            }
        } catch (RejectedInput rejected) {
            throw ProblemException.ofFaults(rejected.faults(), true, false);
        }
        return made.input(schema);
    }

    /**
     * Reads a list that stands in the address of a request.
     *
     * @throws ProblemException 422 if there is no list in it
     */
    public static ListInput ofAddress(
            String text, Contract.Operation operation, Contract.Schema schema, Json json, Bodies bodies)
            throws IOException {
        try {
            return of(TextList.read(TextList.ofAddress(text), ListLimits.defaults()), operation, schema, json, bodies);
        } catch (RejectedInput rejected) {
            throw ProblemException.ofFaults(rejected.faults(), true, false);
        }
    }

    /** One car among many: its list is the plan, or the plan of the question. */
    public static ListInput of(
            ListSource source, Contract.Operation operation, Contract.Schema schema, Json json, Bodies bodies)
            throws IOException {
        QuestionOfLists made = new QuestionOfLists(operation, json, bodies);
        made.readOne(source);
        return made.input(schema);
    }

    private ListInput input(Contract.Schema schema) throws IOException {
        byte[] document = json.exactMapper().writeValueAsBytes(question);
        return new ListInput(lists, question, new BodyInput(document, schema, bodies));
    }

    private static ListSource source(String mediaType, byte[] body) {
        return switch (mediaType) {
            case XLSX -> Workbooks.readXlsx(body, ListLimits.defaults());
            case ODS -> Workbooks.readOds(body, ListLimits.defaults());
            default -> TextList.read(TextList.decode(body), ListLimits.defaults());
        };
    }

    // One list or workbook.

    private void readOne(ListSource source) {
        List<String> plans = operation.plans();
        boolean two = source.hasSheetsOf(AFTER);
        if (two && !plans.contains(AFTER)) {
            throw new RejectedInput(
                    new InputError(InputError.Code.CONTRADICTION, "", null, AcceptedBody.ONE_PLAN.with()));
        }
        put(plans.get(0), "", two ? source.sheetsOf(BEFORE, List.of(AFTER)) : source);
        if (two) {
            put(AFTER, "", source.sheetsOf(AFTER, List.of(BEFORE)));
        } else if (plans.contains(AFTER) && isRequired(AFTER)) {
            throw new RejectedInput(
                    new InputError(InputError.Code.MISSING, "/" + AFTER, null, AcceptedBody.TWO_PLANS.with()));
        }
        if (isProperty(READINGS) && !question.has(READINGS)) {
            throw new RejectedInput(PlanList.noReadings());
        }
    }

    private void put(String property, String origin, ListSource source) {
        ListReading reading = PlanList.read(source);
        lists.add(new ReadList(property.isEmpty() ? "" : "/" + property, origin, reading));
        ObjectNode plan = json.exactMapper().valueToTree(reading.plan());
        if (property.isEmpty()) {
            question = plan;
        } else {
            question.set(property, plan);
        }
        if (isProperty(READINGS) && !reading.readings().readings().isEmpty()) {
            question.set(
                    READINGS, json.exactMapper().valueToTree(reading.readings().readings()));
        }
    }

    private boolean isProperty(String name) {
        return operation.bodyForm().path("properties").has(name)
                && !operation.plans().contains("");
    }

    private boolean isRequired(String name) {
        for (JsonNode each : operation.bodyForm().path("required")) {
            if (each.asText().equals(name)) {
                return true;
            }
        }
        return false;
    }

    // A form.

    private void readForm(List<Multipart.Field> fields) throws IOException {
        Map<String, Multipart.Field> byProperty = new LinkedHashMap<>();
        for (Multipart.Field field : fields) {
            String property = property(field.name());
            Multipart.Field known = byProperty.putIfAbsent(property, field);
            if (known != null && isPlan(property) && isList(known) && isList(field)) {
                more.computeIfAbsent(property, name -> new ArrayList<>()).add(field);
            } else if (known != null) {
                throw new RejectedInput(new InputError(
                        InputError.Code.DUPLICATE, "/" + property, field.name(), AcceptedBody.FIELD_ONCE.with()));
            }
        }
        if (byProperty.isEmpty()) {
            throw new RejectedInput(new InputError(InputError.Code.MISSING, "", null, fieldNames()));
        }
        Multipart.Field readings = byProperty.remove(READINGS);
        for (Map.Entry<String, Multipart.Field> each : byProperty.entrySet()) {
            if (operation.plans().contains(each.getKey())) {
                readPlan(each.getKey(), each.getValue(), readings);
            } else {
                question.set(each.getKey(), value(each.getKey(), text(each.getValue())));
            }
        }
        if (readings != null && !question.has(READINGS)) {
            readReadings(readings);
        }
    }

    private boolean isPlan(String property) {
        return operation.plans().contains(property);
    }

    private static boolean isList(Multipart.Field field) {
        return !isJson(field.content(), '{');
    }

    /** The property that a field is about: in a form the plan of an operation with one plan is called so. */
    private String property(String field) {
        List<String> plans = operation.plans();
        if (plans.contains("") ? field.equals(PLAN) : isProperty(field)) {
            return plans.contains("") ? "" : field;
        }
        if (field.equals(BEFORE) && plans.contains(AFTER)) {
            return plans.get(0);
        }
        if (field.equals(PLAN) && plans.contains(BEFORE)) {
            return BEFORE;
        }
        throw new RejectedInput(new InputError(InputError.Code.UNKNOWN_NAME, "/" + field, field, fieldNames()));
    }

    private Message fieldNames() {
        if (operation.plans().contains("")) {
            return AcceptedBody.FORM.with(texts("names", List.of("plan")));
        }
        TreeSet<String> names = new TreeSet<>();
        operation.bodyForm().path("properties").fieldNames().forEachRemaining(names::add);
        return AcceptedBody.FORM.with(texts("names", names));
    }

    private void readPlan(String property, Multipart.Field field, Multipart.@Nullable Field readings)
            throws IOException {
        if (isJson(field.content(), '{')) {
            JsonNode plan = tree(field);
            if (property.isEmpty() && plan instanceof ObjectNode whole) {
                question = whole;
            } else {
                question.set(property, plan);
            }
            return;
        }
        boolean several = operation.plans().size() > 1;
        ListSource source = ListFile.read(field.content(), ListLimits.defaults());
        for (Multipart.Field other : more.getOrDefault(property, List.of())) {
            source = source.joined(nameOf(other), ListFile.read(other.content(), ListLimits.defaults()));
        }
        put(
                property,
                several ? "file " + field.name() : "",
                readings == null || isJson(readings.content(), '[')
                        ? source
                        : source.with(READINGS, ListFile.read(readings.content(), ListLimits.defaults())));
    }

    private static String nameOf(Multipart.Field field) {
        return field.fileName() == null ? field.name() : field.fileName();
    }

    private void readReadings(Multipart.Field field) throws IOException {
        question.set(
                READINGS,
                isJson(field.content(), '[')
                        ? tree(field)
                        : json.exactMapper()
                                .valueToTree(PlanList.readings(ListFile.read(field.content(), ListLimits.defaults()))
                                        .readings()));
    }

    private JsonNode tree(Multipart.Field field) throws IOException {
        bodies.checkText(field.content());
        return json.mapper().readTree(field.content());
    }

    private static boolean isJson(byte[] content, char first) {
        for (byte b : content) {
            if (b == first) {
                return true;
            }
            if (!Character.isWhitespace(b)) {
                return false;
            }
        }
        return false;
    }

    private static String text(Multipart.Field field) {
        return new String(field.content(), StandardCharsets.UTF_8).strip();
    }

    /** A plain field as the contract types its property; a list is written with commas. What is no number stays a text. */
    private JsonNode value(String property, String text) {
        JsonNode form = operation.bodyForm().path("properties").path(property);
        return typed(form.path("type").asText(), text);
    }

    private static JsonNode typed(String type, String text) {
        switch (type) {
            case "number", "integer" -> {
                try {
                    return JsonNodeFactory.instance.numberNode(new BigDecimal(text));
                } catch (NumberFormatException noNumber) {
                    return TextNode.valueOf(text);
                }
            }
            case "boolean" -> {
                return text.equals("true") || text.equals("false")
                        ? JsonNodeFactory.instance.booleanNode(text.equals("true"))
                        : TextNode.valueOf(text);
            }
            case "array" -> {
                ArrayNode array = JsonNodeFactory.instance.arrayNode();
                for (String each : text.split(",", -1)) {
                    array.add(each.strip());
                }
                return array;
            }
            default -> {
                return TextNode.valueOf(text);
            }
        }
    }
}
