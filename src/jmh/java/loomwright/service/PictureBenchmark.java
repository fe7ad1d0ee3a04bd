package loomwright.service;

import java.util.List;
import java.util.concurrent.TimeUnit;
import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.WholeCar;
import loomwright.drawing.Png;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Diagram;
import loomwright.drawing.diagram.DiagramOptions;
import loomwright.drawing.diagram.DiagramOptions.Marks;
import loomwright.drawing.diagram.DrawingSvg;
import loomwright.drawing.sheet.PrintedSheet;
import loomwright.drawing.sheet.SheetQuestion;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import loomwright.review.PlanReview;
import loomwright.review.ReviewReport;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Pictures and bench sheets. Wanted: 30 ms for the demo plan as SVG, 300 ms as PNG for a post, 500 ms for 150 wires as SVG; the
 * sheet of a change no more than 1.5 times one review and one picture of each plan.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 4, time = 2)
@Fork(1)
public class PictureBenchmark {
    private static final double POST_PX = 1000;

    private final NetworkLimits limits = NetworkLimits.defaults();
    private final DiagramOptions plain =
            new DiagramOptions(null, List.of(Marks.NONE), null, null, null, null, null, null, null, null);
    private final Plan plan = Plans.example("sandpiper-as-built");
    private final Plan after = Plans.example("sandpiper-bypass-relay");

    /** Some 150 wires. */
    private final Plan large = WholeCar.of(88, 10, 3);

    private final Svg picture = svg();

    @Benchmark
    public Svg svg() {
        return svg(plan);
    }

    @Benchmark
    public Svg svgOfLargePlan() {
        return svg(large);
    }

    private Svg svg(Plan drawn) {
        return DrawingSvg.of(
                Diagram.of(drawn, plain, BackfeedLimits.defaults(), limits, Progress.UNWATCHED), "diagram");
    }

    @Benchmark
    public Answer<ReviewReport> review() {
        return PlanReview.of(after, BackfeedLimits.defaults(), limits, Progress.UNWATCHED);
    }

    @Benchmark
    public byte[] pngForPost() {
        return Png.ofWidth(picture, POST_PX);
    }

    @Benchmark
    public Answer<PrintedSheet> benchSheet() {
        return sheet(null);
    }

    @Benchmark
    public Answer<PrintedSheet> benchSheetOfChange() {
        return sheet(after);
    }

    private Answer<PrintedSheet> sheet(@Nullable Plan changed) {
        return PrintedSheet.of(
                new SheetQuestion(null, plan, changed, Step.RUN, SheetQuestion.Document.BENCH),
                BackfeedLimits.defaults(),
                limits,
                Progress.UNWATCHED);
    }
}
