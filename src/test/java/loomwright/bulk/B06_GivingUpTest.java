package loomwright.bulk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import loomwright.answer.Progress;
import org.junit.jupiter.api.Test;

/** Nobody works for a reader who has gone: he is noticed while an answer is long in coming, and lines begun are given up. */
class B06_GivingUpTest {
    private static BulkRun run(String lines, BiFunction<Line, Progress, LineAnswer> function, OutputStream out) {
        return new BulkRun(
                new LineReader(Runs.stream(lines), 1_000),
                1,
                function,
                out,
                FairExecutor.of(Runs.LIMITS.threads()).share(),
                Runs.LIMITS);
    }

    private static LineAnswer workForEver(Progress progress) {
        while (true) {
            progress.at(0, 1);
        }
    }

    @Test
    void aLineBegunIsGivenUpWhenTheAnswersCannotBeWritten() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CompletableFuture<Throwable> ended = new CompletableFuture<>();
        BiFunction<Line, Progress, LineAnswer> function = (line, progress) -> {
            try {
                if (line.number() == 1) {
                    begun.await();
                    return Runs.echo(line);
                }
                begun.countDown();
                return workForEver(progress);
            } catch (InterruptedException | CancellationException e) {
                ended.complete(e);
                throw new CancellationException(e.getMessage());
            }
        };
        OutputStream gone = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("broken pipe");
            }
        };
        assertThatThrownBy(() -> run("a\nb\n", function, gone).run(() -> false)).hasMessage("broken pipe");
        assertThat(ended.get(60, TimeUnit.SECONDS)).isInstanceOf(CancellationException.class);
    }

    @Test
    void theBeginningOfAnAnswerThatIsLongInComingIsSentByteByByte() throws IOException {
        CountDownLatch seen = new CountDownLatch(3);
        StringBuilder written = new StringBuilder();
        OutputStream out = new OutputStream() {
            @Override
            public void write(int b) {
                throw new AssertionError("bytes must pass in blocks, not one by one");
            }

            @Override
            public void write(byte[] bytes) {
                written.append(new String(bytes, StandardCharsets.UTF_8)).append('|');
                seen.countDown();
            }
        };
        BiFunction<Line, Progress, LineAnswer> function = (line, progress) -> {
            try {
                seen.await();
            } catch (InterruptedException e) {
                throw new CancellationException("interrupted");
            }
            return Runs.echo(line);
        };
        run("abc\n", function, out)
                .showingLife(line -> "1:abc".getBytes(StandardCharsets.UTF_8), 1)
                .run(() -> false);
        assertThat(written.toString()).startsWith("1|:|a|");
        assertThat(written.toString().replace("|", "")).isEqualTo("1:abc\n");
    }

    @Test
    void aReaderWhoGoesWhileAnAnswerIsWorkedOutIsNoticedByASignOfLife() throws Exception {
        CompletableFuture<Throwable> ended = new CompletableFuture<>();
        CountDownLatch begun = new CountDownLatch(1);
        OutputStream gone = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                awaitUninterrupted(begun);
                throw new IOException("broken pipe");
            }
        };
        BiFunction<Line, Progress, LineAnswer> function = (line, progress) -> {
            begun.countDown();
            try {
                return workForEver(progress);
            } catch (CancellationException e) {
                ended.complete(e);
                throw e;
            }
        };
        assertThatThrownBy(() -> run("a\n", function, gone)
                        .showingLife(line -> new byte[] {'1', ':'}, 1)
                        .run(() -> false))
                .hasMessage("broken pipe");
        assertThat(ended.get(60, TimeUnit.SECONDS)).hasMessage("the run is over");
    }

    private static void awaitUninterrupted(CountDownLatch latch) {
        try {
            assertThat(latch.await(60, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }
}
