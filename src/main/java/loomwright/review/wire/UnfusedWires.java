package loomwright.review.wire;

import static loomwright.review.context.FindingWording.figure;
import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Alternator;
import loomwright.circuit.Condition;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Wire;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FeedGraph.By;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.Protection;
import loomwright.review.context.ReviewContext;

/**
 * Every wire that the battery reaches without a fuse or link on the way. Battery, starter and charging cables are usual
 * so; a lead to the first fuse is to be short; any other wire is a circuit without a fuse.
 */
public final class UnfusedWires implements Check {
    /** One foot, which is what a fuse box or link beside the battery takes: common practice, no source. */
    static final double SHORT_LEAD_M = 0.31;
    /** 72 inches from the battery terminal, in a sheath: 33 CFR 183.455, from memory. */
    static final double SHEATHED_LEAD_M = 1.83;

    private static final Basis FIRST_FUSE = Basis.fromMemory(
            "the first fuse within 72 inches of the battery terminal if the lead is sheathed all the way, else close to it",
            "33 CFR 183.455, overcurrent protection");
    private static final Basis CABLES = Basis.commonPractice(
            "battery, starter and charging cables have no fuse: short, apart, guarded against chafing");
    /** As a test lamp shows it. */
    private static final double LIVE_FRACTION = 0.05;

    @Override
    public List<Finding> check(ReviewContext context) {
        Set<String> cables = starterCables(context);
        List<Wire> cableWires = new ArrayList<>();
        List<List<Wire>> stretches = new ArrayList<>();
        for (Wire wire : context.protection().unfused().wires()) {
            if (cables.contains(wire.id())) {
                cableWires.add(wire);
            }
        }
        Set<String> barred = hubs(context, cableWires);
        Set<String> told = new HashSet<>(cables);
        for (Wire wire : context.protection().unfused().wires()) {
            if (!told.contains(wire.id())) {
                List<Wire> stretch = stretch(context, wire, barred, cables);
                stretch.forEach(w -> told.add(w.id()));
                stretches.add(stretch);
            }
        }
        List<Finding> findings = new ArrayList<>();
        for (List<Wire> stretch : stretches) {
            Set<Part> ends = ends(context, stretch);
            if (ends.isEmpty()) {
                lead(stretch, findings);
            } else if (ends.stream().allMatch(Alternator.class::isInstance)) {
                cableWires.addAll(stretch);
            } else {
                findings.add(circuit(context, stretch, ends));
            }
        }
        if (!cableWires.isEmpty()) {
            findings.add(cables(cableWires));
        }
        return findings;
    }

    /** The wires that carry the starter's current. */
    private static Set<String> starterCables(ReviewContext context) {
        Set<String> ids = new HashSet<>();
        context.momentsWithShorts().stream()
                .filter(m -> m.solved().step() == Step.CRANK)
                .forEach(m -> context.plan()
                        .listParts(Motor.class)
                        .forEach(motor -> LoadCircuit.find(m.solved(), motor)
                                .filter(loop -> isStarter(motor, loop))
                                .ifPresent(loop -> ids.addAll(loop.wires()))));
        return ids;
    }

    /** A motor behind the contact of a solenoid, or one that is meant to turn only while cranking. */
    static boolean isStarter(Motor motor, LoadCircuit loop) {
        return loop.throughSolenoid() || List.of(Condition.CRANK).equals(motor.meantLive());
    }

    /** The live poles and the ends of the cables, with what is joined to them: there a stretch begins. */
    private static Set<String> hubs(ReviewContext context, List<Wire> cables) {
        Set<String> starts = new LinkedHashSet<>(context.protection().livePoles());
        for (Wire cable : cables) {
            starts.add(cable.from().toString());
            starts.add(cable.to().toString());
        }
        return context.protection().graph().reach(starts, EnumSet.of(By.JOINT), Set.of());
    }

    /** The wires that hang together with one, but not by way of a hub. */
    private static List<Wire> stretch(ReviewContext context, Wire first, Set<String> barred, Set<String> cables) {
        Set<String> starts =
                new LinkedHashSet<>(List.of(first.from().toString(), first.to().toString()));
        starts.removeAll(barred);
        Set<String> reached = context.protection()
                .graph()
                .reach(
                        starts,
                        Protection.UNLIMITED,
                        union(barred, context.protection().earthed()));
        return context.protection().unfused().wires().stream()
                .filter(w -> !cables.contains(w.id()))
                .filter(w ->
                        w.equals(first) || reached.contains(w.from().toString()) || reached.contains(w.to().toString()))
                .toList();
    }

