package loomwright.service.stream;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.bulk.Line;
import loomwright.bulk.LineSource;
import loomwright.bulk.ListFiles;
import loomwright.list.Cars;
import loomwright.list.Cars.Car;
import loomwright.list.ListFile;
import loomwright.list.ListLimits;
import loomwright.list.ListSource;
import loomwright.service.http.Request;
import loomwright.service.input.QuestionOfLists;
import loomwright.service.input.RejectedLine;
import loomwright.service.problem.ProblemException;
import loomwright.service.stream.BulkOperations.BulkOperation;
import org.jspecify.annotations.Nullable;

/**
 * The cars of lists, each answered like a line. A car travels as a line whose text is its cells, so that what waits counts
 * with its size.
 */
public final class CarLines implements LineInputs, ListFiles {
    private static final JsonMapper CELLS = new JsonMapper();

    private final BulkOperation operation;
    private final Request.Reading reading;

    public CarLines(BulkOperation operation, Request.Reading reading) {
        this.operation = operation;
        this.reading = reading;
    }

    /** What travels: the cells of a car, or what is wrong with its whole file. */
    private record Cells(@Nullable String name, @Nullable ListSource source, List<InputError> faults) {}

    @Override
    public boolean isNamedSo(String name) {
        return ListFile.isNamedSo(name);
    }

    @Override
    public boolean hasTable(byte[] content) {
        return ListFile.hasTable(content);
    }

    @Override
    public List<byte[]> cars(byte[] content) {
        return cars(content, null);
    }

    /**
     * Takes a file of lists apart.
     *
     * @param name what to call the car of a list that names none
     */
    static List<byte[]> cars(byte[] content, @Nullable String name) {
        List<byte[]> lines = new ArrayList<>();
        try {
            for (Car car : Cars.of(ListFile.read(content, ListLimits.defaults()))) {
                lines.add(written(new Cells(car.name() == null ? name : car.name(), car.source(), List.of())));
            }
        } catch (RejectedInput rejected) {
            lines.add(written(new Cells(name, null, rejected.faults())));
        }
        return lines;
    }

    private static byte[] written(Cells cells) {
        try {
            return CELLS.writeValueAsBytes(cells);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Cars that are all there, in their order. */
    static LineSource source(List<byte[]> cars, long first) {
        Queue<byte[]> waiting = new ArrayDeque<>(cars);
        return new LineSource() {
            private long number = first - 1;

            @Override
            public boolean isReady() {
                return !waiting.isEmpty();
            }

            @Override
            public @Nullable Line next() {
                byte[] text = waiting.poll();
                number++;
                return text == null ? null : Line.car(number, text);
            }
        };
    }

    /** The name of a file without its folder and ending, for the car in it. */
    static String carOf(String fileName) {
        String name = Path.of(fileName.replace('\\', '/')).getFileName().toString();
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    @Override
    public BulkItem read(Line line) throws IOException {
        Cells cells = CELLS.readValue(line.text(), Cells.class);
        String name = cells.name();
        TextNode key =
                name == null ? null : TextNode.valueOf(name.substring(0, Math.min(name.length(), JsonLines.KEY_CHARS)));
        ListSource source = cells.source();
        if (source == null) {
            return new BulkItem(key, new RejectedLine(ProblemException.ofFaults(cells.faults(), true, false)));
        }
        try {
            return new BulkItem(
                    key,
                    QuestionOfLists.of(source, operation.post(), operation.schema(), reading.json(), reading.bodies()));
        } catch (RejectedInput rejected) {
            return new BulkItem(key, new RejectedLine(ProblemException.ofFaults(rejected.faults(), true, false)));
        }
    }
}
