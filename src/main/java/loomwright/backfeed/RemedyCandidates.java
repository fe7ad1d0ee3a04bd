package loomwright.backfeed;

import static loomwright.message.Arg.arg;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.Remedy.Kind;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Generator;
import loomwright.circuit.Joint;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.SolvedStep;
import loomwright.operation.UsualIntent;
import org.jspecify.annotations.Nullable;

/**
 * Changes that may stop an unintended feed: a joint or an earth made good, an earth of its own for each load on the way, a
 * second pole of the master switch; in each wire that the current takes to the load a diode against it, a relay instead of it, or
 * the wire taken out or moved; and in what draws from between two windings that should balance. They are not judged here.
 */
final class RemedyCandidates {
    /** Coil of a common plug-in relay at 12 V (makers' data, ISO 7588 pin layout); as many watts at 6 and 24 V. */
    private static final double RELAY_COIL_OHM = 85;

    private final Plan plan;
    private final PlanEdit edit;
    private final TerminalRef livePole;
    /** All that was solved. */
    private final List<Survey.Moment> moments;

    private final Set<String> chargeLamps;
    /** Those through which the current comes, the load itself among them if it is one. */
    private final List<Solenoid> solenoids = new ArrayList<>();

    private final List<Candidate> candidates = new ArrayList<>();

    private RemedyCandidates(Plan plan, TerminalRef livePole, List<Survey.Moment> moments) {
        this.moments = moments;
        this.plan = plan;
        this.edit = new PlanEdit(plan);
        this.livePole = livePole;
        this.chargeLamps = UsualIntent.chargeLamps(plan);
    }

    /**
     * Lists the candidates for one load.
     *
     * @param occurrences when each load is fed when it should be off, by its id: a load fed by the contact of a relay or
     *     solenoid which is itself fed when it should be off is helped by what helps that one
     */
    static List<Candidate> list(Plan plan, Survey survey, Consumer load, Map<String, List<Occurrence>> occurrences) {
        List<Survey.Moment> solved = survey.solvedMoments();
        RemedyCandidates candidates =
                new RemedyCandidates(plan, livePole(plan, solved.get(0).solved()), solved);
        Map<String, PathStep> wires = new LinkedHashMap<>();
        for (String id : chain(load, occurrences)) {
            plan.findPart(id).ifPresent(part -> {
                addWiresTowards((Consumer) part, occurrences.getOrDefault(id, List.of()), wires);
                if (part instanceof Solenoid solenoid) {
                    candidates.solenoids.add(solenoid);
                }
            });
        }
        // The few earths first: of a long way not every wire may be tried.
        EarthCandidates earths = new EarthCandidates(plan);
        candidates.candidates.addAll(earths.repairs(survey, load));
        candidates.candidates.addAll(earths.ownEarths(occurrences.getOrDefault(load.id(), List.of())));
        candidates.candidates.addAll(
                MasterSwitchCandidates.list(plan, load, occurrences.getOrDefault(load.id(), List.of())));
        for (PathStep step : backwardsFirst(wires)) {
            plan.findWire(step.id())
                    .filter(wire -> !plan.isCase(wire))
                    .ifPresent(wire -> candidates.addForWire(wire, step));
        }
        candidates.addBesideWindings(wires.keySet());
        return candidates.candidates;
    }

    /** The load and those loads fed when it should be off through which its current comes, nearest first. */
    private static Set<String> chain(Consumer load, Map<String, List<Occurrence>> occurrences) {
        Set<String> chain = new LinkedHashSet<>();
        Deque<String> open = new ArrayDeque<>(List.of(load.id()));
        while (!open.isEmpty()) {
            String id = open.removeFirst();
            if (chain.add(id)) {
                occurrences.getOrDefault(id, List.of()).stream()
                        .flatMap(o -> o.paths().stream())
                        .flatMap(p -> p.steps().stream())
                        .map(PathStep::id)
                        .filter(occurrences::containsKey)
                        .forEach(open::addLast);
            }
        }
        return chain;
    }

