package loomwright.review.wire;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Solenoid;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.DropRule;
import loomwright.judgement.LampLaw;
import loomwright.judgement.Verdict;
import loomwright.message.Arg;
import loomwright.message.Argument;
import loomwright.message.Argument.Nested;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import loomwright.operation.CurrentPaths;
import loomwright.operation.Intent;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;
import org.jspecify.annotations.Nullable;

/**
 * The volts lost between source and load and in the return, against the usual limit of the load's kind of circuit. Of
 * an ignition coil the limit is for the feed alone. Loads of one kind that lose most in the same place are reported together.
 */
public final class VoltageDrops implements Check {
    /** What a wrong figure of arithmetic could come to. */
    private static final double ROUNDING = 1 + 1e-9;

    /** Above this share of the whole a place loses most of it. */
    private static final double MOST = 0.5;

    /** No kind of circuit has a limit of less than this share of the supply. */
    private static final double STRICTEST = 0.025;

    /** A relay of its own for less is no remedy but a nuisance (common practice, no source). */
    private static final double WORTH_A_RELAY_A = 1;

    /** One load at one time. */
    private record Drop(
            Consumer load,
            Moment moment,
            DropRule kind,
            LoadCircuit loop,
            Verdict verdict,
            String worstId,
            double worstV) {
        double timesLimit() {
            return verdict.ratio();
        }
    }

    /**
     * What a relay close to the load leaves in its feed at 12 V: 0.1 V in its contact (0.02 to 0.2 V at 10 A) and 0.25 V
     * in its own wire from the battery. Common practice, no source.
     */
    private static final double RELAY_FEED_12V = 0.35;

    private record Place(DropRule kind, String worstId) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        Map<String, Drop> worstOfLoad = new LinkedHashMap<>();
        List<Consumer> loads = context.plan().listParts(Consumer.class).stream()
                .filter(load -> !context.isUnconnected(load))
                .toList();
        for (Moment moment : context.moments()) {
            SolvedStep solved = moment.solved();
            double supplyV = supplyV(context.plan(), solved);
            CurrentPaths paths = new CurrentPaths(solved);
            for (Consumer load : loads) {
                if (mayCount(load, solved.step())
                        && supplyV - Math.abs(solved.acrossV(load)) > STRICTEST * supplyV
                        && moment.isMeant(load)
                        && Intent.conditions(load, context.plan())
                                .contains(solved.step().condition())) {
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
            } else if (part instanceof Generator g) {
                double acrossV =
                        Math.abs(solved.acrossV(g.terminal(g.outputTerminal()), g.terminal(g.returnTerminal())));
                alternatorV = Math.max(alternatorV, acrossV);
            }
        }
        return Math.max(batteriesV, alternatorV);
    }

    private static Drop worse(Drop a, Drop b) {
        return WorstCaseOrder.compare(a.moment(), a.timesLimit(), b.moment(), b.timesLimit()) <= 0 ? a : b;
    }

    /** While the starter turns only what is there for starting is judged. */
    private static boolean counts(DropRule kind, Step step) {
        return switch (kind) {
            case STARTER, STARTER_CONTROL -> step == Step.CRANK;
            case IGNITION_FEED -> !step.passing();
            default -> !step.passing() && step != Step.CRANK;
        };
    }

    /** Spares the search for the loop of a load that is not judged in a step, whatever its way. */
    private static boolean mayCount(Consumer load, Step step) {
        return load instanceof Motor
                ? counts(DropRule.STARTER, step) || counts(DropRule.GENERAL, step)
                : counts(kind(load), step);
    }

    /** What a load loses, if it is judged and loses too much. */
    private static Optional<Drop> drop(Consumer load, Moment moment, LoadCircuit loop) {
        DropRule kind = kind(load, loop);
        if (!counts(kind, moment.solved().step())) {
            return Optional.empty();
        }
        boolean feedAlone = kind.ofLiveSide();
        double judgedV = loop.feedDropV() + (feedAlone ? 0 : loop.returnDropV());
        Verdict verdict = kind.judge(judgedV, moment.solved().plan().system().nominalVoltageV());
        if (verdict.level().severity().isEmpty() || !(verdict.ratio() > ROUNDING)) {
            return Optional.empty();
        }
        Map<String, Double> places = places(kind, loop);
        // Of two that lose the same but for rounding, the one whose name comes first.
        Map.Entry<String, Double> worst = places.entrySet().stream()
                .max(Comparator.<Map.Entry<String, Double>>comparingDouble(
                                e -> e.getValue().floatValue())
                        .thenComparing(
                                Map.Entry.<String, Double>comparingByKey().reversed()))
                .orElse(Map.entry("", 0.0));
        return Optional.of(new Drop(load, moment, kind, loop, verdict, worst.getKey(), worst.getValue()));
    }

