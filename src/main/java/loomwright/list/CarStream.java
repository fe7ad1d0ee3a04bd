package loomwright.list;

import static loomwright.message.Arg.arg;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.Arg;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * The cars of a list of any length, told apart while its lines arrive. A car is complete when the row of another one comes, so
 * the rows of one car must stand together, and what belongs to all cars above the first of them.
 *
 * <p>No more than one car is held, and what belongs to all; and the names of all cars, because one that comes again is no new
 * car.
 */
public final class CarStream {

    private final ListLimits limits;
    private final Deque<Arrived> complete = new ArrayDeque<>();
    private final CarColumn column = new CarColumn();
    private final Set<String> answered = new HashSet<>();

    private final List<Sheet.Row> ofAll = new ArrayList<>();
    private final List<Sheet.Row> ofCar = new ArrayList<>();
    private @Nullable String car;
    private Sheet.@Nullable Row headings;
    /** Whether the headings stand among the rows of all, and among those of the car. */
    private boolean headsAll;

    private boolean headsCar;
    /** What cannot be taken is reported once for the rows that stand together; by the key of its car, or empty for all cars. */
    private @Nullable String refused;

    private final List<String> sentences = new ArrayList<>();
    private @Nullable Character separator;
    /** Lines above the first table: nothing tells yet where a cell ends. */
    private final List<String> above = new ArrayList<>();
    /** A row whose quoted cell goes on in the next line. */
    private final StringBuilder begun = new StringBuilder();

    private int begunAt;
    private int number;

    public CarStream(ListLimits limits) {
        this.limits = limits;
    }

    /**
     * A car that is complete, or what is wrong with a part of the list.
     *
     * @param name of the car; absent for what is of no car
     * @param source absent if it cannot be taken
     * @param faults empty if it can
     */
    public record Arrived(@Nullable String name, @Nullable ListSource source, List<InputError> faults) {}

    /** The next car that is complete; null if none is. */
    public @Nullable Arrived poll() {
        return complete.poll();
    }

    /** Whether no car is complete. */
    public boolean isEmpty() {
        return complete.isEmpty();
    }

    /** Takes the next line, without its end. */
    public void add(byte[] line) {
        number++;
        if (number == 1 && isUtf16(line)) {
            complete.add(refusal(null, AcceptedList.UTF8));
        }
        String written = TextList.decode(line);
        if (separator != null) {
            addRow(written, separator);
            return;
        }
        if (above.size() < limits.rows()) {
            above.add(written);
        }
        separator = TextList.separatorOf(written).orElse(null);
        if (separator != null) {
            number = 0;
            for (String each : above) {
                number++;
                addRow(each, separator);
            }
            above.clear();
        }
    }

    private void addRow(String line, char between) {
        if (begun.isEmpty()) {
            begunAt = number;
        } else {
            begun.append('\n');
        }
        begun.append(line);
        String row = begun.toString();
        if (TextList.isSentence(row, between)) {
            begun.setLength(0);
            if (answered.isEmpty() && sentences.size() < limits.rows()) {
                sentences.add(row.strip());
            }
            return;
        }
        if (!TextList.endsInsideQuotes(row, between)) {
            begun.setLength(0);
            try {
                TextList.row(row, begunAt, between, limits).ifPresent(this::take);
            } catch (RejectedInput rejected) {
                complete.add(new Arrived(car, null, rejected.faults()));
            }
        } else if (row.length() > limits.cellChars()) {
            refuseOpenQuote();
        }
    }

    private void refuseOpenQuote() {
        begun.setLength(0);
        complete.add(new Arrived(car, null, TextList.openQuote().faults()));
    }

    /** Completes the last car. */
    public void end() {
        if (!begun.isEmpty()) {
            refuseOpenQuote();
        }
        if (car != null) {
            closeCar();
        } else if (answered.isEmpty()) {
            above.forEach(line -> ofAll.add(new Sheet.Row(ofAll.size() + 1, List.of(line))));
            complete.add(new Arrived(null, source(ofAll), List.of()));
        }
    }

    private static boolean isUtf16(byte[] line) {
        return line.length > 1 && (line[0] & 0xfe) == 0xfe && (line[1] & 0xfe) == 0xfe;
    }

    private void take(Sheet.Row row) {
        if (row.isEmpty()) {
            return;
        }
        String owner = column.owner(row);
        if (owner != null) {
            ofCar(owner, row);
            return;
        }
        if (ListTables.isHeader(row)) {
            headings = row;
            headsAll = false;
            headsCar = false;
            refused = null;
            if (column.isThere()) {
                return;
            }
        }
        Sheet.Row heads = headings;
        if (heads != null && !headsAll) {
            headsAll = true;
            ofAll(heads);
        }
        if (!row.equals(heads)) {
            ofAll(row);
        }
    }

    private void ofAll(Sheet.Row row) {
        if (!answered.isEmpty()) {
            refuse(null, "", row, AcceptedList.ALL_FIRST);
        } else if (ofAll.size() == limits.rows()) {
            refuse(null, "", row, AcceptedList.TOGETHER);
        } else {
            ofAll.add(row);
            if (car != null) {
                ofCar.add(row);
            }
        }
    }

    private void ofCar(String name, Sheet.Row row) {
        String key = CarColumn.key(name);
        if (car == null || !key.equals(CarColumn.key(car))) {
            if (car != null) {
                closeCar();
            }
            if (answered.contains(key)) {
                refuse(name, key, row, AcceptedList.TOGETHER);
                return;
            }
            refused = null;
            car = name;
            ofCar.addAll(ofAll);
        }
        Sheet.Row heads = headings;
        if (heads != null && !headsCar) {
            ofCar.add(heads);
            headsCar = true;
        }
        if (ofCar.size() <= limits.rows()) {
            ofCar.add(row);
        }
    }

    private void closeCar() {
        String name = String.valueOf(car);
        answered.add(CarColumn.key(name));
        complete.add(
                ofCar.size() > limits.rows()
                        ? refusal(name, AcceptedList.ROWS, arg("max", limits.rows()))
                        : new Arrived(name, source(ofCar), List.of()));
        ofCar.clear();
        car = null;
        headsCar = false;
    }

    private ListSource source(List<Sheet.Row> rows) {
        return new ListSource(List.of(new Sheet("", rows)), sentences);
    }

    private void refuse(@Nullable String name, String key, Sheet.Row row, MessageCode accepted) {
        if (!key.equals(refused)) {
            refused = key;
            InputError fault = new InputError(InputError.Code.OVER_LIMIT, "", name, accepted.with());
            CellRef at = new CellRef("", row.number(), "");
            complete.add(new Arrived(name, null, List.of(fault.at(at.inWords(), at.cell()))));
        }
    }

    private static Arrived refusal(@Nullable String name, MessageCode accepted, Arg... arguments) {
        return new Arrived(
                name, null, List.of(new InputError(InputError.Code.OVER_LIMIT, "", null, accepted.with(arguments))));
    }
}
