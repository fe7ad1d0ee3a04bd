package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ControlBox;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Flasher;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.LightingConsumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.drawing.diagram.CircuitSheet.Purpose;
import org.jspecify.annotations.Nullable;

/**
 * Divides a plan into sheets that can be read: the supply, and what each fuse or switch feeds. Circuits that a switch or relay
 * joins stay together for as long as they fit; small ones of the same purpose share a sheet. Where a circuit goes on
 * elsewhere, the part at which it does names the other sheets, as IEC 61082-1 wants references to be given.
 */
final class CircuitSheets {
    /** So many wires are readable on one page; found by looking, no source. */
    static final int MOST_WIRES = 10;

    /** A plan of so many is not divided: a sheet of a few wires would be left. */
    private static final int MOST_WHOLE = 20;

    private static final int MOST_NAMED = 3;

    private final Plan plan;
    private final Map<String, Part> parts;
    private final Set<TerminalRef> earthed = new HashSet<>();
    private final Set<TerminalRef> supplied = new HashSet<>();
    private final Map<TerminalRef, TerminalRef> parents = new HashMap<>();

    private CircuitSheets(Plan plan) {
        this.plan = plan;
        this.parts = plan.partsById();
    }

    /** The sheets of a plan; one that fits on a page has none. */
    static List<CircuitSheet> of(Plan plan) {
        if (plan.wires().size() <= MOST_WHOLE) {
            return List.of();
        }
        List<CircuitSheet> sheets = new CircuitSheets(plan).divide();
        return sheets.size() < 2 ? List.of() : sheets;
    }

    private List<CircuitSheet> divide() {
        boolean positive = plan.system().earthPolarity() == EarthPolarity.POSITIVE;
        for (Part part : plan.parts()) {
            if (part instanceof EarthPoint) {
                part.terminals().forEach(t -> earthed.add(part.terminal(t)));
            } else if (part instanceof Battery) {
                earthed.add(part.terminal(positive ? "plus" : "minus"));
                supplied.add(part.terminal(positive ? "minus" : "plus"));
            }
        }
        spread(earthed, false);
        spread(supplied, true);
        joinNets();
        Map<TerminalRef, List<Wire>> circuits = circuits();
        join(circuits, false);
        join(circuits, true);
        return numbered(packed(circuits));
    }

    /** Goes on over wires, joints and plugs, from the battery over fusible links too. */
    private void spread(Set<TerminalRef> reached, boolean links) {
        for (boolean grown = true; grown; ) {
            grown = false;
            for (Wire wire : plan.wires()) {
                boolean from = reached.contains(wire.from());
                boolean to = reached.contains(wire.to());
                TerminalRef end = from ? wire.to() : wire.from();
                Part part = parts.get(end.part());
                if (part != null && from != to && conducts(part, links)) {
                    grown |= reached.addAll(
                            part instanceof ConnectorHalf || part instanceof Battery
                                    ? List.of(end)
                                    : part.terminals().stream()
                                            .map(part::terminal)
                                            .toList());
                }
            }
            for (Connector connector : plan.connectors()) {
                for (List<TerminalRef> way : ways(connector)) {
                    if (way.stream().anyMatch(reached::contains)) {
                        grown |= reached.addAll(way);
                    }
                }
            }
        }
    }

    private static boolean conducts(Part part, boolean links) {
        return part instanceof Joint
                || part instanceof ConnectorHalf
                || part instanceof Battery
                || part instanceof EarthPoint
                || (links && part instanceof FusibleLink);
    }

    private List<List<TerminalRef>> ways(Connector connector) {
        Part one = parts.get(connector.halves().get(0));
        Part other = parts.get(connector.halves().get(1));
        if (one == null || other == null) {
            return List.of();
        }
        return one.terminals().stream()
                .filter(other.terminals()::contains)
                .map(way -> List.of(one.terminal(way), other.terminal(way)))
                .toList();
    }

    private TerminalRef root(TerminalRef terminal) {
        TerminalRef root = terminal;
        for (TerminalRef up = parents.get(root); up != null; up = parents.get(root)) {
            root = up;
        }
        return root;
    }

    private void union(TerminalRef one, TerminalRef other) {
        TerminalRef root = root(one);
        TerminalRef otherRoot = root(other);
        if (!root.equals(otherRoot)) {
            parents.put(otherRoot, root);
        }
    }