    /** What is lost where, as far as it counts for the limit. */
    private static Map<String, Double> places(DropRule kind, LoadCircuit loop) {
        Map<String, Double> places = new LinkedHashMap<>(loop.feedContributorsV());
        if (!kind.ofLiveSide()) {
            loop.returnContributorsV().forEach((id, v) -> places.merge(id, v, Double::sum));
        }
        return places;
    }

    /** Whether a load loses more in a moment than is usual, so that this check tells of it. */
    public static boolean isTold(Consumer load, Moment moment) {
        return LoadCircuit.find(moment.solved(), load)
                .flatMap(loop -> drop(load, moment, loop))
                .isPresent();
    }

    public static DropRule kind(Consumer load, LoadCircuit loop) {
        return load instanceof Motor motor && UnfusedWires.isStarter(motor, loop) ? DropRule.STARTER : kind(load);
    }

    /** The kind of circuit of a load that is no starter. */
    private static DropRule kind(Consumer load) {
        if (load instanceof Coil) {
            return DropRule.IGNITION_FEED;
        } else if (load instanceof FilamentLamp lamp) {
            return DropRule.ofLamp(lamp.ratedW());
        }
        return load instanceof Solenoid ? DropRule.STARTER_CONTROL : DropRule.GENERAL;
    }

    private static Finding finding(Plan plan, List<Drop> drops) {
        Drop worst = drops.stream().reduce(VoltageDrops::worse).orElseThrow();
        List<String> ids =
                new ArrayList<>(drops.stream().map(d -> d.load().id()).toList());
        ids.add(worst.worstId());
        double feedV = worst.loop().feedDropV();
        double returnV = worst.loop().returnDropV();
        double byRelayV = feedV - plan.system().scaledFrom12V(RELAY_FEED_12V);
        boolean relayHelps = worst.load() instanceof FilamentLamp && forRelay(worst) && byRelayV > 0;
        List<Thing> others = drops.stream()
                .filter(d -> !d.load().equals(worst.load()))
                .map(d -> d.load().thing())
                .toList();
        Verdict verdict = worst.verdict();
        Message found = FindingCode.VOLTAGE_DROP.with(
                arg("load", worst.load().thing()),
                arg("dropV", verdict.value()),
                arg("limitV", verdict.limit()),
                FindingWording.limitRatio(verdict.value(), verdict.limit()),
                arg("supplyV", worst.loop().supplyV()),
                arg("feedDropV", feedV),
                arg("returnDropV", returnV),
                arg("worstDropV", worst.worstV()),
                arg("worstPercent", 100 * worst.worstV() / verdict.value()),
                arg("share", worst.worstV() > MOST * verdict.value() ? "most" : "largest"),
                arg("place", place(plan, worst)),
                arg("lamp", worst.load() instanceof FilamentLamp ? "yes" : "no"),
                arg("lightPercent", lightPercent(worst, 0)),
                arg("fullLightPercent", lightPercent(worst, verdict.value())),
                arg("relay", relayHelps ? "yes" : "no"),
                arg("relayLightPercent", lightPercent(worst, Math.max(0, byRelayV))),
                FindingWording.when(worst.moment()),
                Arg.things("others", others));
        return Finding.of(verdict.level().severity().orElse(Severity.NOTE), found, verdict.basis())
                .about(ids)
                .remedy(remedy(plan, worst));
    }

    /**
     * Light of a filament lamp with what it has and so many volts more, of its light at test volts; 0 for other loads.
     *
     * @param moreV won back
     */
    private static double lightPercent(Drop drop, double moreV) {
        if (!(drop.load() instanceof FilamentLamp lamp)) {
            return 0;
        }
        double lampV = Math.abs(drop.moment().solved().acrossV(lamp)) + moreV;
        return 100 * LampLaw.lightFraction(lampV / LampLaw.testV(lamp.ratedV(), lamp.ratedW()));
    }

