package loomwright.service.stream;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.bulk.Line;
import loomwright.service.form.CsvRow;
import loomwright.service.http.Representations;
import loomwright.service.input.Contract.Operation;
import loomwright.service.input.Contract.Parameter;
import loomwright.service.input.Queries;
import loomwright.service.input.QueryInput;
import loomwright.service.input.RejectedLine;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/** Rows of values separated by commas, semicolons or tabs under the names of the query parameters; an empty cell is a parameter left out. */
final class CsvLines implements LineInputs {
    private final Operation operation;
    private final Queries queries;
    private final char separator;
    private final List<String> header;

    /**
     * Rows under a header.
     *
     * @param operation whose query parameters they are
     * @throws ProblemException if a column is no parameter, or stands there twice
     */
    CsvLines(byte[] header, Operation operation, Queries queries) {
        this.operation = operation;
        this.queries = queries;
        String names = text(header);
        this.separator = CsvRow.separatorOf(names);
        this.header = cells(names, separator);
        List<InputError> faults = new ArrayList<>();
        List<String> columns = columns(operation);
        for (int i = 0; i < this.header.size(); i++) {
            String name = this.header.get(i);
            if (!columns.contains(name)) {
                faults.add(new InputError(
                        InputError.Code.UNKNOWN_NAME, name, null, AcceptedLine.HEADER.with(texts("names", columns))));
            } else if (this.header.indexOf(name) < i) {
                faults.add(new InputError(InputError.Code.DUPLICATE, name, null, Accepted.EACH_ONCE.with()));
            }
        }
        if (!faults.isEmpty()) {
            throw ProblemException.ofFaults(faults, false, true);
        }
    }

    private static List<String> columns(Operation operation) {
        List<String> columns = new ArrayList<>(List.of(JsonLines.KEY));
        for (Parameter parameter : operation.parameters()) {
            String name = parameter.name();
            if (parameter.in().equals("query") && !Representations.PARAMETERS.contains(name)) {
                columns.add(name);
            }
        }
        return columns;
    }

    @Override
    public BulkItem read(Line line) {
        @Nullable JsonNode key = null;
        try {
            List<String> cells = cells(text(line.text()), separator);
            Map<String, List<String>> values = new LinkedHashMap<>();
            for (int i = 0; i < Math.min(header.size(), cells.size()); i++) {
                String name = header.get(i);
                String cell = cells.get(i);
                if (name.equals(JsonLines.KEY)) {
                    key = cell.isEmpty() ? null : TextNode.valueOf(cell);
                } else if (!cell.isEmpty()) {
                    values.put(name, List.of(cell));
                }
            }
            check(cells, key);
            return new BulkItem(key, new QueryInput(queries.parse(values, operation), queries));
        } catch (ProblemException refusal) {
            return new BulkItem(key, new RejectedLine(refusal));
        }
    }

    private void check(List<String> cells, @Nullable JsonNode key) {
        if (cells.size() > header.size()) {
            throw new ProblemException(
                    ProblemType.INVALID_INPUT,
                    ProblemText.CELLS_AND_HEADER.with(arg("cells", cells.size()), arg("columns", header.size())));
        }
        if (key != null && key.asText().length() > JsonLines.KEY_CHARS) {
            throw ProblemException.ofFaults(
                    List.of(new InputError(
                            InputError.Code.OUT_OF_RANGE,
                            JsonLines.KEY,
                            null,
                            Accepted.CHARACTERS_AT_MOST.with(arg("max", JsonLines.KEY_CHARS)))),
                    false,
                    true);
        }
    }

    private static String text(byte[] line) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(line))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new ProblemException(ProblemType.BAD_ENCODING, ProblemText.ROW_NOT_UTF8.with());
        }
    }

    private static List<String> cells(String line, char separator) {
        return CsvRow.parse(line, separator)
                .orElseThrow(() -> new ProblemException(ProblemType.INVALID_INPUT, ProblemText.OPEN_QUOTES.with()));
    }
}
