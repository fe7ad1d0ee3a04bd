package loomwright.review.wire;

import static loomwright.review.context.FindingWording.figure;
import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Solenoid;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.conductor.CircuitKind;
import loomwright.conductor.DropLimit;
import loomwright.operation.CurrentPaths;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.WorstCaseOrder;

/**
 * The volts lost between source and load and on the way back, against the usual limit of the load's kind of circuit. Of
 * an ignition coil the limit is for the feed alone. Loads of one kind that lose most in the same place are told together.
 */
public final class VoltageDrops implements Check {
    /** What a wrong figure of arithmetic could come to. */
    private static final double ROUNDING = 1 + 1e-9;

    /** No kind of circuit has a limit of less than this share of the supply. */
    private static final double STRICTEST = 0.025;

    /** A relay of its own for less is no remedy but a nuisance (common practice, no source). */
    private static final double WORTH_A_RELAY_A = 1;

    /** One load at one time. */
    private record Drop(
            Consumer load,
            Moment moment,
            CircuitKind kind,
            LoadCircuit loop,
            DropLimit limit,
            double judgedV,
            String worstId,
            double worstV) {
        double timesLimit() {
            return judgedV / limit.limitV();
        }
    }

    private record Place(CircuitKind kind, String worstId) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        Map<String, Drop> worstOfLoad = new LinkedHashMap<>();
        List<Consumer> loads = context.plan().listParts(Consumer.class);
        for (Moment moment : context.moments()) {
            SolvedStep solved = moment.solved();
            double supplyV = supplyV(context.plan(), solved);
            CurrentPaths paths = new CurrentPaths(solved);
            for (Consumer load : loads) {
                if (mayCount(load, solved.step())
                        && supplyV - Math.abs(solved.acrossV(load)) > STRICTEST * supplyV
                        && moment.isMeant(load)) {
                    LoadCircuit.find(solved, paths, load)
                            .flatMap(loop -> drop(load, moment, loop))
                            .ifPresent(drop -> worstOfLoad.merge(load.id(), drop, VoltageDrops::worse));
                }
            }
        }
        Map<Place, List<Drop>> together = new LinkedHashMap<>();
        worstOfLoad
                .values()
                .forEach(d -> together.computeIfAbsent(new Place(d.kind(), d.worstId()), key -> new ArrayList<>())
                        .add(d));
        return together.values().stream()
                .map(drops -> finding(context.plan(), drops))
                .toList();
    }

    /** A load is within the strictest limit of all, whatever its way, if it has all but that share of this. */
    private static double supplyV(Plan plan, SolvedStep solved) {
        double batteriesV = 0;
        double alternatorV = 0;
        for (Part part : plan.parts()) {
            if (part instanceof Battery b) {
                batteriesV += Math.abs(solved.acrossV(b.terminal(Battery.PLUS), b.terminal(Battery.MINUS)));
            } else if (part instanceof Alternator a) {
                double acrossV = Math.abs(solved.acrossV(a.terminal(Alternator.OUTPUT), a.terminal(Alternator.RETURN)));
                alternatorV = Math.max(alternatorV, acrossV);
            }
        }
        return Math.max(batteriesV, alternatorV);
    }

    private static Drop worse(Drop a, Drop b) {
        return WorstCaseOrder.compare(a.moment(), a.timesLimit(), b.moment(), b.timesLimit()) <= 0 ? a : b;
    }

    /** While the starter turns only what is there for starting is judged. */
    private static boolean counts(CircuitKind kind, Step step) {
        return switch (kind) {
            case STARTER, STARTER_CONTROL -> step == Step.CRANK;
            case IGNITION_FEED -> !step.passing();
            default -> !step.passing() && step != Step.CRANK;
        };
    }

    /** Spares the search for the loop of a load that is not judged in a step, whatever its way. */
    private static boolean mayCount(Consumer load, Step step) {
        return load instanceof Motor
                ? counts(CircuitKind.STARTER, step) || counts(CircuitKind.GENERAL, step)
                : counts(kind(load), step);
    }

    /** What a load loses, if it is judged and loses too much. */
    private static Optional<Drop> drop(Consumer load, Moment moment, LoadCircuit loop) {
        CircuitKind kind = kind(load, loop);
        if (!counts(kind, moment.solved().step())) {
            return Optional.empty();
        }
        boolean feedAlone = kind == CircuitKind.IGNITION_FEED;
        double judgedV = loop.feedDropV() + (feedAlone ? 0 : loop.returnDropV());
        DropLimit limit = DropLimit.of(kind, loop.supplyV());
        if (!(judgedV > limit.limitV() * ROUNDING)) {
            return Optional.empty();
        }
        Map<String, Double> places = new LinkedHashMap<>(loop.feedContributorsV());
        if (!feedAlone) {
            loop.returnContributorsV().forEach((id, v) -> places.merge(id, v, Double::sum));
        }
        // Of two that lose the same but for rounding, the one whose name comes first.
        Map.Entry<String, Double> worst = places.entrySet().stream()
                .max(Comparator.<Map.Entry<String, Double>>comparingDouble(
                                e -> e.getValue().floatValue())
                        .thenComparing(
                                Map.Entry.<String, Double>comparingByKey().reversed()))
                .orElse(Map.entry("", 0.0));
        return Optional.of(new Drop(load, moment, kind, loop, limit, judgedV, worst.getKey(), worst.getValue()));
    }

    /** Whether a load loses more in a moment than is usual, so that this check tells of it. */
    public static boolean isTold(Consumer load, Moment moment) {
        return LoadCircuit.find(moment.solved(), load)
                .flatMap(loop -> drop(load, moment, loop))
                .isPresent();
    }

    public static CircuitKind kind(Consumer load, LoadCircuit loop) {
        return load instanceof Motor motor && UnfusedWires.isStarter(motor, loop) ? CircuitKind.STARTER : kind(load);
    }

    /** The kind of circuit of a load that is no starter. */
    private static CircuitKind kind(Consumer load) {
        if (load instanceof Coil) {
            return CircuitKind.IGNITION_FEED;
        } else if (load instanceof FilamentLamp) {
            return CircuitKind.LIGHTING;
        }
        return load instanceof Solenoid ? CircuitKind.STARTER_CONTROL : CircuitKind.GENERAL;
    }

    private static Finding finding(Plan plan, List<Drop> drops) {
        Drop worst = drops.stream().reduce(VoltageDrops::worse).orElseThrow();
        List<String> ids =
                new ArrayList<>(drops.stream().map(d -> d.load().id()).toList());
        ids.add(worst.worstId());
        double feedV = worst.loop().feedDropV();
        double returnV = worst.loop().returnDropV();
        List<String> others = drops.stream()
                .filter(d -> !d.load().equals(worst.load()))
                .map(d -> d.load().displayName())
                .toList();
        String text =
                worst.load().displayName() + " loses " + number(feedV) + " V on the way there and " + number(returnV)
                        + " V on the way back, of " + number(worst.loop().supplyV()) + " V, "
                        + FindingWording.when(worst.moment())
                        + "; usual are at most " + number(worst.limit().limitV()) + " V ("
                        + worst.limit().reason() + "). Most of it, " + number(worst.worstV()) + " V, in "
                        + place(plan, worst) + "."
                        + (others.isEmpty() ? "" : " Much the same: " + String.join(", ", others) + ".");
        return FindingCode.VOLTAGE_DROP.finding(
                Severity.WARNING,
                ids,
                text,
                FindingWording.with(
                        FindingWording.against(
                                "dropV",
                                worst.judgedV(),
                                "limitV",
                                worst.limit().limitV()),
                        figure("feedDropV", feedV),
                        figure("returnDropV", returnV),
                        figure("worstDropV", worst.worstV())),
                worst.limit().basis(),
                remedy(plan, worst));
    }

    private static String place(Plan plan, Drop drop) {
        String id = drop.worstId();
        return plan.findWire(id)
                .map(w -> findBadJoint(plan, drop)
                        .map(end -> "the joint of wire " + id + " at " + end)
                        .orElse("wire " + id + described(w)))
                .or(() -> plan.findPart(id).map(p -> p.label() == null ? id : p.displayName() + " (" + id + ")"))
                .orElse("connector " + id);
    }

    private static String described(Wire wire) {
        String size = wire.size();
        Double metres = wire.metres();
        return size == null || metres == null ? "" : " (" + size + ", " + number(metres) + " m)";
    }

    /** The end of the worst wire whose joint loses more than all the rest of it. */
    private static Optional<TerminalRef> findBadJoint(Plan plan, Drop drop) {
        return plan.findWire(drop.worstId()).flatMap(wire -> {
            boolean atFrom = wire.fromJointResistanceOhm() > wire.toJointResistanceOhm();
            double jointOhm = atFrom ? wire.fromJointResistanceOhm() : wire.toJointResistanceOhm();
            double jointV = jointOhm * Math.abs(drop.moment().solved().currentA(wire));
            return jointV > 0.5 * drop.worstV() ? Optional.of(atFrom ? wire.from() : wire.to()) : Optional.empty();
        });
    }

    private static String remedy(Plan plan, Drop drop) {
        String id = drop.worstId();
        boolean forRelay = drop.kind() != CircuitKind.STARTER
                && Math.abs(drop.moment().solved().currentA(drop.load())) > WORTH_A_RELAY_A;
        if (plan.findWire(id).isEmpty()) {
            return "Look at " + id + " first: clean it" + (forRelay ? ", or take its current through a relay." : ".");
        }
        return findBadJoint(plan, drop)
                .map(end -> "Clean the joint of " + id + " at " + end + " to bright metal, or make it anew.")
                .orElse("Take a thicker wire for " + id + ", or a shorter way"
                        + (forRelay ? "; or a relay close to the load." : "."));
    }
}
