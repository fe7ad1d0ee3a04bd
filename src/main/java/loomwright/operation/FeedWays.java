package loomwright.operation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Ammeter;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Connector;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Flasher;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * In one condition: in which positions of the free switches a forward way leads from the live pole to a terminal, and from a
 * terminal to the earthed pole. Ways go through wires (a directed one in its feed direction), joints, connectors, fuses,
 * links, resistors, ballasts, diodes as they conduct, and the contacts of switches, relays and solenoids; never through a
 * consumer or a source.
 *
 * <p>A relay counts as pulled in while it should be, or, where the plan leaves that unsaid, while its winding has both
 * ways; a break contact is joined otherwise. Formulas spread from the poles until none grows any more, first with all unsaid
 * relays released, then again with what that made of their windings. Cost: contacts, wires and terminals a few times each.
 */
final class FeedWays {
    private static final TerminalRef CHASSIS = new TerminalRef("", "");

    private final Plan plan;
    private final Condition condition;
    private final Map<String, PositionFormula> pulledIn = new HashMap<>();
    private Map<TerminalRef, PositionFormula> fed = Map.of();
    private Map<TerminalRef, PositionFormula> returned = Map.of();

    /** A way on, open while {@code when} holds. */
    private record Way(TerminalRef to, PositionFormula when) {}

    FeedWays(Plan plan, Condition condition) {
        this.plan = plan;
        this.condition = condition;
        List<Consumer> magnets = plan.listParts(Consumer.class).stream()
                .filter(c -> c instanceof Electromagnet)
                .toList();
        for (int round = 0; round <= magnets.size() + 1; round++) {
            Map<String, PositionFormula> before = Map.copyOf(pulledIn);
            magnets.forEach(m -> pulledIn.put(m.id(), pulledIn(m)));
            if (round > 0 && pulledIn.equals(before)) {
                break;
            }
            fed = spread(liveSources(), forward());
            returned = spread(earthed(), backward());
        }
    }

    /** While a forward way leads to a terminal from the live pole. */
    PositionFormula fed(TerminalRef terminal) {
        return fed.getOrDefault(terminal, PositionFormula.NEVER);
    }

    /** While a way leads from a terminal to the earthed pole. */
    PositionFormula returned(TerminalRef terminal) {
        return returned.getOrDefault(terminal, PositionFormula.NEVER);
    }

    /** All that a current leaving a load at its return can come to, in some position of the switches; the return itself first. */
    Set<TerminalRef> wayBack(TerminalRef back) {
        Map<TerminalRef, List<TerminalRef>> withCurrent = new HashMap<>();
        backward()
                .forEach((from, ways) -> ways.forEach(way -> withCurrent
                        .computeIfAbsent(way.to(), key -> new ArrayList<>())
                        .add(from)));
        Set<TerminalRef> reached = new LinkedHashSet<>(List.of(back));
        Deque<TerminalRef> open = new ArrayDeque<>(reached);
        while (!open.isEmpty()) {
            for (TerminalRef next : withCurrent.getOrDefault(open.removeFirst(), List.of())) {
                if (reached.add(next)) {
                    open.add(next);
                }
            }
        }
        return reached;
    }

    private PositionFormula pulledIn(Consumer magnet) {
        List<Condition> stated = magnet.meantLive();
        if (stated != null) {
            return stated.contains(condition) ? stated(magnet) : PositionFormula.NEVER;
        } else if (magnet instanceof Solenoid && condition != Condition.CRANK) {
            return PositionFormula.NEVER;
        }
        PositionFormula feed = fed(magnet.terminal(magnet.feedTerminal()));
        // A lost earth is a fault, no sign that the relay is not meant to pull in.
        PositionFormula back = returned(magnet.terminal(magnet.returnTerminal()));
        return back.isNever() ? feed : feed.and(back);
    }

    private PositionFormula stated(Consumer magnet) {
        if (magnet.meantLiveWhen().isEmpty()) {
            return PositionFormula.ALWAYS;
        }
        PositionFormula any = PositionFormula.NEVER;
        for (LiveAlternative one : magnet.meantLiveWhen()) {
            if (one.countsIn(condition)) {
                PositionFormula all = PositionFormula.ALWAYS;
                for (Map.Entry<String, List<String>> entry : one.switches().entrySet()) {
                    Switch chosen = (Switch) plan.findPart(entry.getKey()).orElseThrow();
                    all = all.and(
                            chosen.free()
                                    ? PositionFormula.in(chosen, entry.getValue())
                                    : entry.getValue()
                                                    .contains(
                                                            chosen.in(condition).name())
                                            ? PositionFormula.ALWAYS
                                            : PositionFormula.NEVER);
                }
                any = any.or(all);
            }
        }
        return any;
    }