    private static Argument place(Plan plan, Drop drop) {
        Thing thing = plan.thing(drop.worstId());
        return plan.findWire(drop.worstId())
                .flatMap(wire -> findBadJoint(plan, drop)
                        .map(end -> ReviewText.JOINT_OF_WIRE.with(arg("wire", thing), arg("terminal", end.toString())))
                        .or(() -> described(wire)))
                .<Argument>map(Nested::new)
                .orElse(thing);
    }

    private static Optional<Message> described(Wire wire) {
        String size = wire.conductor().size();
        Double metres = wire.metres();
        return size == null || metres == null
                ? Optional.empty()
                : Optional.of(ReviewText.WIRE_OF_SIZE.with(
                        arg("wire", wire.thing()), arg("size", size), arg("lengthM", metres)));
    }

    /** The end of the worst wire whose joint loses more than all the rest of it. */
    private static Optional<TerminalRef> findBadJoint(Plan plan, Drop drop) {
        return plan.findWire(drop.worstId()).flatMap(wire -> {
            boolean atFrom =
                    wire.joints().fromJointResistanceOhm() > wire.joints().toJointResistanceOhm();
            double jointOhm = atFrom
                    ? wire.joints().fromJointResistanceOhm()
                    : wire.joints().toJointResistanceOhm();
            double jointV = jointOhm * Math.abs(drop.moment().solved().currentA(wire));
            return jointV > 0.5 * drop.worstV() ? Optional.of(atFrom ? wire.from() : wire.to()) : Optional.empty();
        });
    }

    private static boolean forRelay(Drop drop) {
        return drop.kind() != DropRule.STARTER
                && drop.kind() != DropRule.IGNITION_FEED
                && Math.abs(drop.moment().solved().currentA(drop.load())) > WORTH_A_RELAY_A;
    }

    private static Message remedy(Plan plan, Drop drop) {
        Arg place = arg("place", plan.thing(drop.worstId()));
        Arg relay = arg("relay", forRelay(drop) ? "yes" : "no");
        if (plan.findWire(drop.worstId()).isEmpty()) {
            return ofPart(plan.findPart(drop.worstId()).orElse(null), place, relay);
        }
        return findBadJoint(plan, drop)
                .map(end -> ReviewText.CLEAN_JOINT.with(place, arg("terminal", end.toString())))
                .orElseGet(() -> thickerWire(plan, drop)
                        .map(size -> ReviewText.FIT_SIZE_FOR_DROP.with(place, arg("size", size), relay))
                        .or(() -> SplitSizes.find(
                                plan,
                                drop.moment().solved(),
                                places(drop.kind(), drop.loop()),
                                drop.verdict().limit()))
                        .orElseGet(() -> ReviewText.SHORTEN_WIRE_OR_SPLIT_LOAD.with(place, relay)));
    }

    /** What is cleaned is a joint, an earth, a switch, a holder; what is solid is tested and replaced. */
    private static Message ofPart(@Nullable Part part, Arg place, Arg relay) {
        if (part instanceof Diode || part instanceof IgnitionModule) {
            return ReviewText.TEST_PART.with(place);
        }
        if (part instanceof Fuse || part instanceof FusibleLink || part instanceof EarthPoint) {
            return ReviewText.CLEAN_PART.with(place);
        }
        return ReviewText.CLEAN_CONTACTS.with(place, relay);
    }

    /**
     * The thinnest size of the same standard with which the circuit would be within its limit: the volts of the wire go
     * with its ohms.
     */
    private static Optional<String> thickerWire(Plan plan, Drop drop) {
        double overV = drop.verdict().value() - drop.verdict().limit();
        return plan.findWire(drop.worstId())
                .map(w -> w.conductor().size())
                .map(ConductorSize::parse)
                .flatMap(now -> ConductorSize.list(now.system()).stream()
                        .filter(size -> drop.worstV() * (1 - size.wireOhmPerM(20) / now.wireOhmPerM(20)) >= overV)
                        .findFirst()
                        .map(ConductorSize::name));
    }
}
