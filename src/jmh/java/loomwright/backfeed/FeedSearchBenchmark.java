package loomwright.backfeed;

import java.util.concurrent.TimeUnit;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Time of one whole search, by number of free switches; divide by 2 to that number for the cost of a combination. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2)
@Measurement(iterations = 3)
@Fork(1)
public class FeedSearchBenchmark {
    @Param({"8", "12", "16"})
    public int switches;

    private Plan plan = RandomHarness.of(1, 1, 0);
    private final BackfeedSearch search =
            new BackfeedSearch(new BackfeedLimits(262_144, 1, 1, 1, 600_000), NetworkLimits.defaults());

    @Setup
    public void setUp() {
        plan = RandomHarness.of(3, switches, 3);
    }

    @Benchmark
    public BackfeedReport find() {
        return search.find(plan, Progress.UNWATCHED);
    }
}
