package loomwright.circuit.fault;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.circuit.Alternator;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.LightingConsumer;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.ContactState;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Lists the plausible single faults of a plan, in a fixed order.
 *
 * <p>Terminals of one part take each other's leads if they have the same form. The plan does not state forms, so they are
 * taken as usual (common practice, no source): the main terminals of a starter solenoid and an alternator are studs, their
 * control terminals blades; all terminals of any other part are alike.
 */
public final class SingleFaults {
    /** "A few ohms": enough to be noticed in a lamp or coil circuit (common practice, no source). */
    public static final double TYPICAL_JOINT_OHM = 3;

    private static final Map<Class<? extends Part>, Set<String>> STUDS = Map.of(
            Solenoid.class, Set.of(Solenoid.SUPPLY, Solenoid.MOTOR),
            Alternator.class, Set.of(Alternator.OUTPUT, Alternator.RETURN));

    /** Of a switch with more terminals only neighbours are taken to touch (common practice, no source). */
    private static final int MOST_BRIDGED = 4;

    private final Plan plan;
    private final List<SingleFault> found = new ArrayList<>();
    private final Set<TerminalRef> wired = new LinkedHashSet<>();
    /** Terminals with something on them that can be taken off: a bolted case cannot. */
    private final Set<TerminalRef> leads = new HashSet<>();

    private SingleFaults(Plan plan) {
        this.plan = plan;
        for (Wire wire : plan.wires()) {
            wired.add(wire.from());
            wired.add(wire.to());
            if (!plan.isCase(wire)) {
                leads.add(wire.from());
                leads.add(wire.to());
            }
        }
    }

    /**
     * What somebody may do wrong, and what joints, fuses and contacts come to: at most some tens for each part with many
     * terminals, a few for each wire.
     */
    public static List<SingleFault> list(Plan plan) {
        SingleFaults faults = new SingleFaults(plan);
        plan.parts().forEach(faults::addOfPart);
        plan.wires().forEach(faults::addOfWire);
        faults.addOfConnectors();
        faults.addShorts();
        return List.copyOf(faults.found);
    }

    /**
     * The same, and the faults that a part has within itself, which are found by a meter and not made by a mistake: what is
     * open, bridged, stuck, worn or of another value than it should be, a battery that is flat, worn out or not charged.
     */
    public static List<SingleFault> listWithinParts(Plan plan) {
        SingleFaults faults = new SingleFaults(plan);
        List<SingleFault> all = new ArrayList<>(list(plan));
        for (Part part : plan.parts()) {
            if (opens(part)) {
                all.add(OpenInside.of(part));
            }
            all.addAll(OffValue.of(part, plan.system()));
            addBridges(part, all);
            if (part instanceof Switch chosen) {
                addOfContacts(chosen, faults.wired, all);
                addStated(chosen, all);
                addStuck(chosen, all);
            }
        }
        addChafed(plan, all);
        if (!plan.listParts(Battery.class).isEmpty()) {
            all.add(DischargedBattery.of(plan, Batteries.of(plan)));
            all.add(WornBattery.of(plan, Batteries.of(plan)));
            for (Batteries one : Batteries.each(plan)) {
                all.add(DischargedBattery.of(plan, one));
                all.add(WornBattery.of(plan, one));
            }
            all.add(NotCharging.of(plan));
        }
        return List.copyOf(all);
    }

    /**
     * Contacts of switches that have welded, touch a neighbour, never close or are worn, of terminals with something on them,
     * and switches that stay as they are; none that the plan states already.
     */
    public static List<SingleFault> listContacts(Plan plan) {
        Set<TerminalRef> wired = new SingleFaults(plan).wired;
        List<SingleFault> all = new ArrayList<>();
        for (Switch chosen : plan.listParts(Switch.class)) {
            List<SingleFault> bridges = new ArrayList<>();
            addBridges(chosen, bridges);
            bridges.stream()
                    .map(ShortBetween.class::cast)
                    .filter(bridge -> wired.contains(bridge.one()) && wired.contains(bridge.other()))
                    .filter(bridge -> !states(chosen, bridge, Double.POSITIVE_INFINITY))
                    .forEach(all::add);
            addOfContacts(chosen, wired, all);
            addStuck(chosen, all);
        }
        return List.copyOf(all);
    }

    /** Of a switch with one contact the faults of the whole switch say the same. */
    private static void addOfContacts(Switch chosen, Set<TerminalRef> wired, List<SingleFault> to) {
        List<List<String>> contacts = chosen.contacts();
        for (List<String> contact : contacts) {
            boolean sound = chosen.faults().noneMatch(fault -> fault.isBetween(contact));
            if (sound
                    && contacts.size() > 1
                    && contact.stream().allMatch(name -> wired.contains(chosen.terminal(name)))) {
                to.add(new OpenContact(chosen.id(), contact));
                to.add(new WornContact(chosen.id(), contact, TYPICAL_JOINT_OHM));
            }
        }
    }

