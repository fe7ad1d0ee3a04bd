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

/** Feature 7: random linear networks against the tableau formulation, and the theorems that hold for all of them. */
class F07RandomLinearNetworkTest {
    /** A tree of resistors, ideal joints and sources, and more elements across it, so that a solution exists. */
    private static Network random(int seed) {
        Random random = new Random(seed);
        int nodes = 2 + random.nextInt(12);
        List<Element> elements = new ArrayList<>();
        for (int node = 1; node < nodes; node++) {
            int other = random.nextInt(node);
            String id = "t" + node;
            elements.add(
                    switch (random.nextInt(6)) {
                        case 0 -> new Resistor(id, node, other, 0);
                        case 1 -> new VoltageSource(id, other, node, volts(random), 0);
                        case 2 -> new VoltageSource(id, node, other, volts(random), ohms(random));
                        default -> new Resistor(id, node, other, ohms(random));
                    });
        }
        int more = random.nextInt(2 * nodes);
        for (int k = 0; k < more; k++) {
            int from = random.nextInt(nodes);
            int to = (from + 1 + random.nextInt(nodes - 1)) % nodes;
            String id = "x" + k;
            elements.add(
                    switch (random.nextInt(4)) {
                        case 0 -> new CurrentSource(id, from, to, random.nextGaussian());
                        case 1 -> new VoltageSource(id, from, to, volts(random), ohms(random));
                        default -> new Resistor(id, from, to, ohms(random));
                    });
        }
        return new Network(RandomNetwork.names(nodes), elements, 0);
    }

    private static double ohms(Random random) {
        return Math.pow(10, -2 + 5 * random.nextDouble());
    }

    private static double volts(Random random) {
        return 12 * random.nextGaussian();
    }

    private static Solution solve(Network network) {
        Solution solution = new NetworkSolver(NetworkLimits.defaults()).solve(network);
        Checker.check(network, solution);
        return solution;
    }

    private static double largestA(Solution solution, Network network) {
        return IntStream.range(0, network.elements().size())
                .mapToDouble(i -> Math.abs(solution.currentA(i)))
                .max()
                .orElse(0);
    }

    @Property(seed = "71", tries = 500)
    void agreesWithTheTableau(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = random(seed);
        Solution solution = solve(network);
        int nodes = network.nodes().size();
        double[] expected = Tableau.solve(
                        nodes,
                        network.elements().stream().map(Tableau.Relation::of).toList())
                .orElseThrow();
        for (int node = 0; node < nodes; node++) {
            assertThat(solution.voltageV(node))
                    .isCloseTo(expected[node], within(1e-9 * (1 + Math.abs(expected[node]))));
        }
        double tolerance = 1e-9 * (1 + largestA(solution, network));
        for (int i = 0; i < network.elements().size(); i++) {
            assertThat(solution.currentA(i)).isCloseTo(expected[nodes + i], within(tolerance));
        }
    }

    private static Element with(Element e, double factor, boolean active) {
        double f = active ? factor : 0;
        if (e instanceof VoltageSource s) {
            return new VoltageSource(s.id(), s.from(), s.to(), f * s.voltageV(), s.resistanceOhm());
        }
        if (e instanceof CurrentSource s) {
            return new CurrentSource(s.id(), s.from(), s.to(), f * s.currentA());
        }
        return e;
    }

    @Property(seed = "72", tries = 200)
    void theSourcesSuperpose(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = random(seed);
        Solution whole = solve(network);
        double[] sum = new double[network.elements().size()];
        double scale = 1;
        for (int active = 0; active < sum.length; active++) {
            List<Element> part = new ArrayList<>();
            for (int i = 0; i < sum.length; i++) {
                part.add(with(network.elements().get(i), 1, i == active));
            }
            Solution alone = solve(new Network(network.nodes(), part, 0));
            for (int i = 0; i < sum.length; i++) {
                sum[i] += alone.currentA(i);
                scale = Math.max(scale, Math.abs(alone.currentA(i)));
            }
        }
        for (int i = 0; i < sum.length; i++) {
            assertThat(whole.currentA(i)).isCloseTo(sum[i], within(1e-9 * scale));
        }
    }

    @Property(seed = "73", tries = 200)
    void currentsScaleWithTheSources(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = random(seed);
        Solution once = solve(network);
        Solution thrice = solve(new Network(
                network.nodes(),
                network.elements().stream().map(e -> with(e, -3, true)).toList(),
                0));
        for (int i = 0; i < network.elements().size(); i++) {
            assertThat(thrice.currentA(i))
                    .isCloseTo(-3 * once.currentA(i), within(1e-9 * (1 + largestA(once, network))));
        }
    }

    /** 1 A sent in at one pair of nodes gives at another pair the voltage that it would give the other way round. */
    @Property(seed = "74", tries = 200)
    void transferResistanceIsReciprocal(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = random(seed);
        List<Element> passive = new ArrayList<>();
        network.elements().forEach(e -> passive.add(with(e, 0, false)));
        Random random = new Random(seed);
        int n = network.nodes().size();
        int a = random.nextInt(n);
        int b = (a + 1 + random.nextInt(n - 1)) % n;
        int c = random.nextInt(n);
        int d = (c + 1 + random.nextInt(n - 1)) % n;
        double there = transfer(network, passive, a, b, c, d);
        double back = transfer(network, passive, c, d, a, b);
        assertThat(there).isCloseTo(back, within(1e-9 * (1 + Math.abs(there))));
    }

    private static double transfer(Network network, List<Element> passive, int a, int b, int c, int d) {
        List<Element> elements = new ArrayList<>(passive);
        elements.add(new CurrentSource("probe", a, b, 1));
        Solution s = solve(new Network(network.nodes(), elements, 0));
        return s.voltageV(d) - s.voltageV(c);
    }

    @Property(seed = "75", tries = 200)
    void namesAndOrderAndDirectionMakeNoDifference(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = random(seed);
        int n = network.nodes().size();
        Random random = new Random(seed);
        List<Integer> place = new ArrayList<>(IntStream.range(0, n).boxed().toList());
        Collections.shuffle(place, random);
        List<Integer> order = new ArrayList<>(
                IntStream.range(0, network.elements().size()).boxed().toList());
        Collections.shuffle(order, random);
        List<Element> moved = new ArrayList<>();
        for (int i : order) {
            moved.add(moved(network.elements().get(i), place));
        }
        Solution before = solve(network);
        Solution after = solve(new Network(RandomNetwork.names(n), moved, place.get(0)));
        double tolerance = 1e-9 * (1 + largestA(before, network));
        for (int k = 0; k < order.size(); k++) {
            Element e = network.elements().get(order.get(k));
            double sign = e instanceof Resistor ? -1 : 1;
            assertThat(after.currentA(k)).isCloseTo(sign * before.currentA(order.get(k)), within(tolerance));
        }
    }

    /** At its new nodes, resistors turned end for end. */
    private static Element moved(Element e, List<Integer> place) {
        int from = place.get(e.from());
        int to = place.get(e.to());
        if (e instanceof Resistor r) {
            return new Resistor("moved " + r.id(), to, from, r.resistanceOhm());
        }
        if (e instanceof VoltageSource s) {
            return new VoltageSource("moved " + s.id(), from, to, s.voltageV(), s.resistanceOhm());
        }
        CurrentSource s = (CurrentSource) e;
        return new CurrentSource("moved " + s.id(), from, to, s.currentA());
    }
}
