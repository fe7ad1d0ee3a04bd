package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 15: the same network written in another order has the same figures, at dead ends behind diodes too. */
class F15NamesAndOrderTest {
    /** Small enough for its current not to drown in the rounding of the others, large enough to change little. */
    private static final double LEAK_OHM = 1e6;

    private static final double CHANGED_V = 0.02;

    /** Resistors, batteries and diodes. */
    private static Element simple(Random random, String id, int from, int to) {
        return switch (random.nextInt(6)) {
            case 0 -> new UnidirectionalElement(id, from, to, 0.7, 0.01, Double.POSITIVE_INFINITY);
            case 1 -> new UnidirectionalElement(id, from, to, random.nextDouble(), 0, Double.POSITIVE_INFINITY);
            case 2 -> new VoltageSource(id, from, to, 12 * random.nextGaussian(), 1);
            default -> new Resistor(id, from, to, Math.pow(10, -1 + 3 * random.nextDouble()));
        };
    }

    /** These, lamps, ideal joints and sources, regulated sources, and one-way elements with limits. */
    private static Element mixed(Random random, String id, int from, int to) {
        double limitA = random.nextInt(3) == 0 ? 0.1 + 2 * random.nextDouble() : Double.POSITIVE_INFINITY;
        return switch (random.nextInt(12)) {
            case 0 -> new UnidirectionalElement(id, from, to, 0.65, 0, limitA);
            case 1 -> new UnidirectionalElement(id, from, to, 0, 0, limitA);
            case 2 -> new UnidirectionalElement(id, from, to, -14 * random.nextDouble(), 0.05, limitA);
            case 3 -> new Lamp(id, from, to, 12, 21, 0.1);
            case 4 -> new Resistor(id, from, to, 0);
            case 5 -> new VoltageSource(id, from, to, 12, 0);
            default -> simple(random, id, from, to);
        };
    }

    @Property(seed = "151", tries = 3000)
    void everyNodeHasTheSameVoltage(@ForAll @IntRange(max = 1_000_000) int seed) {
        compareInAnotherOrder(RandomNetwork.of(seed, F15NamesAndOrderTest::simple), seed);
        compareInAnotherOrder(RandomNetwork.of(seed, F15NamesAndOrderTest::mixed), seed);
    }

    /** A microampere through a diode beside a kiloampere: no rounding, though a billionth of the largest current. */
    @Property(seed = "152", tries = 1000)
    void alsoBesideAStarter(@ForAll @IntRange(max = 1_000_000) int seed) {
        compareInAnotherOrder(besideAStarter(RandomNetwork.of(seed, F15NamesAndOrderTest::simple)), seed);
    }

    /** What is drained away through a diode does not tie a dead end elsewhere to where rounding left it. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 9e-7, 5e-7, 1e-8})
    void norDoesASmallDrainTieDeadEndsElsewhere(double drainA) {
        List<Element> elements = List.of(
                new UnidirectionalElement("regulated", 2, 1, -1.17189391549655, 0, Double.POSITIVE_INFINITY),
                new VoltageSource("source", 2, 0, 6.122209485079957, 1),
                new VoltageSource("battery", 0, 3, 12, 0),
                new Resistor("starter", 3, 0, 0.012),
                new UnidirectionalElement("diode", 3, 4, 0.7, 0.01, Double.POSITIVE_INFINITY),
                new CurrentSource("drain", 4, 0, drainA));
        for (int seed = 0; seed < 100; seed++) {
            compareInAnotherOrder(new Network(RandomNetwork.names(5), elements, 0), seed);
        }
    }

    private static Network besideAStarter(Network network) {
        int plus = network.nodes().size();
        List<Element> elements = new ArrayList<>(network.elements());
        elements.add(new VoltageSource("battery", 0, plus, 12, 0));
        elements.add(new Resistor("starter", plus, 0, 0.012));
        elements.add(new UnidirectionalElement("diode", plus, plus + 1, 0.7, 0.01, Double.POSITIVE_INFINITY));
        elements.add(new Resistor("meter", plus + 1, 0, 2e7));
        elements.add(new CurrentSource("drain", plus + 1, 0, 5e-7));
        return new Network(RandomNetwork.names(plus + 2), elements, 0);
    }

    /** The second method: leaks in earnest. Then nothing floats, and an island that floats without them is at 0 V in the mean. */
    @Property(seed = "153", tries = 3000)
    void deadEndsStandWhereTheLeastLeakDrawsThem(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = RandomNetwork.of(seed, F15NamesAndOrderTest::simple);
        List<Element> leaking = new ArrayList<>(network.elements());
        for (int node = 1; node < network.nodes().size(); node++) {
            leaking.add(new Resistor("leak " + node, node, 0, LEAK_OHM));
        }
        Solution solution = solve(network);
        Solution leaked = solve(new Network(network.nodes(), leaking, 0));
        Map<Integer, Double> sumV = new HashMap<>();
        for (int node = 0; node < network.nodes().size(); node++) {
            if (solution.floating(node)) {
                sumV.merge(solution.island(node), leaked.voltageV(node), Double::sum);
            } else {
                assertThat(solution.voltageV(node))
                        .as("node %d", node)
                        .isCloseTo(leaked.voltageV(node), within(CHANGED_V));
            }
        }
        sumV.forEach(
                (island, volts) -> assertThat(volts).as("island %d", island).isCloseTo(0, within(CHANGED_V)));
    }

    private static void compareInAnotherOrder(Network network, int seed) {
        int n = network.nodes().size();
        Random random = new Random(seed);
        List<Integer> place = new ArrayList<>(IntStream.range(0, n).boxed().toList());
        Collections.shuffle(place, random);
        List<Element> shuffled = new ArrayList<>(network.elements());
        Collections.shuffle(shuffled, random);
        List<Element> moved = shuffled.stream().map(e -> moved(e, place)).toList();
        Solution before = solve(network);
        Solution after = solve(new Network(network.nodes(), moved, place.get(0)));
        assertThat(after.solved()).isEqualTo(before.solved());
        for (int node = 0; before.solved() && node < n; node++) {
            int there = place.get(node);
            assertThat(after.floating(there)).as("node %d floats", node).isEqualTo(before.floating(node));
            if (!before.floating(node)) {
                assertThat(after.voltageV(there)).as("node %d", node).isCloseTo(before.voltageV(node), within(1e-7));
            }
        }
    }

    private static Solution solve(Network network) {
        return new NetworkSolver(NetworkLimits.defaults()).solve(network);
    }

    private static Element moved(Element e, List<Integer> place) {
        int from = place.get(e.from());
        int to = place.get(e.to());
        if (e instanceof Resistor r) {
            return new Resistor(r.id(), from, to, r.resistanceOhm());
        } else if (e instanceof VoltageSource s) {
            return new VoltageSource(s.id(), from, to, s.voltageV(), s.resistanceOhm());
        } else if (e instanceof Lamp l) {
            return new Lamp(l.id(), from, to, l.ratedV(), l.ratedW(), l.coldFraction());
        }
        if (e instanceof CurrentSource s) {
            return new CurrentSource(s.id(), from, to, s.currentA());
        }
        UnidirectionalElement o = (UnidirectionalElement) e;
        return new UnidirectionalElement(o.id(), from, to, o.thresholdV(), o.slopeOhm(), o.limitA());
    }
}