    private static Set<String> union(Set<String> one, Set<String> other) {
        Set<String> union = new HashSet<>(one);
        union.addAll(other);
        return union;
    }

    /** The parts at its ends that are neither fuse nor joint nor contact nor source: what it feeds. */
    private static Set<Part> ends(ReviewContext context, List<Wire> stretch) {
        Set<Part> ends = new LinkedHashSet<>();
        for (Wire wire : stretch) {
            for (var end : List.of(wire.from(), wire.to())) {
                boolean passes = context.protection().graph().at(end.toString()).stream()
                        .anyMatch(e -> e.by() != By.WIRE && e.leadsFrom(end.toString()));
                if (!passes && !context.protection().livePoles().contains(end.toString())) {
                    context.plan().findPart(end.part()).ifPresent(ends::add);
                }
            }
        }
        return ends;
    }

    private static double lengthM(List<Wire> wires) {
        return wires.stream()
                .map(Wire::metres)
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    private static String named(List<Wire> wires) {
        long unknown = wires.stream().filter(w -> w.metres() == null).count();
        return wires.stream().map(Wire::id).collect(Collectors.joining(", ")) + " (" + number(lengthM(wires)) + " m"
                + (unknown == 0 ? "" : " and " + unknown + " of unknown length") + ")";
    }

    private static List<String> ids(List<Wire> wires) {
        return wires.stream().map(Wire::id).toList();
    }

    private static void lead(List<Wire> stretch, List<Finding> findings) {
        double lengthM = lengthM(stretch);
        if (lengthM > SHORT_LEAD_M) {
            boolean sheathed = lengthM <= SHEATHED_LEAD_M;
            findings.add(FindingCode.UNFUSED_LEAD.finding(
                    sheathed ? Severity.NOTE : Severity.WARNING,
                    ids(stretch),
                    "Nothing protects the lead from the battery to the first fuse: " + named(stretch) + ". "
                            + (sheathed
                                    ? "So long it may be only in a sheath all the way, where nothing can chafe it."
                                    : "That is too long: a chafed place there starts a fire."),
                    FindingWording.against("lengthM", lengthM, "limitM", sheathed ? SHORT_LEAD_M : SHEATHED_LEAD_M),
                    FIRST_FUSE,
                    "Put a fuse or fusible link for the whole close to the battery."));
        }
    }

    private static Finding circuit(ReviewContext context, List<Wire> stretch, Set<Part> ends) {
        boolean always = liveWhenOff(context, stretch);
        return FindingCode.UNFUSED_CIRCUIT.finding(
                always ? Severity.DANGER : Severity.WARNING,
                ids(stretch),
                "No fuse or link protects " + named(stretch) + ", "
                        + (always ? "live even with the key off" : "once its contact has closed") + ", on the way to "
                        + ends.stream().map(Part::displayName).collect(Collectors.joining(", "))
                        + ": chafed through, the wire burns.",
                List.of(figure("lengthM", lengthM(stretch))),
                FIRST_FUSE,
                "Put a fuse for it close to where it leaves the battery or the cable.");
    }

    private static boolean liveWhenOff(ReviewContext context, List<Wire> stretch) {
        double liveV = LIVE_FRACTION * context.plan().system().nominalVoltageV();
        return context.momentsWithShorts().stream()
                .filter(m -> m.solved().step() == Step.OFF)
                .anyMatch(m -> stretch.stream()
                        .anyMatch(w -> Math.abs(m.solved()
                                                .voltageV(m.solved().node(w.to()))
                                                .orElse(0))
                                        >= liveV
                                && Math.abs(m.solved()
                                                .voltageV(m.solved().node(w.from()))
                                                .orElse(0))
                                        >= liveV));
    }

    private static Finding cables(List<Wire> wires) {
        return FindingCode.UNFUSED_CABLE.finding(
                Severity.NOTE,
                ids(wires),
                "Battery, starter and charging cables " + named(wires)
                        + " have no fuse, as is usual: they must lie short, apart and guarded against chafing.",
                List.of(figure("lengthM", lengthM(wires))),
                CABLES,
                null);
    }
}