    /** What the plan says of a contact may be wrong: it may be sound, never close, or have other ohms. */
    private static void addStated(Switch chosen, List<SingleFault> to) {
        chosen.faults().forEach(fault -> {
            to.add(new SoundContact(chosen.id(), fault.between(), fault.state()));
            boolean contact = chosen.contacts().stream().anyMatch(fault::isBetween);
            if (contact && fault.state() != ContactState.OPEN) {
                to.add(new OpenContact(chosen.id(), fault.between()));
            }
            if (fault.state() == ContactState.WORN) {
                to.add(new WornContact(chosen.id(), fault.between(), chosen.ohm(fault)));
            }
        });
    }

    /** Whether the plan itself has the two terminals joined in every position, by no more than so many ohms. */
    private static boolean states(Switch chosen, ShortBetween bridge, double mostOhm) {
        return chosen.alwaysClosed().stream()
                .anyMatch(closed -> closed.ohm() <= mostOhm
                        && Set.of(closed.from(), closed.to())
                                .equals(Set.of(
                                        bridge.one().terminal(), bridge.other().terminal())));
    }

    /** A relay or solenoid with an open winding does what one does that is stuck at rest. */
    private static boolean opens(Part part) {
        return part instanceof LightingConsumer
                || part instanceof Load
                || part instanceof Motor
                || part instanceof Coil
                || part instanceof Ballast
                || part instanceof FixedResistor
                || part instanceof Diode
                || part instanceof ContactBreaker
                || part instanceof IgnitionModule;
    }