    /** Whether all circuits meet there, so that none goes on over it. */
    private boolean isCommon(TerminalRef terminal) {
        return earthed.contains(terminal) || supplied.contains(terminal);
    }

    /** What wires and plugs join. */
    private void joinNets() {
        for (Wire wire : plan.wires()) {
            if (!isCommon(wire.from()) && !isCommon(wire.to())) {
                union(wire.from(), wire.to());
            }
        }
        for (Connector connector : plan.connectors()) {
            ways(connector).stream()
                    .filter(way -> way.stream().noneMatch(this::isCommon))
                    .forEach(way -> union(way.get(0), way.get(1)));
        }
        List<TerminalRef> supply = List.copyOf(supplied);
        supply.forEach(t -> union(supply.get(0), t));
    }

    /** Whether what hangs at a terminal is a circuit of its own. */
    private static boolean divides(Part part, String terminal) {
        return part instanceof Fuse
                || part instanceof FusibleLink
                || part instanceof Switch
                || part instanceof Battery
                || part instanceof EarthPoint
                || part instanceof ConnectorHalf
                || (part instanceof Electromagnet && terminal.equals("30"));
    }

    private Map<TerminalRef, List<Wire>> circuits() {
        Map<TerminalRef, List<Wire>> circuits = new LinkedHashMap<>();
        TerminalRef supply =
                supplied.isEmpty() ? null : root(supplied.iterator().next());
        for (Wire wire : plan.wires()) {
            circuits.computeIfAbsent(circuit(wire, supply), t -> new ArrayList<>())
                    .add(wire);
        }
        return circuits;
    }

    /** A wire to earth or from the supply belongs to what it leads to, one between these to the supply. */
    private TerminalRef circuit(Wire wire, @Nullable TerminalRef supply) {
        boolean from = isCommon(wire.from());
        if (from && isCommon(wire.to()) && supply != null) {
            return supply;
        }
        return root(from ? wire.to() : wire.from());
    }

    /**
     * Joins circuits over a part that both are at, the smallest first, as long as they fit.
     *
     * @param dividing whether over fuses, switches and the contacts of relays too, which feed one from the other
     */
    private void join(Map<TerminalRef, List<Wire>> circuits, boolean dividing) {
        while (true) {
            TerminalRef first = null;
            TerminalRef second = null;
            int least = MOST_WIRES + 1;
            for (Part part : plan.parts()) {
                if (part instanceof Battery || part instanceof EarthPoint || part instanceof ConnectorHalf) {
                    continue;
                }
                List<TerminalRef> at = part.terminals().stream()
                        .filter(t -> dividing || !divides(part, t))
                        .map(part::terminal)
                        .filter(t -> !isCommon(t))
                        .map(this::root)
                        .filter(circuits::containsKey)
                        .distinct()
                        .toList();
                for (int i = 1; i < at.size(); i++) {
                    int together = wires(circuits, at.get(0)).size()
                            + wires(circuits, at.get(i)).size();
                    if (together < least && !isSupply(at.get(0)) && !isSupply(at.get(i))) {
                        least = together;
                        first = at.get(0);
                        second = at.get(i);
                    }
                }
            }
            if (first == null || second == null) {
                return;
            }
            List<Wire> wires = new ArrayList<>(wires(circuits, first));
            wires.addAll(wires(circuits, second));
            circuits.remove(second);
            union(first, second);
            circuits.put(first, wires);
        }
    }

    private static List<Wire> wires(Map<TerminalRef, List<Wire>> circuits, TerminalRef root) {
        return circuits.getOrDefault(root, List.of());
    }

    private boolean isSupply(TerminalRef root) {
        return !supplied.isEmpty() && root(supplied.iterator().next()).equals(root);
    }

    /** Circuits of one purpose share a sheet as long as they fit. */
    private List<List<Wire>> packed(Map<TerminalRef, List<Wire>> circuits) {
        Map<Purpose, List<List<Wire>>> sheets = new TreeMap<>();
        circuits.entrySet().stream()
                .sorted(Comparator.comparingInt(
                        circuit -> place(circuit.getValue().get(0))))
                .forEach(circuit -> {
                    Purpose purpose = isSupply(circuit.getKey())
                            ? Purpose.SUPPLY
                            : purposes(circuit.getValue()).iterator().next();
                    List<List<Wire>> here = sheets.computeIfAbsent(purpose, p -> new ArrayList<>());
                    here.stream()
                            .filter(sheet -> sheet.size() + circuit.getValue().size() <= MOST_WIRES)
                            .findFirst()
                            .ifPresentOrElse(
                                    sheet -> sheet.addAll(circuit.getValue()),
                                    () -> here.add(new ArrayList<>(circuit.getValue())));
                });
        return sheets.values().stream().flatMap(List::stream).toList();
    }