    /** Collects the wires before the load in each path. */
    private static void addWiresTowards(Consumer load, List<Occurrence> occurrences, Map<String, PathStep> wires) {
        // A relay's contact may lie on the way to its own coil: only the coil is the end of it.
        Set<String> ends = Set.of(
                load.terminal(load.feedTerminal()).toString(),
                load.terminal(load.returnTerminal()).toString());
        for (Occurrence occurrence : occurrences) {
            for (FeedPath path : occurrence.paths()) {
                for (PathStep step : path.steps()) {
                    if (ends.contains(step.from()) && ends.contains(step.to())) {
                        break;
                    }
                    if (step.owner() == Branch.Owner.WIRE) {
                        wires.merge(step.id(), step, (a, b) -> b.againstFeed() ? b : a);
                    }
                }
            }
        }
    }

    private static List<PathStep> backwardsFirst(Map<String, PathStep> wires) {
        return wires.values().stream()
                .sorted(Comparator.comparing(PathStep::againstFeed).reversed())
                .toList();
    }

    /** The pole of a battery that is not the earthed one, furthest in volts from the chassis: where a new feed is taken from. */
    private static TerminalRef livePole(Plan plan, SolvedStep solved) {
        String live = plan.system().earthPolarity() == EarthPolarity.NEGATIVE ? Battery.PLUS : Battery.MINUS;
        return plan.listParts(Battery.class).stream()
                .map(battery -> battery.terminal(live))
                .max(Comparator.comparingDouble(
                        t -> Math.abs(solved.voltageV(solved.node(t)).orElse(0))))
                .orElseGet(() -> {
                    Generator generator = plan.listParts(Generator.class).get(0);
                    return generator.terminal(generator.livePole(plan.system()));
                });
    }

    private void addForWire(Wire wire, PathStep unwanted) {
        // As seen along the path from the live pole.
        boolean backwards = unwanted.from().equals(wire.to().toString());
        TerminalRef enters = backwards ? wire.to() : wire.from();
        TerminalRef leaves = backwards ? wire.from() : wire.to();
        if (unwanted.againstFeed() || !wire.directed()) {
            addDiode(wire, enters, leaves);
            if (!enters.equals(livePole)
                    && !leaves.equals(livePole)
                    && !isExciterLead(wire)
                    && everFeeds(wire, enters)) {
                addRelay(wire, enters, leaves);
            }
        }
        addMove(wire, enters, leaves, unwanted);
        addRemoval(wire);
    }

    /**
     * Whether a wire ever carries current towards an end. A relay that feeds this end when the other is live does what the wire is
     * for; if the wire never did, the relay would only feed the rest of the plan from a second place.
     */
    private boolean everFeeds(Wire wire, TerminalRef end) {
        return moments.stream().anyMatch(moment -> {
            double towardsToA =
                    plan.system().earthPolarity().feedSign() * moment.solved().currentA(wire);
            return (end.equals(wire.to()) ? towardsToA : -towardsToA) > FeedStrength.TRICKLE_A;
        });
    }

    private void addRemoval(Wire wire) {
        candidates.add(new Candidate(
                Kind.REMOVE,
                BackfeedText.TAKE_OUT_WIRE.with(
                        arg("wire", wire.thing()), edit.at("from", wire.from()), edit.at("to", wire.to())),
                wire.id(),
                null,
                () -> plan.with(plan.parts(), edit.without(wire))));
    }

    /**
     * Two windings that take the same current in opposite sense hold nothing. What draws current from between them, off the way
     * of the load's own current, leaves one with more, and the plunger stays in: a relay takes that load off, or the wire goes.
     */
    private void addBesideWindings(Set<String> tried) {
        for (Solenoid solenoid : solenoids) {
            if (solenoid.pullInResistanceOhm() != null) {
                addBeside(solenoid.terminal(solenoid.feedTerminal()), tried);
            }
        }
    }

    private void addBeside(TerminalRef windings, Set<String> tried) {
        Set<TerminalRef> between = new LinkedHashSet<>(List.of(windings));
        for (Wire wire : plan.wires()) {
            TerminalRef far = farEnd(wire, between);
            if (far != null && plan.findPart(far.part()).orElseThrow() instanceof Joint joint) {
                joint.terminals().forEach(name -> between.add(joint.terminal(name)));
            }
        }
        for (Wire wire : plan.wires()) {
            TerminalRef far = farEnd(wire, between);
            if (far != null && !tried.contains(wire.id())) {
                addRelay(wire, far, far.equals(wire.to()) ? wire.from() : wire.to());
                addRemoval(wire);
            }
        }
    }

    /** The end of a wire that is not among terminals of which the other end is one; absent if there is none. */
    private static @Nullable TerminalRef farEnd(Wire wire, Set<TerminalRef> near) {
        if (near.contains(wire.from()) == near.contains(wire.to())) {
            return null;
        }
        return near.contains(wire.from()) ? wire.to() : wire.from();
    }