    /** What may be joined within a part: contacts that have welded, insulation that has broken down. */
    private static void addBridges(Part part, List<SingleFault> to) {
        if (part instanceof Joint
                || part instanceof EarthPoint
                || part instanceof Battery
                || part instanceof ConnectorHalf
                || part instanceof Fuse
                || part instanceof FusibleLink
                || part instanceof Ballast) {
            return;
        }
        List<String> names = part.terminals();
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                ShortBetween bridge = ShortBetween.of(part.terminal(names.get(i)), part.terminal(names.get(j)));
                if (!(part instanceof Switch chosen)
                        || ((names.size() <= MOST_BRIDGED || j == i + 1)
                                && !states(chosen, bridge, ShortBetween.CONTACT_OHM))) {
                    to.add(bridge);
                }
            }
        }
    }

    /** Wires of one loom that touch where their insulation has chafed away, once for each two ends that they lead to. */
    private static void addChafed(Plan plan, List<SingleFault> to) {
        Set<Set<TerminalRef>> known = new HashSet<>();
        List<Wire> wires = plan.wires();
        for (int i = 0; i < wires.size(); i++) {
            for (int j = i + 1; j < wires.size(); j++) {
                Wire one = wires.get(i);
                Wire other = wires.get(j);
                if (one.laid().loom() != null
                        && one.laid().loom().equals(other.laid().loom())
                        && isApart(one, other)) {
                    ends(one, other)
                            .filter(touching -> known.add(Set.of(touching.one(), touching.other())))
                            .ifPresent(to::add);
                }
            }
        }
    }

    private static boolean isApart(Wire one, Wire other) {
        return Collections.disjoint(List.of(one.from(), one.to()), List.of(other.from(), other.to()));
    }

    /** Where they touch is not known: at ends that are of two parts. */
    private static Optional<ShortBetween> ends(Wire one, Wire other) {
        return Stream.of(one.from(), one.to())
                .flatMap(here -> Stream.of(other.from(), other.to()).map(there -> ShortBetween.of(here, there)))
                .filter(touching -> !touching.withinPart())
                .findFirst();
    }

    /**
     * As in each of its positions, and without any contact; once where two positions are the same, and never as it stays
     * anyhow by what the plan says of its contacts.
     */
    private static void addStuck(Switch chosen, List<SingleFault> to) {
        Set<Set<Set<String>>> known = new HashSet<>();
        chosen.positions().forEach(position -> known.add(closed(chosen, position)));
        if (known.size() > 1) {
            known.clear();
        }
        for (Switch.Position position : chosen.positions()) {
            Set<Set<String>> closed = closed(chosen, position);
            if (!closed.isEmpty() && known.add(closed)) {
                to.add(new StuckSwitch(chosen.id(), position.name()));
            }
        }
        if (known.add(Set.of()) && chosen.alwaysClosed().isEmpty()) {
            to.add(new StuckSwitch(chosen.id(), ""));
        }
    }

    private static Set<Set<String>> closed(Switch chosen, Switch.Position position) {
        return chosen.closedIn(position).stream()
                .map(contact -> Set.of(contact.from(), contact.to()))
                .collect(Collectors.toSet());
    }

    private void addOfPart(Part part) {
        if (part instanceof Joint) {
            found.add(new BadJoint(part.id(), TYPICAL_JOINT_OHM));
            return;
        } else if (part instanceof EarthPoint) {
            found.add(new LostEarth(part.id()));
            found.add(new BadJoint(part.id(), TYPICAL_JOINT_OHM));
            return;
        } else if (part instanceof Electromagnet) {
            found.add(new StuckRelay(part.id(), false));
            found.add(new StuckRelay(part.id(), true));
        } else if (part instanceof Fuse || part instanceof FusibleLink) {
            found.add(new BlownFuse(part.id()));
        } else if (part instanceof Switch) {
            found.add(new BadJoint(part.id(), TYPICAL_JOINT_OHM));
        }
        addSwaps(part);
    }

    /** Each two terminals of a part, both with something on them. */
    private void addSwaps(Part part) {
        List<String> names = part.terminals();
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                TerminalRef one = part.terminal(names.get(i));
                TerminalRef other = part.terminal(names.get(j));
                if (leads.contains(one) && leads.contains(other) && sameForm(part, names.get(i), names.get(j))) {
                    found.add(new SwappedLeads(one, other));
                }
            }
        }
    }

    private static boolean sameForm(Part part, String one, String other) {
        Set<String> studs = STUDS.getOrDefault(part.getClass(), Set.of());
        return studs.contains(one) == studs.contains(other);
    }

    private void addOfWire(Wire wire) {
        if (plan.isCase(wire)) {
            found.add(new WireOff(wire.id(), WireEnd.FROM, wire.from()));
            found.add(new BadJoint(wire.id(), TYPICAL_JOINT_OHM));
            return;
        }
        for (WireEnd end : WireEnd.values()) {
            found.add(new WireOff(wire.id(), end, end.of(wire)));
        }
        found.add(new BadJoint(wire.id(), TYPICAL_JOINT_OHM));
        for (WireEnd end : WireEnd.values()) {
            addMisplaced(wire, end);
        }
    }

    /** Of a part with two terminals nobody puts both leads on one. */
    private void addMisplaced(Wire wire, WireEnd end) {
        TerminalRef belongs = end.of(wire);
        Part part = plan.findPart(belongs.part()).orElseThrow();
        if (part instanceof Joint || part.terminals().size() < 3) {
            return;
        }
        TerminalRef otherEnd = end == WireEnd.FROM ? wire.to() : wire.from();
        for (String name : part.terminals()) {
            TerminalRef sits = part.terminal(name);
            if (!sits.equals(belongs) && !sits.equals(otherEnd) && sameForm(part, belongs.terminal(), name)) {
                found.add(new MisplacedWire(wire.id(), end, belongs, sits));
            }
        }
    }

    private void addOfConnectors() {
        List<Connector> all = plan.connectors();
        for (Connector connector : all) {
            if (plan.findPart(connector.id()).isEmpty()
                    && plan.findWire(connector.id()).isEmpty()) {
                found.add(new BadJoint(connector.id(), TYPICAL_JOINT_OHM));
            }
        }
        for (int i = 0; i < all.size(); i++) {
            for (int j = i + 1; j < all.size(); j++) {
                addCrossed(all.get(i), all.get(j));
            }
        }
    }

    private void addCrossed(Connector one, Connector other) {
        String half = one.halves().get(0);
        for (String otherHalf : other.halves()) {
            boolean fits = half(half).matesWith(half(otherHalf))
                    && half(CrossedConnectors.rest(one, half))
                            .matesWith(half(CrossedConnectors.rest(other, otherHalf)));
            if (fits) {
                found.add(new CrossedConnectors(one.id(), half, other.id(), otherHalf));
            }
        }
    }

    private ConnectorHalf half(String id) {
        return (ConnectorHalf) plan.findPart(id).orElseThrow();
    }

    /** One for each node: the terminals of a splice are one place, and an earth point is on the chassis already. */
    private void addShorts() {
        Set<String> splices = new LinkedHashSet<>();
        for (TerminalRef terminal : wired) {
            Part part = plan.findPart(terminal.part()).orElseThrow();
            boolean again = part instanceof Joint && !splices.add(part.id());
            if (!(part instanceof EarthPoint) && !again) {
                found.add(new ShortToEarth(terminal));
            }
        }
    }
}