    private List<TerminalRef> liveSources() {
        List<TerminalRef> poles = new ArrayList<>();
        boolean negativeEarth = plan.system().earthPolarity().feedSign() > 0;
        plan.listParts(Battery.class).forEach(b -> poles.add(b.terminal(negativeEarth ? Battery.PLUS : Battery.MINUS)));
        if (condition == Condition.RUNNING) {
            plan.listParts(Generator.class).forEach(g -> {
                poles.add(g.terminal(g.livePole(plan.system())));
                poles.add(g.terminal(g.lampTerminal()));
            });
        }
        return poles;
    }

    private List<TerminalRef> earthed() {
        List<TerminalRef> poles = new ArrayList<>(List.of(CHASSIS));
        boolean negativeEarth = plan.system().earthPolarity().feedSign() > 0;
        plan.listParts(Battery.class).forEach(b -> poles.add(b.terminal(negativeEarth ? Battery.MINUS : Battery.PLUS)));
        if (plan.listParts(Battery.class).isEmpty()) {
            plan.listParts(Generator.class).forEach(g -> poles.add(g.terminal(g.earthedPole(plan.system()))));
        }
        return poles;
    }

    private static Map<TerminalRef, PositionFormula> spread(List<TerminalRef> poles, Map<TerminalRef, List<Way>> ways) {
        Map<TerminalRef, PositionFormula> reached = new HashMap<>();
        Deque<TerminalRef> open = new ArrayDeque<>();
        Set<TerminalRef> waiting = new HashSet<>();
        for (TerminalRef pole : poles) {
            reached.put(pole, PositionFormula.ALWAYS);
            open.add(pole);
            waiting.add(pole);
        }
        while (!open.isEmpty()) {
            TerminalRef at = open.removeFirst();
            waiting.remove(at);
            PositionFormula here = reached.getOrDefault(at, PositionFormula.NEVER);
            for (Way way : ways.getOrDefault(at, List.of())) {
                PositionFormula known = reached.getOrDefault(way.to(), PositionFormula.NEVER);
                PositionFormula more = known.or(here.and(way.when()));
                if (!more.equals(known)) {
                    reached.put(way.to(), more);
                    if (waiting.add(way.to())) {
                        open.add(way.to());
                    }
                }
            }
        }
        return reached;
    }

    private Map<TerminalRef, List<Way>> forward() {
        Map<TerminalRef, List<Way>> ways = new HashMap<>();
        for (Wire wire : plan.wires()) {
            add(ways, wire.from(), wire.to(), PositionFormula.ALWAYS);
            if (!wire.directed()) {
                add(ways, wire.to(), wire.from(), PositionFormula.ALWAYS);
            }
        }
        plan.parts().forEach(part -> addPart(ways, part, true));
        plan.connectors().forEach(connector -> addConnector(ways, connector));
        return ways;
    }

    /** From the earthed pole towards the loads: against the current. */
    private Map<TerminalRef, List<Way>> backward() {
        Map<TerminalRef, List<Way>> ways = new HashMap<>();
        for (Wire wire : plan.wires()) {
            both(ways, wire.from(), wire.to(), PositionFormula.ALWAYS);
        }
        for (Part part : plan.parts()) {
            addPart(ways, part, false);
            if (part instanceof Generator generator && condition != Condition.RUNNING) {
                // Through the field winding, or the armature of a dynamo.
                add(
                        ways,
                        generator.terminal(generator.earthedPole(plan.system())),
                        generator.terminal(generator.lampTerminal()),
                        PositionFormula.ALWAYS);
            } else if (part instanceof EarthPoint) {
                both(ways, part.terminal(EarthPoint.TERMINAL), CHASSIS, PositionFormula.ALWAYS);
            } else if (part instanceof ContactBreaker) {
                star(ways, part, List.of(ContactBreaker.SWITCHED, ContactBreaker.RETURN), PositionFormula.ALWAYS);
            } else if (part instanceof IgnitionModule) {
                star(ways, part, List.of(IgnitionModule.SWITCHED, IgnitionModule.RETURN), PositionFormula.ALWAYS);
            }
        }
        plan.connectors().forEach(connector -> addConnector(ways, connector));
        return ways;
    }

