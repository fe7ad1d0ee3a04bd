package loomwright.answer;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Pieces of work that do not depend on each other, the first ones begun first, on as many threads as are idle, the caller's among
 * them. What comes of a piece does not depend on their number.
 */
public final class SharedWork {
    private final int pieces;
    private final Progress told;
    private final AtomicInteger next = new AtomicInteger();
    private int done;

    private SharedWork(int pieces, Progress told) {
        this.pieces = pieces;
        this.told = told;
    }

    /**
     * Does the pieces, 0 to before {@code pieces}.
     *
     * @param worker makes what does the pieces of one thread; after an {@link OutOfTime} of it no other piece is begun
     * @param told hears how many are done, from one thread at a time; an {@link OutOfTime} of it has the same effect
     * @return what came of the pieces that were done, in their order
     */
    public static <R> List<R> inOrder(int pieces, Supplier<IntFunction<R>> worker, Progress told) {
        SharedWork work = new SharedWork(pieces, told);
        @Nullable Object[] results = new Object[pieces];
        IntStream.range(0, Math.min(pieces, Runtime.getRuntime().availableProcessors()))
                .parallel()
                .forEach(thread -> work.run(worker.get(), results));
        @SuppressWarnings("unchecked") // Only what a worker handed back was put in.
        List<R> found =
                (List<R>) Arrays.stream(results).filter(Objects::nonNull).toList();
        return found;
    }

    private <R> void run(IntFunction<R> worker, @Nullable Object[] results) {
        boolean goesOn = false;
        try {
            for (int i = next.getAndIncrement(); i < pieces; i = next.getAndIncrement()) {
                results[i] = worker.apply(i);
                tellOneMore();
            }
            goesOn = true;
        } catch (OutOfTime over) {
            // What was done is handed back, and the caller sees what is left.
        } finally {
            if (!goesOn) {
                // However one thread ends before the work does, the others begin nothing more.
                next.set(pieces);
            }
        }
    }

    private synchronized void tellOneMore() {
        done++;
        told.at(done, pieces);
    }
}
