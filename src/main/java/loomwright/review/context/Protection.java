package loomwright.review.context;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.Battery;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;
import loomwright.review.context.FeedGraph.By;
import loomwright.review.context.FeedGraph.Edge;

/**
 * Which wires a short-circuit current from the battery reaches through which fuse or link. A fuse's region ends at the
 * next fuse, at every part that limits the current, and at earth.
 */
public final class Protection {
    private static final EnumSet<By> METAL = EnumSet.of(By.WIRE, By.JOINT);
    private static final EnumSet<By> SWITCHED = EnumSet.of(By.WIRE, By.JOINT, By.CONTACT);
    /** All that does not limit a short-circuit current, but for fuses. */
    public static final EnumSet<By> UNLIMITED = EnumSet.of(By.WIRE, By.JOINT, By.CONTACT, By.DIODE);

    /**
     * What hangs behind one fuse.
     *
     * @param protector the fuse or link; empty for what the battery feeds without one
     * @param terminals all that are reached
     * @param wires in the order in which they are reached
     */
    public record Region(Optional<Part> protector, Set<String> terminals, List<Wire> wires) {}

    private final FeedGraph graph;
    private final Set<String> earthed;
    private final Set<String> livePoles;
    private final List<Region> regions = new ArrayList<>();

    private Protection(FeedGraph graph, Set<String> earthed, Set<String> livePoles) {
        this.graph = graph;
        this.earthed = earthed;
        this.livePoles = livePoles;
    }

    public static Protection of(Plan plan) {
        FeedGraph graph = FeedGraph.of(plan);
        Set<String> earthed = graph.reach(List.of(FeedGraph.CHASSIS), METAL, Set.of());
        Protection protection = new Protection(graph, earthed, livePoles(plan, graph, earthed));
        protection.divide(plan);
        return protection;
    }

    /** The poles that are not on the chassis; of a battery with an isolator in its earth lead the other pole. */
    private static Set<String> livePoles(Plan plan, FeedGraph graph, Set<String> earthed) {
        Set<String> earthedThroughSwitch = graph.reach(List.of(FeedGraph.CHASSIS), SWITCHED, Set.of());
        Set<String> live = new LinkedHashSet<>();
        for (Battery battery : plan.listParts(Battery.class)) {
            List<String> poles = battery.terminals().stream()
                    .map(name -> battery.terminal(name).toString())
                    .filter(pole -> !earthed.contains(pole))
                    .toList();
            List<String> apart = poles.stream()
                    .filter(pole -> !earthedThroughSwitch.contains(pole))
                    .toList();
            live.addAll(poles.size() == 2 && !apart.isEmpty() ? apart : poles);
        }
        return live;
    }

    private void divide(Plan plan) {
        Map<String, Part> parts = plan.partsById();
        Set<String> taken = new HashSet<>(earthed);
        Map<String, String> protectorAt = new LinkedHashMap<>();
        Region root = region(plan, Optional.empty(), livePoles, taken);
        List<Region> open = new ArrayList<>(List.of(root));
        for (int i = 0; i < open.size(); i++) {
            regions.add(open.get(i));
            for (Edge fuse : fusesAt(open.get(i))) {
                String far = open.get(i).terminals().contains(fuse.from()) ? fuse.to() : fuse.from();
                if (!taken.contains(far) && protectorAt.putIfAbsent(fuse.id(), far) == null) {
                    Part protector = parts.get(fuse.id());
                    open.add(region(plan, Optional.ofNullable(protector), Set.of(far), taken));
                }
            }
        }
    }

    private List<Edge> fusesAt(Region region) {
        return region.terminals().stream()
                .flatMap(t -> graph.at(t).stream())
                .filter(e -> e.by() == By.FUSE)
                .distinct()
                .toList();
    }

    private Region region(Plan plan, Optional<Part> protector, Set<String> starts, Set<String> taken) {
        Set<String> terminals = graph.reach(starts, UNLIMITED, taken);
        taken.addAll(terminals);
        List<Wire> wires = terminals.stream()
                .flatMap(t -> graph.at(t).stream())
                .filter(e -> e.by() == By.WIRE && terminals.contains(e.from()) && terminals.contains(e.to()))
                .distinct()
                .flatMap(e -> plan.findWire(e.id()).stream())
                .toList();
        return new Region(protector, terminals, wires);
    }

    public FeedGraph graph() {
        return graph;
    }

    /** Battery poles that are not on the chassis. */
    public Set<String> livePoles() {
        return livePoles;
    }

    /** Terminals on the chassis, by metal alone. */
    public Set<String> earthed() {
        return earthed;
    }

    /** What the battery feeds without a fuse. */
    public Region unfused() {
        return regions.get(0);
    }

    /** What hangs behind each fuse and link, in the order from the battery on. */
    public List<Region> fused() {
        return regions.subList(1, regions.size());
    }
}
