package loomwright.service.input;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import loomwright.answer.InputError;
import loomwright.answer.InputError.Code;
import loomwright.list.Quantities;
import loomwright.list.Spelling;
import loomwright.message.Message;
import loomwright.message.PropertyName;
import loomwright.service.input.Contract.Operation;
import loomwright.service.input.Contract.Parameter;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/** Binds query parameters to the same records as bodies: each text becomes what the contract says it is. */
public final class Queries {
    private static final Pattern NUMBER = Pattern.compile("-?\\d{1,40}(\\.\\d{1,40})?([eE][+-]?\\d{1,5})?");

    private final Json json;
    private final ContractErrors contractFaults;

    public Queries(Json json, ContractErrors contractFaults) {
        this.json = json;
        this.contractFaults = contractFaults;
    }

    /**
     * The parameters of a raw query as one object.
     *
     * @throws ProblemException if the query does not follow the contract; every fault is named
     */
    public ObjectNode parse(@Nullable String rawQuery, Operation operation) {
        return parse(RawQuery.parse(rawQuery), operation);
    }

    /** The same for names and values that were taken apart elsewhere. */
    public ObjectNode parse(Map<String, List<String>> texts, Operation operation) {
        List<InputError> faults = new ArrayList<>();
        ObjectNode values = JsonNodeFactory.instance.objectNode();
        texts.forEach((name, given) -> {
            Parameter parameter = operation.query(name);
            if (parameter == null) {
                faults.add(new InputError(Code.UNKNOWN_NAME, name, given.get(0), names(operation))
                        .suggesting(
                                Spelling.nearest(name, queryNames(operation)).orElse(null)));
            } else if (given.size() > 1) {
                faults.add(new InputError(
                        Code.DUPLICATE, name, String.join(", ", given), AcceptedBody.PARAMETER_ONCE.with()));
            } else if (!isLeftOut(texts, name)) {
                JsonNode value = value(parameter, given.get(0));
                values.set(name, value);
                contractFaults
                        .of(parameter.schema(), value)
                        .forEach(fault -> faults.add(ofOperation(inQuery(fault, name, values), operation)));
            }
        });
        for (Parameter parameter : operation.parameters()) {
            if (parameter.in().equals("query") && parameter.required() && isLeftOut(texts, parameter.name())) {
                faults.add(new InputError(
                        Code.MISSING, parameter.name(), null, contractFaults.accepted(parameter.form())));
            }
        }
        if (!faults.isEmpty()) {
            throw ProblemException.ofFaults(faults, false, true);
        }
        return values;
    }

    /** A form sends its empty fields too: they are left out, as an empty cell of a table is. */
    private static boolean isLeftOut(Map<String, List<String>> texts, String name) {
        return texts.getOrDefault(name, List.of("")).get(0).isBlank();
    }

    /** A fault of a parameter has the parameter's name; that of one entry of its list says which besides. */
    private static InputError inQuery(InputError fault, String name, ObjectNode values) {
        return JsonPlace.of(fault.under("/" + name), values).of(name);
    }

    /** The contract has one list of forms for all operations; the caller wants to know those of this one. */
    private static InputError ofOperation(InputError fault, Operation operation) {
        return fault.code() == Code.NOT_ONE_OF && fault.pointer().equals("format")
                ? new InputError(fault.code(), fault.pointer(), fault.value(), AcceptedInput.oneOf(operation.formats()))
                : fault;
    }

    /**
     * Holds a value of the path to the contract.
     *
     * @throws ProblemException 404 that says what there is
     */
    public void checkPath(Parameter parameter, String value) {
        List<InputError> faults = contractFaults.of(parameter.schema(), TextNode.valueOf(value));
        if (!faults.isEmpty()) {
            throw new ProblemException(
                    ProblemType.NOT_FOUND,
                    ProblemText.NOT_HERE.with(
                            arg("parameter", parameter.name()),
                            arg("value", Problem.shortened(value)),
                            arg("accepted", faults.get(0).accepted())));
        }
    }

    /** The record of a query that follows the contract. */
    public <T> T bind(ObjectNode values, Class<T> type) {
        try {
            return json.mapper().treeToValue(values, type);
        } catch (JsonProcessingException e) {
            throw Bodies.refusalBeyondContract(e, false, values);
        }
    }

    /** Lists are written with commas: the contract gives them {@code style: form, explode: false}. */
    private static JsonNode value(Parameter parameter, String given) {
        if (!parameter.is("array")) {
            return scalar(
                    parameter.is("number") || parameter.is("integer"),
                    parameter.is("boolean"),
                    parameter.is("number") ? inUnit(parameter.name(), given) : given);
        }
        String items = parameter.form().path("items").path("type").asText();
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        for (String text : given.split(",", -1)) {
            list.add(scalar(items.equals("number") || items.equals("integer"), items.equals("boolean"), text.trim()));
        }
        return list;
    }

    /** A number with its unit or a decimal comma, as the number alone; what is no such thing stays as it is. */
    private static String inUnit(String parameter, String given) {
        if (NUMBER.matcher(given).matches()) {
            return given;
        }
        String unit = PropertyName.of(parameter).unit();
        OptionalDouble value = Quantities.inUnit(given, unit == null ? "" : unit);
        // More digits than a double holds are no number with a unit.
        return value.isPresent() && Double.isFinite(value.getAsDouble())
                ? BigDecimal.valueOf(value.getAsDouble()).toPlainString()
                : given;
    }

    /** A text that is no such thing stays a text: the contract then says that its type is wrong. */
    private static JsonNode scalar(boolean number, boolean logical, String text) {
        if (number && NUMBER.matcher(text).matches()) {
            if (!Double.isFinite(Double.parseDouble(text))) {
                throw new ProblemException(
                        ProblemType.NUMBER_TOO_LARGE,
                        ProblemText.NUMBER_TOO_LARGE.with(arg("number", Problem.shortened(text))));
            }
            return DecimalNode.valueOf(new BigDecimal(text));
        }
        if (logical && (text.equals("true") || text.equals("false"))) {
            return BooleanNode.valueOf(text.equals("true"));
        }
        return TextNode.valueOf(text);
    }

    private static Message names(Operation operation) {
        return AcceptedInput.oneOf(queryNames(operation));
    }

    private static List<String> queryNames(Operation operation) {
        return operation.parameters().stream()
                .filter(parameter -> parameter.in().equals("query"))
                .map(Parameter::name)
                .toList();
    }
}
