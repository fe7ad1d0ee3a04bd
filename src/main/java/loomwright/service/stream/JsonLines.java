package loomwright.service.stream;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.bulk.Line;
import loomwright.service.http.Request;
import loomwright.service.input.Bodies;
import loomwright.service.input.BodyInput;
import loomwright.service.input.ByteScan;
import loomwright.service.input.Contract;
import loomwright.service.input.RejectedLine;
import loomwright.service.input.RequestInput;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/**
 * Lines of JSON: the input alone, or {@code {"key": …, "input": …}}. What the input says is left to those who read bodies;
 * here only its place in the line is found.
 */
public final class JsonLines implements LineInputs {
    static final String KEY = "key";
    static final String INPUT = "input";
    static final int KEY_CHARS = 200;

    private final Contract.Schema schema;
    private final Bodies bodies;
    private final JsonFactory scanner;

    public JsonLines(Contract.Schema schema, Request.Reading reading) {
        this.schema = schema;
        this.bodies = reading.bodies();
        ServiceLimits limits = reading.limits();
        // Whether the input itself keeps to the limits is judged when it is read.
        this.scanner = JsonFactory.builder()
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(limits.json().nestingDepth() + 1)
                        .maxStringLength(limits.json().stringChars())
                        .maxNameLength(limits.json().nameChars())
                        .maxNumberLength(limits.json().numberChars())
                        .build())
                .build();
    }

    @Override
    public BulkItem read(Line read) throws IOException {
        byte[] line = read.text();
        Scan scan = new Scan(line);
        try {
            if (!scan.isEnveloped()) {
                return new BulkItem(null, input(line));
            }
            scan.readOn();
            scan.checkEncodingAroundInput();
        } catch (IOException e) {
            return new BulkItem(scan.key, scan.start < 0 || scan.end >= 0 ? broken(line) : input(scan.rest()));
        } catch (ProblemException refusal) {
            return new BulkItem(scan.key, new RejectedLine(refusal));
        }
        if (scan.start < 0) {
            scan.faults.add(new InputError(InputError.Code.MISSING, "/" + INPUT, null, AcceptedLine.INPUT.with()));
        }
        return new BulkItem(
                scan.key,
                scan.faults.isEmpty()
                        ? input(Arrays.copyOfRange(line, scan.start, scan.end))
                        : new RejectedLine(ProblemException.ofFaults(scan.faults, true, true)));
    }

    private RequestInput input(byte[] text) {
        return new BodyInput(text, schema, bodies);
    }

    /** The whole line is at fault, not the input within it. */
    private RequestInput broken(byte[] line) throws IOException {
        try {
            ByteScan.findNull(line);
            bodies.checkText(line);
        } catch (ProblemException refusal) {
            return new RejectedLine(refusal);
        }
        throw new IllegalStateException("a line is JSON for one parser and not for another");
    }

    /** One pass over a line. */
    private final class Scan {
        private final byte[] line;
        private final JsonParser parser;
        private final List<InputError> faults = new ArrayList<>(0);
        private @Nullable JsonNode key;
        private int start = -1;
        private int end = -1;

        Scan(byte[] line) throws IOException {
            this.line = line;
            this.parser = scanner.createParser(line);
        }

        /** Whether the first property is one of an envelope. */
        boolean isEnveloped() throws IOException {
            if (parser.nextToken() != JsonToken.START_OBJECT || parser.nextToken() != JsonToken.FIELD_NAME) {
                return false;
            }
            String first = parser.currentName();
            return first.equals(KEY) || first.equals(INPUT);
        }

        void readOn() throws IOException {
            while (parser.currentToken() == JsonToken.FIELD_NAME) {
                String name = parser.currentName();
                parser.nextToken();
                switch (name) {
                    case KEY -> readKey();
                    case INPUT -> readInput();
                    default ->
                        faults.add(new InputError(
                                InputError.Code.UNKNOWN_NAME,
                                "/" + Contract.escaped(name),
                                null,
                                Accepted.ONE_OF.with(texts("names", List.of(KEY, INPUT)))));
                }
                parser.skipChildren();
                parser.nextToken();
            }
            if (parser.nextToken() != null) {
                throw new ProblemException(ProblemType.TRAILING_TEXT, ProblemText.LINE_TEXT_BEHIND.with());
            }
        }

        private void readKey() throws IOException {
            JsonNode found = parser.currentToken() == JsonToken.VALUE_STRING
                    ? TextNode.valueOf(parser.getText())
                    : parser.currentToken().isNumeric() ? DecimalNode.valueOf(parser.getDecimalValue()) : null;
            // Most readers of JSON would take such a number for infinite when it comes back.
            boolean outOfRange =
                    found != null && (found.asText().length() > KEY_CHARS || Double.isInfinite(found.doubleValue()));
            if (found == null || outOfRange) {
                faults.add(new InputError(
                        found == null ? InputError.Code.WRONG_TYPE : InputError.Code.OUT_OF_RANGE,
                        "/" + KEY,
                        null,
                        AcceptedLine.KEY.with(arg("max", KEY_CHARS))));
            } else if (key != null) {
                throw twice(KEY);
            } else {
                key = found;
            }
        }

        private void readInput() throws IOException {
            if (end >= 0) {
                throw twice(INPUT);
            }
            start = (int) parser.currentTokenLocation().getByteOffset();
            parser.skipChildren();
            parser.finishToken();
            end = (int) parser.currentLocation().getByteOffset();
        }

        private ProblemException twice(String name) {
            return new ProblemException(
                    ProblemType.DUPLICATE_KEY, ProblemText.LINE_PROPERTY_TWICE.with(arg("name", name)));
        }

        /** Of the input it is checked when it is read. */
        private void checkEncodingAroundInput() {
            ByteScan.findNull(start < 0 ? line : Arrays.copyOf(line, start));
            if (end >= 0) {
                ByteScan.findNull(Arrays.copyOfRange(line, end, line.length));
            }
        }

        /** The input and what follows it, for an input that breaks off or goes wrong. */
        private byte[] rest() {
            return Arrays.copyOfRange(line, start, line.length);
        }
    }
}
