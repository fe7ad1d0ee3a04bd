package loomwright.bulk;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Small runs for tests. */
final class Runs {
    static final BulkLimits LIMITS = new BulkLimits(3, 5, 1_000_000, 1, 1_000);

    private Runs() {}

    /** Lines "1" to {@code count}. */
    static String numbers(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(i -> i + "\n").collect(Collectors.joining());
    }

    static String text(Line line) {
        return new String(line.text(), StandardCharsets.UTF_8);
    }

    /** Answers number and text of a line. */
    static LineAnswer echo(Line line) {
        return LineAnswer.answer((line.number() + ":" + text(line) + "\n").getBytes(StandardCharsets.UTF_8), List.of());
    }

    static InputStream stream(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    static Summary run(InputStream in, Function<Line, LineAnswer> function, OutputStream out) throws IOException {
        return of(in, 1, function, out).run(() -> false);
    }

    static BulkRun of(InputStream in, long fromLine, Function<Line, LineAnswer> function, OutputStream out) {
        return new BulkRun(
                new LineReader(in, 1_000),
                fromLine,
                (line, progress) -> function.apply(line),
                out,
                FairExecutor.of(LIMITS.threads()).share(),
                LIMITS);
    }
}
