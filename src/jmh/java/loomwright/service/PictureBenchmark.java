package loomwright.service;

import java.util.List;
import java.util.concurrent.TimeUnit;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
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
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Pictures and the bench sheet of the demo plan. Wanted: 30 ms as SVG, 300 ms as PNG for a post. */
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
            new DiagramOptions(null, List.of(Marks.NONE), null, null, null, null, null, null, null);
    private final Plan plan;
    private final Svg picture;

    public PictureBenchmark() {
        try {
            plan = LoadServer.demo();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
        picture = svg();
    }

    @Benchmark
    public Svg svg() {
        return DrawingSvg.of(Diagram.of(plan, plain, BackfeedLimits.defaults(), limits, Progress.UNWATCHED), "diagram");
    }

    @Benchmark
    public byte[] pngForPost() {
        return Png.ofWidth(picture, POST_PX);
    }

    @Benchmark
    public Object benchSheet() {
        return PrintedSheet.of(
                new SheetQuestion(null, plan, null, Step.RUN, SheetQuestion.Document.BENCH),
                BackfeedLimits.defaults(),
                limits,
                Progress.UNWATCHED);
    }
}
