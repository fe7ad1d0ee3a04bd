package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Feature 15: the same network written in another order has the same figures, at dead ends behind diodes too. */
class F15NamesAndOrderTest {
    /** Resistors, batteries and diodes. */
    private static Element element(Random random, String id, int from, int to) {
        return switch (random.nextInt(6)) {
            case 0 -> new OneWay(id, from, to, 0.7, 0.01, Double.POSITIVE_INFINITY);
            case 1 -> new OneWay(id, from, to, random.nextDouble(), 0, Double.POSITIVE_INFINITY);
            case 2 -> new VoltageSource(id, from, to, 12 * random.nextGaussian(), 1);
            default -> new Resistor(id, from, to, Math.pow(10, -1 + 3 * random.nextDouble()));
        };
    }

    @Property(seed = "151", tries = 5000)
    void everyNodeHasTheSameVoltage(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = RandomNetwork.of(seed, F15NamesAndOrderTest::element);
        int n = network.nodes().size();
        Random random = new Random(seed);
        List<Integer> place = new ArrayList<>(IntStream.range(0, n).boxed().toList());
        Collections.shuffle(place, random);
        List<Element> shuffled = new ArrayList<>(network.elements());
        Collections.shuffle(shuffled, random);
        List<Element> moved = shuffled.stream().map(e -> moved(e, place)).toList();
        NetworkSolver solver = new NetworkSolver(NetworkLimits.defaults());
        Solution before = solver.solve(network);
        Solution after = solver.solve(new Network(network.nodes(), moved, place.get(0)));
        assertThat(after.solved()).isEqualTo(before.solved());
        for (int node = 0; before.solved() && node < n; node++) {
            int there = place.get(node);
            assertThat(after.floating(there)).as("node %d floats", node).isEqualTo(before.floating(node));
            if (!before.floating(node)) {
                assertThat(after.voltageV(there)).as("node %d", node).isCloseTo(before.voltageV(node), within(1e-7));
            }
        }
    }

    /** The second method: leaks in earnest, 1e9 ohm from each node to the reference. Then nothing floats. */
    @Property(seed = "152", tries = 5000)
    void deadEndsStandWhereTheLeastLeakDrawsThem(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = RandomNetwork.of(seed, F15NamesAndOrderTest::element);
        List<Element> leaking = new ArrayList<>(network.elements());
        for (int node = 1; node < network.nodes().size(); node++) {
            leaking.add(new Resistor("leak " + node, node, 0, 1e9));
        }
        NetworkSolver solver = new NetworkSolver(NetworkLimits.defaults());
        Solution solution = solver.solve(network);
        Solution leaked = solver.solve(new Network(network.nodes(), leaking, 0));
        for (int node = 0; solution.solved() && node < network.nodes().size(); node++) {
            if (!solution.floating(node)) {
                assertThat(solution.voltageV(node)).as("node %d", node).isCloseTo(leaked.voltageV(node), within(1e-4));
            }
        }
    }

    private static Element moved(Element e, List<Integer> place) {
        int from = place.get(e.from());
        int to = place.get(e.to());
        if (e instanceof Resistor r) {
            return new Resistor(r.id(), from, to, r.resistanceOhm());
        }
        if (e instanceof VoltageSource s) {
            return new VoltageSource(s.id(), from, to, s.voltageV(), s.resistanceOhm());
        }
        OneWay o = (OneWay) e;
        return new OneWay(o.id(), from, to, o.thresholdV(), o.slopeOhm(), o.limitA());
    }
}
