package loomwright.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Solves a network with {@link SensedSource}s: as often as it takes until each regulator holds what it measures. */
final class RemoteSensing {
    private static final double SETTLED_V = 1e-11;
    private static final int MOST_ROUNDS = 20;

    private final Network network;
    private final Function<Network, Solution> solver;
    /** One source of each regulator, and by how much it is raised. */
    private final Map<SensedSource, Double> raises = new HashMap<>();

    private RemoteSensing(Network network, Function<Network, Solution> solver) {
        this.network = network;
        this.solver = solver;
    }

    /** Solves with a solver that knows no such sources. */
    static Solution solve(Network network, Function<Network, Solution> solver) {
        List<SensedSource> regulators = new ArrayList<>();
        for (Element element : network.elements()) {
            if (element instanceof SensedSource source && regulators.stream().noneMatch(source::hasRegulatorOf)) {
                regulators.add(source);
            }
        }
        return regulators.isEmpty() ? solver.apply(network) : new RemoteSensing(network, solver).solve(regulators);
    }

    private Solution solve(List<SensedSource> regulators) {
        regulators.forEach(regulator -> raises.put(regulator, 0.0));
        Solution solution = solver.apply(raised());
        for (int round = 0; round < MOST_ROUNDS && solution.solved(); round++) {
            boolean changed = false;
            for (SensedSource regulator : regulators) {
                RaiseSearch search = new RaiseSearch(regulator);
                for (int step = 0; solution.solved() && !holds(regulator, solution); step++) {
                    if (step == RaiseSearch.MOST_STEPS) {
                        throw new NoConvergence(step, missingV(regulator, solution), List.of());
                    }
                    changed = true;
                    double raiseV = raises.getOrDefault(regulator, 0.0);
                    raises.put(regulator, search.next(raiseV, missingV(regulator, solution)));
                    solution = solver.apply(raised());
                }
            }
            if (!changed) {
                return solution;
            }
        }
        if (solution.solved()) {
            throw new NoConvergence(MOST_ROUNDS, missingV(regulators.get(0), solution), List.of());
        }
        return solution;
    }

    private boolean holds(SensedSource regulator, Solution solution) {
        return Math.abs(missingV(regulator, solution)) <= SETTLED_V * (1 + regulator.regulatedV());
    }

    private double missingV(SensedSource regulator, Solution solution) {
        return regulator.wantedRaiseV(lostV(regulator, solution)) - raises.getOrDefault(regulator, 0.0);
    }

    /** What is lost between two nodes that are connected, V. */
    static double lostV(SensedSource regulator, Solution solution) {
        return solution.island(regulator.above()) == solution.island(regulator.below())
                ? solution.voltageV(regulator.above()) - solution.voltageV(regulator.below())
                : 0;
    }

    private Network raised() {
        List<Element> elements = new ArrayList<>(network.elements());
        elements.replaceAll(
                element -> element instanceof SensedSource source ? source.raised(raiseV(source)) : element);
        return new Network(network.nodes(), elements, network.reference());
    }

    private double raiseV(SensedSource source) {
        return raises.entrySet().stream()
                .filter(entry -> entry.getKey().hasRegulatorOf(source))
                .mapToDouble(Map.Entry::getValue)
                .findFirst()
                .orElse(0);
    }
}
