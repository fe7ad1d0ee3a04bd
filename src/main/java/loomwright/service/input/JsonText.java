package loomwright.service.input;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.answer.InputError;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;

/** Finds out what is wrong with the text of a JSON body, whatever it is meant to say. Runs only after binding failed. */
final class JsonText {
    private final JsonFactory factory;
    private final ServiceLimits limits;

    JsonText(JsonFactory factory, ServiceLimits limits) {
        this.factory = factory;
        this.limits = limits;
    }

    /**
     * Reads {@code json} to its end.
     *
     * @throws ProblemException that tells the kind of the first fault, its line and column
     */
    void check(byte[] json) throws IOException {
        int depth = 0;
        boolean complete = false;
        try (JsonParser parser = factory.createParser(json)) {
            try {
                for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                    if (complete) {
                        throw trailing(parser.currentTokenLocation());
                    }
                    depth += token.isStructStart() ? 1 : token.isStructEnd() ? -1 : 0;
                    complete = depth == 0;
                    if (token == JsonToken.VALUE_STRING
                            && parser.getTextLength() > limits.json().stringChars()) {
                        throw tooLong(parser.currentTokenLocation());
                    }
                    if (token.isNumeric() && !Double.isFinite(parser.getDoubleValue())) {
                        throw tooLarge(parser);
                    }
                }
            } catch (JsonProcessingException e) {
                JsonLocation at = e.getLocation() == null ? parser.currentLocation() : e.getLocation();
                throw complete ? trailing(at) : refusal(e, at, depth, json, parser);
            }
        }
        if (!complete) {
            throw new ProblemException(ProblemType.MALFORMED_JSON, ProblemText.EMPTY_BODY.with());
        }
    }

    private ProblemException refusal(
            JsonProcessingException e, JsonLocation at, int depth, byte[] json, JsonParser parser) {
        String words = String.valueOf(e.getOriginalMessage());
        if (e instanceof StreamConstraintsException) {
            return depth >= limits.json().nestingDepth()
                    ? new ProblemException(
                            ProblemType.TOO_DEEP,
                            at(
                                    ProblemText.TOO_DEEP,
                                    at,
                                    arg("levels", limits.json().nestingDepth())))
                    : tooLong(at);
        }
        if (words.startsWith("Duplicate ")) {
            return new ProblemException(ProblemType.DUPLICATE_KEY, at(ProblemText.SAME_PROPERTY_TWICE, at));
        }
        if (words.contains("Non-standard token")) {
            return new ProblemException(ProblemType.NOT_A_NUMBER, at(ProblemText.NOT_FINITE, at));
        }
        return new ProblemException(ProblemType.MALFORMED_JSON, JsonSyntax.fault(json, parser, e));
    }

    private ProblemException tooLong(JsonLocation at) {
        return new ProblemException(
                ProblemType.TOO_LONG,
                at(
                        ProblemText.TOO_LONG,
                        at,
                        arg("text", limits.json().stringChars()),
                        arg("name", limits.json().nameChars()),
                        arg("number", limits.json().numberChars()),
                        arg("tokens", limits.json().tokens())));
    }

    private static ProblemException trailing(JsonLocation at) {
        return new ProblemException(ProblemType.TRAILING_TEXT, at(ProblemText.TEXT_BEHIND, at));
    }

    private static ProblemException tooLarge(JsonParser parser) throws IOException {
        InputError fault = new InputError(
                InputError.Code.OUT_OF_RANGE,
                parser.getParsingContext().pathAsPointer().toString(),
                parser.getText(),
                AcceptedBody.DOUBLE.with());
        return new ProblemException(
                ProblemType.NUMBER_TOO_LARGE,
                at(ProblemText.BODY_NUMBER_TOO_LARGE, parser.currentTokenLocation()),
                List.of(new Problem.Entry(fault, true)),
                Map.of());
    }

    /** A message with the line and the column; no line where the parser does not know it. */
    private static Message at(ProblemText text, JsonLocation at, Arg... others) {
        List<Arg> all = new ArrayList<>(List.of(others));
        all.add(arg("line", Math.max(0, at.getLineNr())));
        all.add(arg("column", at.getColumnNr()));
        return text.with(all.toArray(Arg[]::new));
    }
}
