package loomwright.bulk;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import loomwright.answer.Progress;
import org.jspecify.annotations.Nullable;

/**
 * Answers line after line, in order.
 *
 * <p>One thread reads and writes, the threads of its {@link FairExecutor.Share} work. No more than a window of lines is read ahead
 * of the answers, so a reader who does not read holds up the sender. What is answered is sent on before the run waits for
 * anything. When the answers can no longer be written, the lines begun are given up at their next report of progress.
 */
public final class BulkRun {
    private final LineSource source;
    private final BiFunction<Line, Progress, LineAnswer> function;
    private final OutputStream out;
    private final FairExecutor.Share share;
    private final BulkLimits limits;
    private final Deque<Asked> window = new ArrayDeque<>();
    private long windowBytes;
    private boolean unsent;
    private final SummaryCounter tally;
    private final long fromLine;
    private Function<Line, byte[]> beginning = line -> new byte[0];
    private long signMs = Long.MAX_VALUE;
    private volatile boolean over;

    private record Asked(Line line, Future<LineAnswer> answer) {
        int bytes() {
            return line.text().length;
        }
    }

    /** The lines cannot be read to their end. */
    private static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;
        private final IOException why;

        Unreadable(IOException why) {
            super(why);
            this.why = why;
        }
    }

    /**
     * A run.
     *
     * @param function answers a line in a thread of {@code share}; must not throw, but for what the progress it reports
     *     throws when the run is over
     * @param fromLine lines before this one are passed over
     */
    public BulkRun(
            LineSource source,
            long fromLine,
            BiFunction<Line, Progress, LineAnswer> function,
            OutputStream out,
            FairExecutor.Share share,
            BulkLimits limits) {
        this.source = source;
        this.fromLine = fromLine;
        this.function = function;
        this.out = out;
        this.share = share;
        this.limits = limits;
        this.tally = new SummaryCounter(fromLine);
    }

    /**
     * Writes the beginning of an answer that is long in coming byte by byte, so that a reader who has gone is noticed
     * before it comes.
     *
     * @param beginningOf what the answer to a line begins with, whatever it is
     */
    public BulkRun showingLife(Function<Line, byte[]> beginningOf, int everyMs) {
        beginning = beginningOf;
        signMs = everyMs;
        return this;
    }

    /**
     * Answers all lines, or those read until reading fails or a stop is asked for.
     *
     * @param stop is asked before each line
     * @throws IOException if the answers cannot be written; the work under way is given up then
     */
    public Summary run(BooleanSupplier stop) throws IOException {
        try {
            while (!stop.getAsBoolean()) {
                Line line = read();
                if (line == null) {
                    answerAll();
                    return tally.summary(true, null);
                }
                take(line);
                while (isFull() || isOldestDone()) {
                    answerOldest();
                }
            }
            answerAll();
            return tally.summary(false, null);
        } catch (Unreadable broken) {
            answerAll();
            return tally.summary(false, broken.why);
        } finally {
            over = true;
            share.clear();
            window.forEach(asked -> asked.answer().cancel(true));
        }
    }

    private @Nullable Line read() throws IOException, Unreadable {
        if (!isReady()) {
            answerAll();
            send();
        }
        try {
            return source.next();
        } catch (IOException e) {
            throw new Unreadable(e);
        }
    }

    private boolean isReady() throws Unreadable {
        try {
            return source.isReady();
        } catch (IOException e) {
            throw new Unreadable(e);
        }
    }

    private void take(Line line) {
        tally.read(line);
        if (line.number() < fromLine) {
            tally.passOver();
        } else if (line.isBlank()) {
            tally.blank();
        } else {
            window.add(new Asked(line, share.submit(() -> function.apply(line, this::goOn))));
            windowBytes += line.text().length;
        }
    }

    private void goOn(long done, long of) {
        if (over) {
            throw new CancellationException("the run is over");
        }
    }

    private boolean isFull() {
        return window.size() >= limits.windowLines() || windowBytes > limits.windowBytes();
    }

    private boolean isOldestDone() {
        Asked oldest = window.peek();
        return oldest != null && oldest.answer().isDone();
    }

    private void answerAll() throws IOException {
        while (!window.isEmpty()) {
            answerOldest();
        }
    }

    private void answerOldest() throws IOException {
        if (!isOldestDone()) {
            send();
        }
        Asked oldest = window.remove();
        windowBytes -= oldest.bytes();
        try {
            LineAnswer answer = write(oldest);
            unsent = true;
            tally.answered(answer);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("interrupted");
        } catch (ExecutionException e) {
            throw new IllegalStateException("a line was not answered", e.getCause());
        }
    }

    private LineAnswer write(Asked oldest) throws IOException, InterruptedException, ExecutionException {
        int begun = 0;
        while (true) {
            try {
                LineAnswer answer = oldest.answer().get(signMs, TimeUnit.MILLISECONDS);
                byte[] text = answer.text();
                out.write(begun == 0 ? text : Arrays.copyOfRange(text, begun, text.length));
                return answer;
            } catch (TimeoutException stillWorking) {
                byte[] known = beginning.apply(oldest.line());
                if (begun < known.length) {
                    out.write(new byte[] {known[begun]});
                    out.flush();
                    begun++;
                }
            }
        }
    }

    private void send() throws IOException {
        if (unsent) {
            out.flush();
            unsent = false;
        }
    }
}
