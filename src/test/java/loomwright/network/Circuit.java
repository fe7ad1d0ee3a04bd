package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Sets out a network by the names of its nodes; "0" is the reference. Whatever it solves goes through the checker. */
public final class Circuit {
    private final Map<String, Integer> nodes = new LinkedHashMap<>(Map.of("0", 0));
    private final List<Element> elements = new ArrayList<>();
    private NetworkLimits limits = NetworkLimits.defaults();

    int node(String name) {
        return nodes.computeIfAbsent(name, k -> nodes.size());
    }

    Circuit add(Element element) {
        elements.add(element);
        return this;
    }

    public Circuit resistor(String id, String from, String to, double ohm) {
        return add(new Resistor(id, node(from), node(to), ohm));
    }

    /** The positive terminal is {@code plus}. */
    public Circuit source(String id, String minus, String plus, double voltageV, double ohm) {
        return add(new VoltageSource(id, node(minus), node(plus), voltageV, ohm));
    }

    Circuit current(String id, String from, String to, double currentA) {
        return add(new CurrentSource(id, node(from), node(to), currentA));
    }

    Circuit power(String id, String from, String to, double powerW, double minimumV) {
        return add(new PowerLoad(id, node(from), node(to), powerW, minimumV));
    }

    Circuit oneWay(String id, String from, String to, double thresholdV, double slopeOhm) {
        return add(new UnidirectionalElement(id, node(from), node(to), thresholdV, slopeOhm, Double.POSITIVE_INFINITY));
    }

    /** An ideal one-way element without threshold that takes a limited current. */
    Circuit limited(String id, String from, String to, double limitA) {
        return add(new UnidirectionalElement(id, node(from), node(to), 0, 0, limitA));
    }

    Circuit limited(String id, String from, String to, double thresholdV, double slopeOhm, double limitA) {
        return add(new UnidirectionalElement(id, node(from), node(to), thresholdV, slopeOhm, limitA));
    }

    Circuit lamp(String id, String from, String to, double ratedV, double ratedW) {
        return add(new Lamp(id, node(from), node(to), ratedV, ratedW, 1 / 14.0));
    }

    Circuit limits(NetworkLimits limits) {
        this.limits = limits;
        return this;
    }

    public Network network() {
        return new Network(List.copyOf(nodes.keySet()), elements, 0);
    }

    /** Solves, checks, and gives the figures by name. */
    public Reading solve() {
        Network network = network();
        Solution solution = new NetworkSolver(limits).solve(network);
        Checker.check(network, solution);
        return new Reading(network, solution);
    }

    /** A solution asked by names. */
    public record Reading(Network network, Solution solution) {
        public double volts(String node) {
            return solution.voltageV(network.nodes().indexOf(node));
        }

        boolean floating(String node) {
            return solution.floating(network.nodes().indexOf(node));
        }

        public double amps(String id) {
            return solution.currentA(index(id));
        }

        public double watts(String id) {
            return solution.powerW(index(id));
        }

        boolean determined(String id) {
            return solution.currentDetermined(index(id));
        }

        private int index(String id) {
            for (int i = 0; i < network.elements().size(); i++) {
                if (network.elements().get(i).id().equals(id)) {
                    return i;
                }
            }
            throw new IllegalArgumentException("no element " + id);
        }

        NetworkFinding finding(NetworkFinding.Kind kind) {
            List<NetworkFinding> of =
                    solution.findings().stream().filter(f -> f.kind() == kind).toList();
            assertThat(of)
                    .as("findings of kind %s in %s", kind, solution.findings())
                    .hasSize(1);
            return of.get(0);
        }
    }
}