    private void addPart(Map<TerminalRef, List<Way>> ways, Part part, boolean fromLivePole) {
        if (part instanceof Joint
                || part instanceof Fuse
                || part instanceof FusibleLink
                || part instanceof FixedResistor
                || part instanceof Ammeter
                || part instanceof Ballast) {
            star(ways, part, part.terminals(), PositionFormula.ALWAYS);
        } else if (part instanceof Diode) {
            // Away from a negative live pole the feed goes against the current.
            boolean withCurrent = plan.system().earthPolarity().feedSign() > 0 == fromLivePole;
            add(
                    ways,
                    part.terminal(withCurrent ? Diode.ANODE : Diode.CATHODE),
                    part.terminal(withCurrent ? Diode.CATHODE : Diode.ANODE),
                    PositionFormula.ALWAYS);
        } else if (part instanceof ControlBox) {
            star(ways, part, List.of(ControlBox.BATTERY, ControlBox.LOADS), PositionFormula.ALWAYS);
            star(ways, part, List.of(ControlBox.ARMATURE, ControlBox.FIELD), PositionFormula.ALWAYS);
            if (condition == Condition.RUNNING) {
                both(
                        ways,
                        part.terminal(ControlBox.ARMATURE),
                        part.terminal(ControlBox.BATTERY),
                        PositionFormula.ALWAYS);
            }
        } else if (part instanceof Stabiliser) {
            star(ways, part, List.of(Stabiliser.FEED, Stabiliser.OUTPUT), PositionFormula.ALWAYS);
        } else if (part instanceof Flasher) {
            star(ways, part, List.of(Flasher.FEED, Flasher.OUTPUT, Flasher.TELL_TALE), PositionFormula.ALWAYS);
        } else if (part instanceof Switch chosen) {
            addSwitch(ways, chosen);
        } else if (part instanceof Relay) {
            PositionFormula in = pulledIn.getOrDefault(part.id(), PositionFormula.NEVER);
            both(ways, part.terminal(Relay.COMMON), part.terminal(Relay.MAKE), in);
            both(ways, part.terminal(Relay.COMMON), part.terminal(Relay.BREAK), in.not());
        } else if (part instanceof Solenoid) {
            PositionFormula in = pulledIn.getOrDefault(part.id(), PositionFormula.NEVER);
            both(ways, part.terminal(Solenoid.SUPPLY), part.terminal(Solenoid.MOTOR), in);
            both(ways, part.terminal(Solenoid.SUPPLY), part.terminal(Solenoid.BYPASS), in);
        }
    }

    private void addSwitch(Map<TerminalRef, List<Way>> ways, Switch chosen) {
        if (!chosen.free()) {
            chosen.joinsIn(chosen.in(condition)).forEach(joined -> star(ways, chosen, joined, PositionFormula.ALWAYS));
            return;
        }
        for (int p = 0; p < chosen.positions().size(); p++) {
            PositionFormula here = PositionFormula.at(chosen, p);
            chosen.joinsIn(chosen.positions().get(p)).forEach(joined -> star(ways, chosen, joined, here));
        }
    }

    private void addConnector(Map<TerminalRef, List<Way>> ways, Connector connector) {
        Part one = plan.findPart(connector.halves().get(0)).orElseThrow();
        Part other = plan.findPart(connector.halves().get(1)).orElseThrow();
        for (String way : one.terminals()) {
            if (other.terminals().contains(way)) {
                both(ways, one.terminal(way), other.terminal(way), PositionFormula.ALWAYS);
            }
        }
    }

    private static void star(
            Map<TerminalRef, List<Way>> ways, Part part, List<String> terminals, PositionFormula when) {
        for (int i = 1; i < terminals.size(); i++) {
            both(ways, part.terminal(terminals.get(0)), part.terminal(terminals.get(i)), when);
        }
    }

    private static void both(
            Map<TerminalRef, List<Way>> ways, TerminalRef one, TerminalRef other, PositionFormula when) {
        add(ways, one, other, when);
        add(ways, other, one, when);
    }

    private static void add(Map<TerminalRef, List<Way>> ways, TerminalRef from, TerminalRef to, PositionFormula when) {
        if (!when.isNever()) {
            ways.computeIfAbsent(from, key -> new ArrayList<>()).add(new Way(to, when));
        }
    }
}
