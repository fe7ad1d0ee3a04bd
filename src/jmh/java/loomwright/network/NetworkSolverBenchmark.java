package loomwright.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
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

/** Time of one solution, structure analysis and self-check included, by size and shape of the network. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 4, time = 1)
@Fork(1)
public class NetworkSolverBenchmark {
    @Param({"10", "60", "1000", "10000"})
    public int nodes;

    @Param({"LADDER", "GRID"})
    public Shape shape = Shape.LADDER;

    private Network network = new Network(List.of("0"), List.of(), 0);
    private final NetworkSolver solver = new NetworkSolver(NetworkLimits.defaults());

    /** How the nodes hang together. */
    public enum Shape {
        LADDER,
        GRID
    }

    @Setup
    public void setUp() {
        Random random = new Random(1);
        List<Element> elements = new ArrayList<>();
        int side = shape == Shape.GRID ? (int) Math.round(Math.sqrt(nodes)) : 2;
        elements.add(new VoltageSource("s", 0, nodes - 1, 12, 0.01));
        for (int node = 0; node < nodes; node++) {
            if (node % side != side - 1 && node + 1 < nodes) {
                elements.add(new Resistor("e" + node, node, node + 1, Math.pow(10, 2 * random.nextGaussian())));
            }
            if (node + side < nodes) {
                elements.add(new Resistor("s" + node, node, node + side, Math.pow(10, 2 * random.nextGaussian())));
            }
        }
        network = new Network(IntStream.range(0, nodes).mapToObj(i -> "n" + i).toList(), elements, 0);
    }

    @Benchmark
    public Solution solve() {
        return solver.solve(network);
    }
}
