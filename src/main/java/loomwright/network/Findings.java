package loomwright.network;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;

/** Puts into words what the solver came across. */
final class Findings {
    private final Network network;
    private final List<NetworkFinding> found = new ArrayList<>();

    Findings(Network network) {
        this.network = network;
    }

    List<NetworkFinding> list() {
        return found;
    }

    /** Whether one of the findings rules out a solution. */
    boolean prevent() {
        for (NetworkFinding finding : found) {
            if (finding.preventsSolution()) {
                return true;
            }
        }
        return false;
    }

    void conflict(Contraction contraction, int closing) {
        addLoop(
                NetworkFinding.Kind.CONFLICTING_SOURCES,
                contraction.loop(closing),
                "The voltages around this loop do not add up to zero and nothing in it limits the current: a dead"
                        + " short of ideal sources.");
    }

    void undetermined(Contraction contraction) {
        for (int closing : contraction.closing) {
            addLoop(
                    NetworkFinding.Kind.UNDETERMINED_CURRENT,
                    contraction.loop(closing),
                    "These elements form a loop without resistance: how the current divides between its two ways"
                            + " is not determined.");
        }
    }

    private void addLoop(NetworkFinding.Kind kind, List<Integer> loop, String text) {
        Set<String> nodes = new LinkedHashSet<>();
        List<String> ids = new ArrayList<>();
        for (int b : loop) {
            Element element = network.elements().get(b);
            ids.add(element.id());
            nodes.add(network.nodes().get(element.from()));
            nodes.add(network.nodes().get(element.to()));
        }
        found.add(new NetworkFinding(kind, ids, List.copyOf(nodes), text));
    }

    void noReturn(NewtonLoop loop) {
        Islands islands = loop.islands();
        int[] superOf = loop.point.contraction.superOf;
        List<String> ids = new ArrayList<>();
        for (int b = 0; b < network.elements().size(); b++) {
            Element element = network.elements().get(b);
            boolean from = islands.islandOf[superOf[element.from()]] == loop.withoutReturn;
            boolean to = islands.islandOf[superOf[element.to()]] == loop.withoutReturn;
            if (from != to && loop.point.current[b] != 0) {
                ids.add(element.id());
            }
        }
        List<String> nodes = new ArrayList<>();
        for (int node = 0; node < superOf.length; node++) {
            if (islands.islandOf[superOf[node]] == loop.withoutReturn) {
                nodes.add(network.nodes().get(node));
            }
        }
        found.add(new NetworkFinding(
                NetworkFinding.Kind.CURRENT_WITHOUT_RETURN,
                ids,
                nodes,
                "A current is driven into or out of these nodes, and nothing leads it back in a stable way (a"
                        + " constant-power load does not: it takes less current the more volts it has)."));
    }

    /** One finding per floating island. */
    void floating(Outcome outcome) {
        TreeMap<Integer, List<Integer>> islands = new TreeMap<>();
        for (int node = 0; node < outcome.islandOf.length; node++) {
            if (outcome.floating[node]) {
                islands.computeIfAbsent(outcome.islandOf[node], k -> new ArrayList<>())
                        .add(node);
            }
        }
        if (islands.isEmpty()) {
            return;
        }
        TreeMap<Integer, List<String>> ids = new TreeMap<>();
        for (Element element : network.elements()) {
            int island = outcome.islandOf[element.from()];
            if (island == outcome.islandOf[element.to()]) {
                ids.computeIfAbsent(island, k -> new ArrayList<>()).add(element.id());
            }
        }
        islands.forEach((island, nodes) -> found.add(new NetworkFinding(
                NetworkFinding.Kind.FLOATING,
                ids.getOrDefault(island, List.of()),
                nodes.stream().map(network.nodes()::get).toList(),
                "Nothing that conducts joins this to the reference; its voltages are to "
                        + network.nodes().get(nodes.get(0)) + ".")));
    }

    /**
     * What became of a constant-power load.
     *
     * @param idleV its voltage if the loads took nothing
     * @param loadedV its voltage
     */
    void load(int element, double minimumV, double idleV, double loadedV) {
        if (loadedV >= minimumV || idleV < 1e-6 * minimumV) {
            return;
        }
        Element load = network.elements().get(element);
        boolean overloaded = idleV >= minimumV;
        found.add(new NetworkFinding(
                overloaded ? NetworkFinding.Kind.OVERLOADED : NetworkFinding.Kind.BELOW_MINIMUM,
                List.of(load.id()),
                List.of(network.nodes().get(load.from()), network.nodes().get(load.to())),
                "%s has %.4g V, below its minimum of %.4g V%s; below its minimum it is taken as a resistor."
                        .formatted(
                                load.id(),
                                loadedV,
                                minimumV,
                                overloaded ? ": the feed cannot supply its power" : " even with nothing drawn")));
    }
}
