package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Wire;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.CrossedConnectors;
import loomwright.circuit.fault.LostEarth;
import loomwright.circuit.fault.MisplacedWire;
import loomwright.circuit.fault.OffValue;
import loomwright.circuit.fault.OpenContact;
import loomwright.circuit.fault.ShortBetween;
import loomwright.circuit.fault.ShortToEarth;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SoundContact;
import loomwright.circuit.fault.StuckRelay;
import loomwright.circuit.fault.SwappedLeads;
import loomwright.circuit.fault.WireOff;
import loomwright.circuit.fault.WornContact;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;

/** Where a fault is seen by itself: across the part that it accuses. */
final class Confirmation {
    private Confirmation() {}

    /** Across what a fault accuses; empty if the plan has no two ends of it. */
    static Optional<Probe> across(SingleFault fault, Plan plan) {
        if (fault instanceof SwappedLeads f) {
            return Optional.of(new Probe(new Point(f.one()), new Point(f.other())));
        } else if (fault instanceof ShortBetween f) {
            return Optional.of(new Probe(new Point(f.one()), new Point(f.other())));
        } else if (fault instanceof ShortToEarth f) {
            return Optional.of(new Probe(new Point(f.terminal()), Point.EARTH));
        } else if (fault instanceof MisplacedWire f) {
            return Optional.of(new Probe(new Point(f.belongs()), new Point(f.sits())));
        } else if (fault instanceof LostEarth f) {
            return part(plan, f.part());
        } else if (fault instanceof WireOff f) {
            return plan.findWire(f.wire()).map(Confirmation::wire);
        } else if (fault instanceof BadJoint f) {
            return plan.findWire(f.at())
                    .map(Confirmation::wire)
                    .or(() -> connector(plan, f.at()))
                    .or(() -> part(plan, f.at()));
        } else if (fault instanceof CrossedConnectors f) {
            return connector(plan, f.one());
        } else if (fault instanceof OpenContact f) {
            return Optional.of(between(plan, f.part(), f.between()));
        } else if (fault instanceof WornContact f) {
            return Optional.of(between(plan, f.part(), f.between()));
        } else if (fault instanceof SoundContact f) {
            return Optional.of(between(plan, f.part(), f.between()));
        } else if (fault instanceof StuckRelay f) {
            Part relay = plan.findPart(f.part()).orElseThrow();
            return relay instanceof Relay
                    ? Optional.of(between(relay, Relay.COMMON, Relay.MAKE))
                    : Optional.of(between(relay, Solenoid.SUPPLY, Solenoid.MOTOR));
        } else if (fault instanceof OffValue f && f.what() == OffValue.What.CONTACTS) {
            Part part = plan.findPart(f.part()).orElseThrow();
            if (part instanceof Relay) {
                return Optional.of(between(part, Relay.COMMON, Relay.MAKE));
            } else if (part instanceof Solenoid) {
                return Optional.of(between(part, Solenoid.SUPPLY, Solenoid.MOTOR));
            }
        }
        return fault.ids().isEmpty() ? Optional.empty() : part(plan, fault.ids().get(0));
    }

    private static Probe wire(Wire wire) {
        return new Probe(new Point(wire.from()), new Point(wire.to()));
    }

    private static Optional<Probe> connector(Plan plan, String id) {
        return plan.connectors().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .map(c -> {
                    Part one = plan.findPart(c.halves().get(0)).orElseThrow();
                    Part other = plan.findPart(c.halves().get(1)).orElseThrow();
                    return new Probe(
                            new Point(one.terminal(one.terminals().get(0))),
                            new Point(other.terminal(other.terminals().get(0))));
                });
    }

    private static Optional<Probe> part(Plan plan, String id) {
        Part part = plan.findPart(id).orElse(null);
        if (part == null) {
            return Optional.empty();
        } else if (part instanceof EarthPoint) {
            return Optional.of(new Probe(new Point(part.terminal(EarthPoint.TERMINAL)), Point.EARTH));
        } else if (part instanceof Battery) {
            return Optional.of(between(part, Battery.PLUS, Battery.MINUS));
        } else if (part instanceof Consumer load) {
            return Optional.of(between(part, load.feedTerminal(), load.returnTerminal()));
        }
        List<String> terminals = part.terminals();
        return terminals.size() < 2
                ? Optional.empty()
                : Optional.of(between(part, terminals.get(0), terminals.get(terminals.size() - 1)));
    }

    private static Probe between(Plan plan, String part, List<String> contact) {
        return between(plan.findPart(part).orElseThrow(), contact.get(0), contact.get(1));
    }

    private static Probe between(Part part, String one, String other) {
        return new Probe(new Point(part.terminal(one)), new Point(part.terminal(other)));
    }

    /** Whether the readings have been taken across: from end to end, or from both ends to what they have in common. */
    static boolean taken(Probe across, List<Measurement> readings) {
        Map<Object, Map<Point, Point>> joined = new HashMap<>();
        for (Measurement m : readings) {
            if (m.part() != null) {
                continue;
            }
            record When(Quantity quantity, Step step, Map<String, String> switches) {}
            // An ohmmeter sees what lies beside as well: two readings of it do not add up to one.
            if (m.quantity() == Quantity.OHMS) {
                if (List.of(m.probe().from(), m.probe().to()).containsAll(List.of(across.from(), across.to()))) {
                    return true;
                }
                continue;
            }
            Map<Point, Point> parents =
                    joined.computeIfAbsent(new When(m.quantity(), m.step(), m.switches()), k -> new HashMap<>());
            Point one = root(parents, m.probe().from());
            Point other = root(parents, m.probe().to());
            if (!one.equals(other)) {
                parents.put(one, other);
            }
        }
        List<Boolean> found = new ArrayList<>();
        joined.values().forEach(parents -> {
            boolean both = isKnown(parents, across.from()) && isKnown(parents, across.to());
            found.add(both && root(parents, across.from()).equals(root(parents, across.to())));
        });
        return found.contains(true);
    }

    private static boolean isKnown(Map<Point, Point> parents, Point point) {
        return parents.containsKey(point) || parents.containsValue(point);
    }

    private static Point root(Map<Point, Point> parents, Point point) {
        Point at = point;
        while (parents.containsKey(at)) {
            at = parents.get(at);
        }
        return at;
    }
}
