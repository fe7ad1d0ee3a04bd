package loomwright.service.stream;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.bulk.Line;
import loomwright.bulk.LineReader;
import loomwright.bulk.LineSource;
import loomwright.bulk.ListFiles;
import loomwright.list.Cars;
import loomwright.list.Cars.Car;
import loomwright.list.ListFile;
import loomwright.list.ListLimits;
import loomwright.list.ListSource;
import loomwright.service.http.Request;
import loomwright.service.input.Multipart;
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
    private record Cells(@Nullable String name, @Nullable ListSource source, List<Fault> faults) {}

    /** A fault as a line holds it, with the accepted values in words already. */
    private record Fault(
            InputError.Code code,
            String pointer,
            @Nullable String value,
            String accepted,
            @Nullable String place,
            InputError.@Nullable Cell cell,
            @Nullable String suggestion,
            boolean described) {
        static Fault of(InputError error) {
            return new Fault(
                    error.code(),
                    error.pointer(),
                    error.value(),
                    error.accepted().text(),
                    error.place(),
                    error.cell(),
                    error.suggestion(),
                    error.described());
        }

        InputError error() {
            return new InputError(
                    code,
                    pointer,
                    value,
                    Accepted.THE_TEXT.with(arg("text", accepted)),
                    place,
                    cell,
                    suggestion,
                    described);
        }
    }

    @Override
    public boolean isNamedSo(String name) {
        return ListFile.isNamedSo(name);
    }

    @Override
    public @Nullable LineSource cars(InputStream in, int longest, boolean evenWithoutTable) throws IOException {
        byte[] head = in.readNBytes(longest + 1);
        if (!evenWithoutTable && !ListFile.hasTable(head)) {
            return null;
        }
        if (head.length <= longest) {
            return cars(head, null, 1, longest);
        }
        return ListFile.isWorkbook(head)
                ? source(List.of(Line.tooLong(1)))
                : arriving(new SequenceInputStream(new ByteArrayInputStream(head), in), 1, longest);
    }

    /**
     * Takes a file of lists apart.
     *
     * @param name what to call the car of a list that names none
     * @param first the number of the first car
     * @param longest most bytes of a car
     */
    static LineSource cars(byte[] content, @Nullable String name, long first, int longest) {
        ListLimits limits = ListLimits.defaults();
        if (ListFile.isLong(content, limits)) {
            return arriving(new ByteArrayInputStream(content), first, longest);
        }
        List<Line> lines = new ArrayList<>();
        try {
            for (Car car : Cars.of(ListFile.read(content, limits))) {
                lines.add(Line.car(
                        first + lines.size(),
                        written(car.name() == null ? name : car.name(), car.source(), List.of())));
            }
        } catch (RejectedInput rejected) {
            lines.add(Line.car(first, written(name, null, rejected.faults())));
        }
        return source(lines);
    }

    /** The cars of a text, while it arrives. */
    public static LineSource arriving(InputStream text, long first, int longest) {
        return new ArrivingCars(new LineReader(text, longest), first, longest);
    }

    static byte[] written(@Nullable String name, @Nullable ListSource source, List<InputError> faults) {
        try {
            return CELLS.writeValueAsBytes(
                    new Cells(name, source, faults.stream().map(Fault::of).toList()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Lines that are all there, in their order. */
    private static LineSource source(List<Line> lines) {
        Queue<Line> waiting = new ArrayDeque<>(lines);
        return new LineSource() {
            @Override
            public boolean isReady() {
                return !waiting.isEmpty();
            }

            @Override
            public @Nullable Line next() {
                return waiting.poll();
            }
        };
    }

    /** The cars of several files, one file after the other. */
    static LineSource files(List<Multipart.Field> files, long first, int longest) throws IOException {
        List<Line> lines = new ArrayList<>();
        for (Multipart.Field file : files) {
            String name = file.fileName() == null ? file.name() : carOf(file.fileName());
            LineSource cars = cars(file.content(), name, first + lines.size(), longest);
            for (Line car = cars.next(); car != null; car = cars.next()) {
                lines.add(car);
            }
        }
        return source(lines);
    }

    /** The name of a file without its folder and ending, for the car in it. */
    private static String carOf(String fileName) {
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
            List<InputError> faults = cells.faults().stream().map(Fault::error).toList();
            return new BulkItem(key, new RejectedLine(ProblemException.ofFaults(faults, true, false)));
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