    /** Whether a wire leads to an alternator, or from the lamp before its D+: a relay there would take the lamp's current away. */
    private boolean isExciterLead(Wire wire) {
        return Stream.of(wire.from(), wire.to())
                .anyMatch(end -> plan.findPart(end.part())
                        .filter(part -> part instanceof Generator
                                || (part instanceof FilamentLamp lamp && chargeLamps.contains(lamp.id())))
                        .isPresent());
    }

    private void addDiode(Wire wire, TerminalRef enters, TerminalRef leaves) {
        Diode diode = Diode.silicon(plan.freeId("diode-" + wire.id(), ""), null);
        // It lets feed through from where the unwanted one would leave to where it would enter.
        boolean currentFlowsAsFed = plan.system().earthPolarity().feedSign() > 0;
        TerminalRef anodeEnd = currentFlowsAsFed ? leaves : enters;
        TerminalRef cathodeEnd = currentFlowsAsFed ? enters : leaves;
        List<Wire> wires = edit.without(wire);
        wires.add(wire.withEnds(anodeEnd, diode.terminal(Diode.ANODE)));
        wires.add(
                PlanEdit.fitted(plan.freeId("diode-" + wire.id(), "-lead"), diode.terminal(Diode.CATHODE), cathodeEnd));
        candidates.add(new Candidate(
                Kind.DIODE,
                BackfeedText.FIT_DIODE.with(
                        arg("wire", wire.thing()), edit.at("anode", anodeEnd), edit.at("cathode", cathodeEnd)),
                wire.id(),
                diode.id(),
                () -> plan.with(edit.with(diode), wires)));
    }

    private void addRelay(Wire wire, TerminalRef enters, TerminalRef leaves) {
        double coilOhm = RELAY_COIL_OHM * Math.pow(plan.system().nominalVoltageV() / 12, 2);
        Relay relay = new Relay(
                plan.freeId("relay-" + wire.id(), ""),
                null,
                coilOhm,
                null,
                null,
                Switch.CONTACT_OHM,
                null,
                List.of(Condition.values()),
                List.of());
        EarthPoint earth = new EarthPoint(plan.freeId("relay-" + wire.id(), "-earth"), null, 0.0);
        List<Wire> wires = edit.without(wire);
        wires.add(wire.withEnds(relay.terminal(Relay.MAKE), enters));
        wires.add(PlanEdit.fitted(plan.freeId("relay-" + wire.id(), "-86"), leaves, relay.terminal(Relay.COIL_FEED)));
        wires.add(PlanEdit.fitted(
                plan.freeId("relay-" + wire.id(), "-85"),
                relay.terminal(Relay.COIL_RETURN),
                earth.terminal(EarthPoint.TERMINAL)));
        wires.add(PlanEdit.fitted(plan.freeId("relay-" + wire.id(), "-30"), livePole, relay.terminal(Relay.COMMON)));
        candidates.add(new Candidate(
                Kind.RELAY,
                BackfeedText.FIT_RELAY.with(
                        arg("wire", wire.thing()),
                        edit.at("coil", leaves),
                        edit.at("supply", livePole),
                        edit.at("fed", enters)),
                wire.id(),
                relay.id(),
                () -> plan.with(edit.with(relay, earth), wires)));
    }

    /** A solenoid's own bypass contact, where it has one free, is live only while the solenoid is in. */
    private void addMove(Wire wire, TerminalRef enters, TerminalRef leaves, PathStep unwanted) {
        if (!unwanted.againstFeed()) {
            return;
        }
        for (Solenoid solenoid : solenoids) {
            TerminalRef bypass = solenoid.terminal(Solenoid.BYPASS);
            if (plan.wires().stream().anyMatch(w -> w.from().equals(bypass) || w.to().equals(bypass))) {
                continue;
            }
            List<Wire> wires = edit.without(wire);
            wires.add(wire.withEnds(bypass, enters));
            candidates.add(new Candidate(
                    Kind.MOVE,
                    BackfeedText.MOVE_WIRE.with(
                            arg("wire", wire.thing()),
                            edit.at("from", leaves),
                            edit.at("to", bypass),
                            arg("part", solenoid.thing())),
                    wire.id(),
                    null,
                    () -> plan.with(plan.parts(), wires)));
        }
    }
}
