package loomwright.service.input;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.InputError;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/** Finds a body that was meant for another kind of operation, so that one sentence says so and not a fault for each name. */
final class BodyShape {
    private enum Code implements MessageCode {
        WRAPPED_PLAN,
        BARE_PLAN,
        TWO_PLANS,
        LIST
    }

    private static final String PLAN = "plan";
    private static final String BEFORE = "before";
    /** Properties that together only a plan has. */
    private static final List<String> OF_A_PLAN = List.of("parts", "wires");
    /** How many properties of a question are named as examples. */
    private static final int EXAMPLES = 3;

    private BodyShape() {}

    /**
     * The one fault of a body of the wrong shape.
     *
     * @param schema what the body should be, references resolved
     * @return empty if its shape is right, or if it is like no other operation's
     */
    static Optional<InputError> fault(JsonNode schema, JsonNode body) {
        JsonNode properties = schema.path("properties");
        if (!properties.isObject()) {
            return Optional.empty();
        }
        if (body.isArray() && body.path(0).isObject()) {
            return Optional.of(fault("", Code.LIST.with(arg("entries", body.size())), AcceptedBody.ONE_OBJECT.with()));
        }
        return sent(body)
                .filter(shape -> !has(properties, shape))
                .map(shape -> fault(shape == Code.WRAPPED_PLAN ? "/" + PLAN : "", shape.with(), asked(schema)));
    }

    private static Optional<Code> sent(JsonNode body) {
        if (has(body, Code.BARE_PLAN)) {
            return Optional.of(Code.BARE_PLAN);
        }
        return Stream.of(Code.WRAPPED_PLAN, Code.TWO_PLANS)
                .filter(shape -> has(body, shape) && body.path(nameOf(shape)).isObject())
                .findFirst();
    }

    private static boolean has(JsonNode names, Code shape) {
        return shape == Code.BARE_PLAN ? OF_A_PLAN.stream().allMatch(names::has) : names.has(nameOf(shape));
    }

    private static String nameOf(Code shape) {
        return shape == Code.WRAPPED_PLAN ? PLAN : BEFORE;
    }

    private static Message asked(JsonNode schema) {
        JsonNode properties = schema.path("properties");
        if (has(properties, Code.BARE_PLAN)) {
            return AcceptedBody.PLAN_ITSELF.with();
        }
        List<String> names = new ArrayList<>();
        if (has(properties, Code.WRAPPED_PLAN) || has(properties, Code.TWO_PLANS)) {
            schema.path("required").forEach(name -> names.add(name.asText()));
            return AcceptedBody.OBJECT_WITH.with(texts("names", names));
        }
        properties.fieldNames().forEachRemaining(names::add);
        return AcceptedBody.VALUES_OF_THE_QUESTION.with(
                texts("names", names.subList(0, Math.min(EXAMPLES, names.size()))));
    }

    private static InputError fault(String pointer, Message found, Message accepted) {
        return InputError.described(InputError.Code.WRONG_SHAPE, pointer, found, accepted);
    }
}
