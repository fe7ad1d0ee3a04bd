package loomwright.service.stream;

import java.io.IOException;
import loomwright.bulk.Line;
import loomwright.bulk.LineReader;
import loomwright.bulk.LineSource;
import loomwright.list.CarStream;
import loomwright.list.CarStream.Arrived;
import loomwright.list.ListLimits;
import org.jspecify.annotations.Nullable;

/** The cars of a text whose lines arrive; each is handed on as soon as the next one begins. */
final class ArrivingCars implements LineSource {
    private final LineReader lines;
    private final CarStream cars = new CarStream(ListLimits.defaults());
    private final int longest;
    private @Nullable Line next;
    private long number;
    private boolean ended;

    /**
     * Cars that arrive.
     *
     * @param first the number of the first car
     * @param longest most bytes of a car
     */
    ArrivingCars(LineReader lines, long first, int longest) {
        this.lines = lines;
        this.number = first;
        this.longest = longest;
    }

    @Override
    public boolean isReady() throws IOException {
        while (next == null && lines.isReady()) {
            advance();
        }
        return next != null;
    }

    @Override
    public @Nullable Line next() throws IOException {
        while (next == null && !(ended && cars.isEmpty())) {
            advance();
        }
        Line line = next;
        next = null;
        return line;
    }

    private void advance() throws IOException {
        Arrived car = cars.poll();
        if (car != null) {
            byte[] text = CarLines.written(car.name(), car.source(), car.faults());
            next = text.length > longest ? Line.tooLong(number) : Line.car(number, text);
            number++;
            return;
        }
        Line line = lines.next();
        if (line == null) {
            ended = true;
            cars.end();
        } else if (line.isTooLong()) {
            next = Line.tooLong(number);
            number++;
        } else {
            cars.add(line.text());
        }
    }
}
