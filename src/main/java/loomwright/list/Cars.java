package loomwright.list;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import org.jspecify.annotations.Nullable;

/**
 * The cars of one list, told apart by a column {@code car}.
 *
 * <p>Rows of one car need not stand together. An empty cell in that column is that of the row above, as in merged cells.
 * Tables without such a column, and rows above the first car of a table, belong to all cars.
 */
public final class Cars {
    private final List<CarRows> cars = new ArrayList<>();
    private final Map<String, CarRows> byName = new LinkedHashMap<>();

    private Cars() {}

    /**
     * One car.
     *
     * @param name as the column has it first; absent in a list without such a column
     * @param source its rows, numbered as in the whole list
     */
    public record Car(@Nullable String name, ListSource source) {}

    /** All cars in the order in which their names appear; the whole list as one if it names none. */
    public static List<Car> of(ListSource source) {
        return new Cars().split(source);
    }

    /**
     * A list for an operation on one car.
     *
     * @throws RejectedInput OVER_LIMIT if it names several
     */
    static void requireOne(ListSource source) {
        List<Car> cars = of(source);
        if (cars.size() > 1) {
            String first = cars.get(0).name() + ", " + cars.get(1).name();
            throw new RejectedInput(new InputError(
                    InputError.Code.OVER_LIMIT,
                    "",
                    first + (cars.size() > 2 ? ", …" : ""),
                    AcceptedList.ONE_CAR.with(arg("cars", cars.size()))));
        }
    }

    private List<Car> split(ListSource source) {
        List<List<Owned>> sheets = source.sheets().stream().map(this::owners).toList();
        if (cars.isEmpty()) {
            return List.of(new Car(null, source));
        }
        for (int i = 0; i < sheets.size(); i++) {
            for (CarRows car : cars) {
                List<Sheet.Row> rows = new ArrayList<>();
                for (Owned each : sheets.get(i)) {
                    if (each.car == null || each.car == car) {
                        rows.add(each.row);
                    }
                }
                car.sheets.add(new Sheet(source.sheets().get(i).name(), rows));
            }
        }
        return cars.stream()
                .map(car -> new Car(car.name, new ListSource(car.sheets, source.sentences())))
                .toList();
    }

    private static final class CarRows {
        private final String name;
        private final List<Sheet> sheets = new ArrayList<>();

        CarRows(String name) {
            this.name = name;
        }
    }

    /** A row and whose it is; of all cars if no car is named. */
    private record Owned(Sheet.Row row, @Nullable CarRows car) {}

    private List<Owned> owners(Sheet sheet) {
        List<Owned> owned = new ArrayList<>();
        CarColumn column = new CarColumn();
        for (Sheet.Row row : sheet.rows()) {
            String name = column.owner(row);
            owned.add(new Owned(row, name == null ? null : car(name)));
        }
        return owned;
    }

    private CarRows car(String name) {
        return byName.computeIfAbsent(CarColumn.key(name), key -> {
            CarRows car = new CarRows(name);
            cars.add(car);
            return car;
        });
    }
}
