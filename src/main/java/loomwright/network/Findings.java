package loomwright.network;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import loomwright.network.NetworkFinding.Kind;

/** Collects what the solver came across. */
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
        addLoop(Kind.CONFLICTING_SOURCES, contraction.loop(closing));
    }

    void undetermined(Contraction contraction) {
        for (int closing : contraction.closing) {
            addLoop(Kind.UNDETERMINED_CURRENT, contraction.loop(closing));
        }
    }

    private void addLoop(Kind kind, List<Integer> loop) {
        Set<String> nodes = new LinkedHashSet<>();
        List<String> ids = new ArrayList<>();
        for (int b : loop) {
            Element element = network.elements().get(b);
            ids.add(element.id());
            nodes.add(network.nodes().get(element.from()));
            nodes.add(network.nodes().get(element.to()));
        }
        found.add(new NetworkFinding(kind.with(), ids, List.copyOf(nodes)));
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
        found.add(new NetworkFinding(Kind.CURRENT_WITHOUT_RETURN.with(), ids, nodes));
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
                Kind.FLOATING.with(arg("node", network.nodes().get(nodes.get(0)))),
                ids.getOrDefault(island, List.of()),
                nodes.stream().map(network.nodes()::get).toList())));
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
        Kind kind = overloaded ? Kind.OVERLOADED : Kind.BELOW_MINIMUM;
        found.add(new NetworkFinding(
                kind.with(arg("element", load.id()), arg("loadedV", loadedV), arg("minimumV", minimumV)),
                List.of(load.id()),
                List.of(network.nodes().get(load.from()), network.nodes().get(load.to()))));
    }
}
