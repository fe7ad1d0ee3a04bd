package loomwright.review.wire;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Condition;
import loomwright.circuit.Generator;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.message.Arg;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FeedGraph.By;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.Protection;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

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
    /** Share of the greatest current of a starter from which on it is cranked; far below it is fed backwards. */
    private static final double IN_EARNEST = 0.5;
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
            } else if (ends.stream().allMatch(end -> isMachineOf(context, end, stretch))) {
                cableWires.addAll(stretch);
            } else {
                findings.add(circuit(context, stretch, ends, barred));
            }
        }
        if (!cableWires.isEmpty()) {
            findings.add(cables(cableWires));
        }
        return findings;
    }

    /** Whether wires lead to the output of a machine, and not to its lamp or sense terminal alone. */
    private static boolean charges(Generator machine, List<Wire> stretch) {
        Set<TerminalRef> main =
                Set.of(machine.terminal(machine.outputTerminal()), machine.terminal(machine.returnTerminal()));
        return stretch.stream().anyMatch(wire -> main.contains(wire.from()) || main.contains(wire.to()));
    }

    private static boolean isMachineOf(ReviewContext context, Part end, List<Wire> stretch) {
        return end instanceof Generator machine
                ? charges(machine, stretch)
                : end instanceof Motor motor && lacksReturn(context, motor);
    }

    /** Whether a motor is a starter, which carries nothing only because nothing leads from its engine to earth. */
    private static boolean lacksReturn(ReviewContext context, Motor motor) {
        return List.of(Condition.CRANK).equals(motor.meantLive()) && context.isUnconnected(motor);
    }

    /**
     * The wires that carry a starter's current while it is cranked in earnest: where a wire of the ignition leads to it, it
     * also gets a little by thin wires, which are no starter cables for that.
     */
    private static Set<String> starterCables(ReviewContext context) {
        Set<String> ids = new HashSet<>();
        List<SolvedStep> cranking = context.momentsWithShorts().stream()
                .map(Moment::solved)
                .filter(solved -> solved.step() == Step.CRANK)
                .toList();
        for (Motor motor : context.plan().listParts(Motor.class)) {
            double mostA = cranking.stream()
                    .mapToDouble(solved -> Math.abs(solved.currentA(motor)))
                    .max()
                    .orElse(0);
            cranking.stream()
                    .filter(solved -> Math.abs(solved.currentA(motor)) >= IN_EARNEST * mostA)
                    .flatMap(solved -> LoadCircuit.find(solved, motor).stream())
                    .filter(loop -> isStarter(motor, loop))
                    // Where nothing leads from the engine to earth, its current returns by thin wires.
                    .forEach(loop -> ids.addAll(
                            context.isUnconnected(motor)
                                    ? loop.feedContributorsV().keySet()
                                    : loop.wires()));
        }
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

    /** The wires that are joined to one, but not by way of a hub. */
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

    private static Arg named(List<Wire> wires) {
        return Arg.things("wires", wires.stream().map(Wire::thing).toList());
    }

    private static Arg unknown(List<Wire> wires) {
        return arg("unknownLengths", (int)
                wires.stream().filter(w -> w.metres() == null).count());
    }

    private static void lead(List<Wire> stretch, List<Finding> findings) {
        double lengthM = lengthM(stretch);
        if (lengthM > SHORT_LEAD_M) {
            boolean sheathed = lengthM <= SHEATHED_LEAD_M;
            double limitM = sheathed ? SHORT_LEAD_M : SHEATHED_LEAD_M;
            findings.add(Finding.of(
                            sheathed ? Severity.NOTE : Severity.WARNING,
                            FindingCode.UNFUSED_LEAD.with(
                                    named(stretch),
                                    arg("lengthM", lengthM),
                                    arg("limitM", limitM),
                                    FindingWording.limitRatio(lengthM, limitM),
                                    unknown(stretch),
                                    arg("sheath", sheathed ? "allowed" : "too-long")),
                            FIRST_FUSE)
                    .remedy(ReviewText.FUSE_NEAR_BATTERY.with()));
        }
    }

    private static Finding circuit(ReviewContext context, List<Wire> stretch, Set<Part> ends, Set<String> hubs) {
        List<Wire> live = liveWhenOff(context, stretch);
        boolean always = !live.isEmpty();
        return Finding.of(
                        always ? Severity.DANGER : Severity.WARNING,
                        FindingCode.UNFUSED_CIRCUIT.with(
                                named(stretch),
                                arg("lengthM", lengthM(stretch)),
                                unknown(stretch),
                                arg("live", live.size() == stretch.size() ? "always" : always ? "partly" : "switched"),
                                Arg.things(
                                        "liveWires",
                                        live.stream().map(Wire::thing).toList()),
                                Arg.things(
                                        "loads", ends.stream().map(Part::thing).toList())),
                        FIRST_FUSE)
                .about(stretch.stream().map(Wire::id).toList())
                .remedy(ReviewText.FUSE_AT_BRANCH.with(named(firsts(stretch, hubs))));
    }

    /** The wires by which a stretch leaves the poles and cables. */
    private static List<Wire> firsts(List<Wire> stretch, Set<String> hubs) {
        List<Wire> firsts = stretch.stream()
                .filter(wire -> hubs.contains(wire.from().toString())
                        || hubs.contains(wire.to().toString()))
                .toList();
        return firsts.isEmpty() ? stretch.subList(0, 1) : firsts;
    }

    /** Those of the wires that a test lamp finds live with the key off. */
    private static List<Wire> liveWhenOff(ReviewContext context, List<Wire> stretch) {
        double liveV = LIVE_FRACTION * context.plan().system().nominalVoltageV();
        List<SolvedStep> off = context.momentsWithShorts().stream()
                .map(Moment::solved)
                .filter(solved -> solved.step() == Step.OFF)
                .toList();
        return stretch.stream()
                .filter(wire -> off.stream()
                        .anyMatch(solved -> Stream.of(wire.from(), wire.to())
                                .allMatch(end -> Math.abs(solved.voltageV(solved.node(end))
                                                .orElse(0))
                                        >= liveV)))
                .toList();
    }

    private static Finding cables(List<Wire> wires) {
        return Finding.note(
                FindingCode.UNFUSED_CABLE.with(named(wires), arg("lengthM", lengthM(wires)), unknown(wires)), CABLES);
    }
}
