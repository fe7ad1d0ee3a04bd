package loomwright.review;

import java.util.concurrent.TimeUnit;
import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedSearch;
import loomwright.circuit.Plan;
import loomwright.circuit.WholeCar;
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

/** Time of a search and of a review of a whole car of so many parts, with 10 free switches and three relays that stay in. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2)
@Measurement(iterations = 3)
@Fork(1)
public class WholeCarBenchmark {
    private static final BackfeedLimits LIMITS = new BackfeedLimits(262_144, 64, 6, 40, 3_600_000);

    @Param({"60", "240"})
    public int parts;

    private Plan plan = WholeCar.of(40, 1, 0);

    @Setup
    public void setUp() {
        plan = WholeCar.of(parts, 10, 3);
    }

    @Benchmark
    public BackfeedSearch.Searched searchWithoutRemedies() {
        return new BackfeedSearch(LIMITS.withoutRemedies(), NetworkLimits.defaults()).search(plan, Progress.UNWATCHED);
    }

    @Benchmark
    public Answer<ReviewReport> review() {
        return PlanReview.of(plan, LIMITS, NetworkLimits.defaults(), Progress.UNWATCHED);
    }
}
