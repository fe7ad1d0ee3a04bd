package loomwright.service;

import java.util.concurrent.TimeUnit;
import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings;
import loomwright.operation.PlanSolver;
import loomwright.review.PlanReview;
import loomwright.service.input.Json;
import loomwright.service.limits.ServiceLimits;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What a request for the solution or the review of the demo plan consists of. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 4, time = 2)
@Fork(1)
public class PlanBenchmark {
    private final Json json = new Json(ServiceLimits.DEFAULT);
    private final NetworkLimits limits = NetworkLimits.defaults();
    private final byte[] body;
    private final Plan plan;
    private final Answer<PlanReadings> answer;

    public PlanBenchmark() {
        try {
            body = LoadServer.demoBytes();
            plan = LoadServer.demo();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
        answer = PlanAnswer.of(plan, limits);
    }

    @Benchmark
    public Object readPlan() throws Exception {
        return json.mapper().readValue(body, Plan.class);
    }

    @Benchmark
    public Object writePlan() throws Exception {
        return json.write(plan);
    }

    @Benchmark
    public Object solveSevenSteps() {
        return new PlanSolver(limits).solve(plan);
    }

    @Benchmark
    public Object solveAndTell() {
        return PlanAnswer.of(plan, limits);
    }

    @Benchmark
    public Object writeAnswer() throws Exception {
        return json.write(answer);
    }

    @Benchmark
    public Object review() {
        return PlanReview.of(plan, BackfeedLimits.defaults(), limits, Progress.UNWATCHED);
    }
}
