package loomwright.review.context;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Ammeter;
import loomwright.circuit.Connector;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Flasher;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Switch;
import loomwright.circuit.Wire;

/**
 * Which terminals of a plan are joined by something that does not limit a short-circuit current, whatever position the
 * switches are in; diodes only as the feed can pass them. Reaching is a breadth-first search; cost: joints and terminals once each.
 */
public final class FeedGraph {
    public static final String CHASSIS = "chassis";

    /** What joins two terminals. */
    public enum By {
        WIRE,
        /** Joint, earth point or connector. */
        JOINT,
        /** A switch, relay or solenoid contact. */
        CONTACT,
        /** A diode; it joins one way only. */
        DIODE,
        /** A fuse or fusible link. */
        FUSE
    }

    /** One joining of two terminals; of a diode from the end where the feed may enter it. */
    public record Edge(By by, String id, String from, String to) {
        /** Whether it leads on from one of its ends, away from the battery. */
        public boolean leadsFrom(String end) {
            return by != By.DIODE || end.equals(from);
        }

        public String otherEnd(String end) {
            return end.equals(from) ? to : from;
        }
    }

    private final Map<String, List<Edge>> edges = new LinkedHashMap<>();

    private FeedGraph() {}

    public static FeedGraph of(Plan plan) {
        FeedGraph graph = new FeedGraph();
        for (Wire wire : plan.wires()) {
            graph.add(By.WIRE, wire.id(), wire.from().toString(), wire.to().toString());
        }
        plan.parts().forEach(graph::addPart);
        plan.listParts(Diode.class)
                .forEach(diode -> graph.addDiode(diode, plan.system().earthPolarity()));
        for (Connector connector : plan.connectors()) {
            Part one = plan.findPart(connector.halves().get(0)).orElseThrow();
            Part other = plan.findPart(connector.halves().get(1)).orElseThrow();
            for (String way : one.terminals()) {
                if (other.terminals().contains(way)) {
                    graph.add(
                            By.JOINT,
                            connector.id(),
                            one.terminal(way).toString(),
                            other.terminal(way).toString());
                }
            }
        }
        return graph;
    }

    private void addPart(Part part) {
        if (part instanceof Joint) {
            star(By.JOINT, part, part.terminals());
        } else if (part instanceof EarthPoint) {
            add(By.JOINT, part.id(), part.terminal(EarthPoint.TERMINAL).toString(), CHASSIS);
        } else if (part instanceof Switch chosen) {
            chosen.positions().forEach(p -> chosen.joinsIn(p).forEach(joined -> star(By.CONTACT, part, joined)));
        } else if (part instanceof ControlBox) {
            // What is behind the cut-out is protected by it: a short at D makes it open.
            star(By.JOINT, part, List.of(ControlBox.BATTERY, ControlBox.LOADS));
        } else if (part instanceof Ammeter) {
            star(By.JOINT, part, part.terminals());
        } else if (part instanceof Stabiliser) {
            star(By.CONTACT, part, List.of(Stabiliser.FEED, Stabiliser.OUTPUT));
        } else if (part instanceof Flasher) {
            star(By.CONTACT, part, List.of(Flasher.FEED, Flasher.OUTPUT, Flasher.TELL_TALE));
        } else if (part instanceof Relay) {
            star(By.CONTACT, part, List.of(Relay.COMMON, Relay.MAKE, Relay.BREAK));
        } else if (part instanceof Solenoid) {
            star(By.CONTACT, part, List.of(Solenoid.SUPPLY, Solenoid.MOTOR, Solenoid.BYPASS));
        } else if (part instanceof Fuse || part instanceof FusibleLink) {
            star(By.FUSE, part, part.terminals());
        }
    }

    /** The feed follows the current where the negative pole is earthed, and goes against it where the positive one is. */
    private void addDiode(Diode diode, EarthPolarity earth) {
        boolean withCurrent = earth.feedSign() > 0;
        add(
                By.DIODE,
                diode.id(),
                diode.terminal(withCurrent ? Diode.ANODE : Diode.CATHODE).toString(),
                diode.terminal(withCurrent ? Diode.CATHODE : Diode.ANODE).toString());
    }

    private void star(By by, Part part, List<String> terminals) {
        for (int i = 1; i < terminals.size(); i++) {
            add(
                    by,
                    part.id(),
                    part.terminal(terminals.get(0)).toString(),
                    part.terminal(terminals.get(i)).toString());
        }
    }

    private void add(By by, String id, String from, String to) {
        Edge edge = new Edge(by, id, from, to);
        edges.computeIfAbsent(from, key -> new ArrayList<>()).add(edge);
        edges.computeIfAbsent(to, key -> new ArrayList<>()).add(edge);
    }

    public List<Edge> at(String terminal) {
        return edges.getOrDefault(terminal, List.of());
    }

    /** All terminals that some of the starts reach without touching a barred one; those started from come first. */
    public Set<String> reach(Collection<String> starts, EnumSet<By> through, Set<String> barred) {
        Set<String> reached = new LinkedHashSet<>();
        Deque<String> open = new ArrayDeque<>();
        for (String start : starts) {
            if (!barred.contains(start) && reached.add(start)) {
                open.add(start);
            }
        }
        while (!open.isEmpty()) {
            String terminal = open.removeFirst();
            for (Edge edge : at(terminal)) {
                String next = edge.otherEnd(terminal);
                if (through.contains(edge.by())
                        && edge.leadsFrom(terminal)
                        && !barred.contains(next)
                        && reached.add(next)) {
                    open.add(next);
                }
            }
        }
        return reached;
    }
}
