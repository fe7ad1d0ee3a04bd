package loomwright.service.input;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.InputError;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/** Finds a body that was meant for another kind of operation, so that one sentence says so and not a fault for each name. */
final class BodyShape {
    private enum Code implements MessageCode {
        WRAPPED_PLAN,
        BARE_PLAN,
        LIST
    }

    private static final String PLAN = "plan";
    /** Properties that together only a plan has. */
    private static final List<String> OF_A_PLAN = List.of("parts", "wires");

    private BodyShape() {}

    /**
     * The one fault of a body of the wrong shape.
     *
     * @param schema what the body should be, references resolved
     * @return empty if its shape is right, or if it is like no other operation's
     */
    static Optional<InputError> fault(JsonNode schema, JsonNode body) {
        JsonNode properties = schema.path("properties");
        boolean planIsAsked = isPlan(properties);
        if (planIsAsked && body.path(PLAN).isObject() && !properties.has(PLAN)) {
            return Optional.of(fault("/" + PLAN, Code.WRAPPED_PLAN.with(), AcceptedBody.PLAN_ITSELF.with()));
        }
        if (!planIsAsked && isPlan(body) && holdsPlan(properties)) {
            List<String> names = new ArrayList<>();
            schema.path("required").forEach(name -> names.add(name.asText()));
            return Optional.of(fault("", Code.BARE_PLAN.with(), AcceptedBody.OBJECT_WITH.with(texts("names", names))));
        }
        if (body.isArray() && body.path(0).isObject() && properties.isObject()) {
            return Optional.of(fault("", Code.LIST.with(arg("entries", body.size())), AcceptedBody.ONE_OBJECT.with()));
        }
        return Optional.empty();
    }

    private static boolean isPlan(JsonNode names) {
        return OF_A_PLAN.stream().allMatch(names::has);
    }

    private static boolean holdsPlan(JsonNode properties) {
        return properties.has(PLAN) || properties.has("before");
    }

    private static InputError fault(String pointer, Message found, Message accepted) {
        return InputError.described(InputError.Code.WRONG_SHAPE, pointer, found, accepted);
    }
}