    private int place(Wire wire) {
        return plan.wires().indexOf(wire);
    }

    private Set<Purpose> purposes(List<Wire> wires) {
        Set<Purpose> purposes = EnumSet.noneOf(Purpose.class);
        for (Wire wire : wires) {
            for (TerminalRef end : List.of(wire.from(), wire.to())) {
                Purpose purpose = purpose(parts.get(end.part()), end.terminal());
                if (purpose != Purpose.OTHER) {
                    purposes.add(purpose);
                }
            }
        }
        // A warning lamp lights nothing.
        if (purposes.size() > 1 && lamps(wires) == 1) {
            purposes.remove(Purpose.LIGHTING);
        }
        return purposes.isEmpty() ? EnumSet.of(Purpose.OTHER) : purposes;
    }

    private long lamps(List<Wire> wires) {
        return wires.stream()
                .flatMap(wire -> Stream.of(wire.from().part(), wire.to().part()))
                .distinct()
                .filter(id -> purpose(parts.get(id), "") == Purpose.LIGHTING)
                .count();
    }

    private static Purpose purpose(@Nullable Part part, String terminal) {
        if (part instanceof Solenoid && terminal.equals("50")) {
            return Purpose.STARTING;
        } else if (part instanceof Coil
                || part instanceof ContactBreaker
                || part instanceof IgnitionModule
                || part instanceof Ballast) {
            return Purpose.IGNITION;
        } else if (part instanceof Generator || part instanceof ControlBox) {
            return Purpose.CHARGING;
        } else if (part instanceof LightingConsumer || part instanceof Flasher) {
            return Purpose.LIGHTING;
        }
        return Purpose.OTHER;
    }

    private List<CircuitSheet> numbered(List<List<Wire>> sheets) {
        List<CircuitSheet> numbered = new ArrayList<>();
        List<Set<String>> partsOf = sheets.stream().map(this::partsOf).toList();
        for (int i = 0; i < sheets.size(); i++) {
            boolean supply = sheets.get(i).stream().allMatch(wire -> isCommon(wire.from()) && isCommon(wire.to()));
            Set<Purpose> purposes = supply ? EnumSet.of(Purpose.SUPPLY) : purposes(sheets.get(i));
            numbered.add(new CircuitSheet(
                    i + 1,
                    title(i, sheets.size(), purposes, partsOf),
                    purposes,
                    sheets.get(i).stream().map(Wire::id).toList(),
                    List.copyOf(partsOf.get(i))));
        }
        return numbered;
    }

    private Set<String> partsOf(List<Wire> wires) {
        Set<String> ids = new LinkedHashSet<>();
        for (Wire wire : wires) {
            ids.add(wire.from().part());
            ids.add(wire.to().part());
        }
        for (Connector connector : plan.connectors()) {
            if (connector.halves().stream().anyMatch(ids::contains)) {
                ids.addAll(connector.halves());
            }
        }
        return ids;
    }

    /** What it is for, its fuses, and the switches and relays at which it joins other sheets. */
    private String title(int index, int sheets, Set<Purpose> purposes, List<Set<String>> partsOf) {
        List<String> feeders = partsOf.get(index).stream()
                .map(parts::get)
                .filter(part -> part instanceof Fuse
                        || ((part instanceof FusibleLink || part instanceof Switch || part instanceof Relay)
                                && partsOf.stream()
                                                .filter(one -> one.contains(part.id()))
                                                .count()
                                        > 1))
                .map(Part::displayName)
                .limit(MOST_NAMED)
                .toList();
        return DiagramText.SHEET_TITLE
                .with(
                        arg("sheet", index + 1),
                        arg("sheets", sheets),
                        arg(
                                "circuits",
                                String.join(
                                        ", ",
                                        purposes.stream().map(Purpose::text).toList())),
                        arg("fed", feeders.isEmpty() ? "none" : "some"),
                        arg("feeders", String.join(", ", feeders)))
                .text();
    }
}
