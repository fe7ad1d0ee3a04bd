package loomwright.operation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.circuit.Ammeter;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Condition;
import loomwright.circuit.Connector;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Flasher;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Parts that no current can go through as the plan is drawn: a lead is off, or what is joined to the return never leads to
 * earth, in no position of any switch. A part without any wire is a spare and not told; nor are the contacts of switches and
 * relays, of which some are free in many vehicles.
 */
public final class MissingConnections {

    /** What is missing. */
    public enum Kind {
        /** Nothing is joined to the terminal, though the part is in use. */
        TERMINAL_NOT_CONNECTED,
        /** Something is joined to the terminal, but it never leads to the earthed pole. */
        NO_RETURN
    }

    /**
     * One terminal at which something is missing.
     *
     * @param at where the lead is missing: the terminal itself, or of a return that goes on from there the joint at which it
     *     ends with others, or the terminal of the contact points or module behind a coil
     */
    public record Missing(Kind kind, Part part, TerminalRef terminal, TerminalRef at) {}

    private final Plan plan;
    private final Set<TerminalRef> connected = new HashSet<>();
    private final Map<Condition, FeedWays> ways = new EnumMap<>(Condition.class);
    private final List<Missing> missing = new ArrayList<>();

    private MissingConnections(Plan plan) {
        this.plan = plan;
        for (Wire wire : plan.wires()) {
            connected.add(wire.from());
            connected.add(wire.to());
        }
        for (Connector connector : plan.connectors()) {
            for (String half : connector.halves()) {
                Part part = plan.findPart(half).orElseThrow();
                part.terminals().forEach(t -> connected.add(part.terminal(t)));
            }
        }
        for (Condition condition : Condition.values()) {
            ways.put(condition, new FeedWays(plan, condition));
        }
    }

    /** All of them, in the order of the plan. */
    public static List<Missing> of(Plan plan) {
        MissingConnections search = new MissingConnections(plan);
        plan.parts().forEach(search::check);
        return search.missing;
    }

    private void check(Part part) {
        List<String> ends = ends(part);
        List<TerminalRef> open = ends.stream()
                .map(part::terminal)
                .filter(terminal -> !connected.contains(terminal))
                .toList();
        if (open.size() < ends.size()) {
            open.forEach(terminal -> missing.add(new Missing(Kind.TERMINAL_NOT_CONNECTED, part, terminal, terminal)));
        }
        if (open.isEmpty() && part instanceof Consumer consumer && hasNoReturn(consumer)) {
            TerminalRef back = part.terminal(consumer.returnTerminal());
            missing.add(new Missing(Kind.NO_RETURN, part, back, endOfReturn(consumer, back)));
        }
    }

    /** A coil that its points or module switch must never be earthed itself: it would stay on, without a spark. */
    private TerminalRef endOfReturn(Consumer consumer, TerminalRef back) {
        List<Condition> meant = Intent.conditions(consumer, plan);
        Condition asked = meant.isEmpty() ? Condition.RUN : meant.get(0);
        Set<TerminalRef> way = Objects.requireNonNull(ways.get(asked)).wayBack(back);
        return way.stream()
                .filter(terminal -> plan.findPart(terminal.part()).orElse(null) instanceof Joint)
                .max(Comparator.comparingLong(
                        terminal -> plan.wiresAt(plan.findPart(terminal.part()).orElseThrow())))
                .or(() -> way.stream()
                        .filter(terminal -> {
                            Part part = plan.findPart(terminal.part()).orElse(null);
                            return (part instanceof ContactBreaker
                                            && terminal.terminal().equals(ContactBreaker.RETURN))
                                    || (part instanceof IgnitionModule
                                            && terminal.terminal().equals(IgnitionModule.RETURN));
                        })
                        .findFirst())
                .orElse(back);
    }

    /** The terminals without which a part does nothing. */
    private static List<String> ends(Part part) {
        if (part instanceof Consumer consumer) {
            return List.of(consumer.feedTerminal(), consumer.returnTerminal());
        } else if (part instanceof Battery) {
            return List.of(Battery.PLUS, Battery.MINUS);
        } else if (part instanceof Generator generator) {
            return List.of(generator.outputTerminal(), generator.returnTerminal());
        } else if (part instanceof ControlBox) {
            return List.of(ControlBox.ARMATURE, ControlBox.EARTH);
        } else if (part instanceof Flasher flasher) {
            return flasher.electronic()
                    ? List.of(Flasher.FEED, Flasher.OUTPUT, Flasher.EARTH)
                    : List.of(Flasher.FEED, Flasher.OUTPUT);
        } else if (part instanceof Ballast) {
            // One end may be free: a ballast can be fed at a tap.
            return List.of();
        } else if (part instanceof IgnitionModule
                || part instanceof ContactBreaker
                || part instanceof Fuse
                || part instanceof FusibleLink
                || part instanceof FixedResistor
                || part instanceof Ammeter
                || part instanceof Stabiliser
                || part instanceof Diode
                || part instanceof Capacitor) {
            return part.terminals();
        }
        return List.of();
    }

    /** Whether its return never leads to earth in any condition in which it should be live, nor on to another load. */
    private boolean hasNoReturn(Consumer consumer) {
        TerminalRef back = consumer.terminal(consumer.returnTerminal());
        List<Condition> meant = Intent.conditions(consumer, plan);
        List<Condition> asked = meant.isEmpty() ? List.of(Condition.values()) : meant;
        boolean lost = asked.stream()
                .allMatch(condition -> Objects.requireNonNull(ways.get(condition))
                        .returned(back)
                        .isNever());
        return lost && !feedsAnother(consumer, back);
    }

    private boolean feedsAnother(Consumer consumer, TerminalRef back) {
        Set<TerminalRef> joined = Joined.with(plan, List.of(back));
        return plan.listParts(Consumer.class).stream()
                .anyMatch(other ->
                        !other.id().equals(consumer.id()) && joined.contains(other.terminal(other.feedTerminal())));
    }
}
