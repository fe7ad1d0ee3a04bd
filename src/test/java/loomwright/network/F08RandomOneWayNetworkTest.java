package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Feature 8: random networks with one-way elements against a trial of every combination of their states. */
class F08RandomOneWayNetworkTest {
    private static final int BLOCKING = 0;
    private static final int CONDUCTING = 1;

    private static Network random(int seed, boolean ideal) {
        Random random = new Random(seed);
        int nodes = 3 + random.nextInt(5);
        List<Element> elements = new ArrayList<>();
        for (int node = 1; node < nodes; node++) {
            double ohm = Math.pow(10, -1 + 3 * random.nextDouble());
            int other = random.nextInt(node);
            elements.add(
                    random.nextBoolean()
                            ? new Resistor("r" + node, node, other, ohm)
                            : new VoltageSource("s" + node, node, other, 12 * random.nextGaussian(), ohm));
        }
        int oneWays = 1 + random.nextInt(5);
        for (int k = 0; k < oneWays; k++) {
            int from = random.nextInt(nodes);
            int to = (from + 1 + random.nextInt(nodes - 1)) % nodes;
            double thresholdV = random.nextInt(4) == 0 ? -14 * random.nextDouble() : random.nextDouble();
            double slopeOhm = ideal ? 0 : Math.pow(10, -3 + 3 * random.nextDouble());
            double limitA = random.nextInt(3) == 0 ? 2 * random.nextDouble() + 0.01 : Double.POSITIVE_INFINITY;
            elements.add(new UnidirectionalElement("d" + k, from, to, thresholdV, slopeOhm, limitA));
        }
        return new Network(RandomNetwork.names(nodes), elements, 0);
    }

    @Property(seed = "81", tries = 5000)
    void agreesWithATrialOfAllStates(@ForAll @IntRange(max = 1_000_000) int seed) {
        compare(random(seed, false));
    }

    @Property(seed = "82", tries = 5000)
    void idealElementsAgreeWithATrialOfAllStates(@ForAll @IntRange(max = 1_000_000) int seed) {
        compare(random(seed, true));
    }

    private static void compare(Network network) {
        Solution solution = new NetworkSolver(NetworkLimits.defaults()).solve(network);
        Checker.check(network, solution);
        List<double[]> possible = trials(network);
        if (!solution.solved()) {
            assertThat(possible).as("no state is consistent").isEmpty();
            return;
        }
        int nodes = network.nodes().size();
        // Ideal elements in a loop have no state with regular equations of its own; then the checker has the last word.
        boolean regular = IntStream.range(0, network.elements().size()).allMatch(solution::currentDetermined);
        if (regular) {
            assertThat(possible).isNotEmpty();
        }
        for (double[] trial : possible) {
            for (int node = 0; node < nodes; node++) {
                assertThat(solution.voltageV(node)).isCloseTo(trial[node], within(1e-7 * (1 + Math.abs(trial[node]))));
            }
        }
    }

    /** All solutions of the tableau with fixed states that do not contradict their states. */
    private static List<double[]> trials(Network network) {
        List<UnidirectionalElement> oneWays = network.elements().stream()
                .filter(UnidirectionalElement.class::isInstance)
                .map(UnidirectionalElement.class::cast)
                .toList();
        int combinations = (int) Math.round(Math.pow(3, oneWays.size()));
        List<double[]> found = new ArrayList<>();
        for (int code = 0; code < combinations; code++) {
            int[] states = new int[oneWays.size()];
            int rest = code;
            boolean exists = true;
            for (int k = 0; k < states.length; k++) {
                states[k] = rest % 3;
                rest /= 3;
                exists &= states[k] <= CONDUCTING
                        || Double.isFinite(oneWays.get(k).limitA());
            }
            if (exists) {
                trial(network, states).ifPresent(found::add);
            }
        }
        return found;
    }

    private static java.util.Optional<double[]> trial(Network network, int[] states) {
        List<Tableau.Relation> relations = new ArrayList<>();
        int next = 0;
        for (Element e : network.elements()) {
            if (e instanceof UnidirectionalElement o) {
                int state = states[next++];
                relations.add(
                        state == CONDUCTING
                                ? new Tableau.Relation(o.from(), o.to(), 1, -o.slopeOhm(), o.thresholdV())
                                : new Tableau.Relation(o.from(), o.to(), 0, 1, state == BLOCKING ? 0 : o.limitA()));
            } else {
                relations.add(Tableau.Relation.of(e));
            }
        }
        return Tableau.solve(network.nodes().size(), relations).filter(x -> consistent(network, states, x));
    }

    private static boolean consistent(Network network, int[] states, double[] x) {
        int next = 0;
        for (int i = 0; i < network.elements().size(); i++) {
            if (network.elements().get(i) instanceof UnidirectionalElement o) {
                int state = states[next++];
                double v = x[o.from()] - x[o.to()];
                double a = x[network.nodes().size() + i];
                boolean holds = state == BLOCKING
                        ? v <= o.thresholdV() + 1e-9
                        : state == CONDUCTING
                                ? a >= -1e-9 && a <= o.limitA() + 1e-9
                                : v >= o.thresholdV() + o.slopeOhm() * o.limitA() - 1e-9;
                if (!holds) {
                    return false;
                }
            }
        }
        return true;
    }
}
