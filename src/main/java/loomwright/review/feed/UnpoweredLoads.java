package loomwright.review.feed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Motor;
import loomwright.circuit.TwoEndedConsumer;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.Step;
import loomwright.operation.StepFinding;
import loomwright.operation.StepFindings;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;
import loomwright.review.ignition.CoilVoltages;
import loomwright.review.ignition.ModuleSupply;
import loomwright.review.part.ReversedPolarity;
import loomwright.review.part.StalledMotors;
import loomwright.review.wire.VoltageDrops;

/**
 * Loads that do not work in a step in which they are meant to, whatever position the free switches are in. One that works
 * in some position counts as sound, since the plan may leave unsaid which position it is meant to work in.
 */
public final class UnpoweredLoads implements Check {
    private static final Basis SOLVED =
            Basis.computed("volts across each load that should be live", "Kirchhoff's laws and Ohm's law");

    /** Volts below this are nothing on any meter, and what is left of the arithmetic. */
    private static final double NOTHING_V = 0.005;

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Consumer.class).stream()
                .filter(load -> !context.isUnconnected(load))
                .filter(load -> !isFoundElsewhere(context, load))
                .filter(load -> !Intent.conditions(load, context.plan()).isEmpty())
                .flatMap(load -> judge(context, load).stream())
                .toList();
    }

    /** One that is reversed, or held fast, has a finding of its own. */
    private static boolean isFoundElsewhere(ReviewContext context, Consumer load) {
        return (load instanceof TwoEndedConsumer one
                        && ReversedPolarity.worst(context, one).isPresent())
                || (load instanceof Motor motor
                        && StalledMotors.worst(context, motor).isPresent());
    }

    private static Optional<Finding> judge(ReviewContext context, Consumer load) {
        List<List<Moment>> idle = meant(context, load).values().stream()
                .filter(moments -> moments.stream().noneMatch(m -> works(load, m)))
                .toList();
        // What is reported takes its volts at other times too, even if it is not told of those; nothing at all is
        // another
        // fault.
        boolean told = idle.stream().flatMap(List::stream).anyMatch(m -> isTold(context, load, m));
        List<Moment> failing = idle.stream()
                .filter(moments ->
                        !told || moments.stream().allMatch(m -> m.solved().activity(load) == FeedStrength.DEAD))
                .flatMap(List::stream)
                .filter(m -> !(load instanceof Coil coil && ModuleSupply.isDead(coil, m.solved())))
                .toList();
        return failing.isEmpty() ? Optional.empty() : Optional.of(finding(load, failing));
    }

    /**
     * The moments by which a load is judged. A coil has current only while the engine turns. Key off may be said for the
     * moment after running, so a load that is meant for more and works then is not judged by it. A circuit without a stable state
     * is reported by itself; it, or a short, may hide the position that feeds the load, so the others are not judged either.
     */
    private static Map<Step, List<Moment>> meant(ReviewContext context, Consumer load) {
        Map<Step, List<Moment>> meant = new EnumMap<>(Step.class);
        Set<Step> partly = EnumSet.noneOf(Step.class);
        for (Moment moment : context.survey().moments()) {
            Step step = moment.solved().step();
            boolean counts = step != Step.OFF_AGAIN && (step.engineTurning() || !(load instanceof Coil));
            if (counts && moment.isMeant(load)) {
                meant.computeIfAbsent(step, key -> new ArrayList<>()).add(moment);
                if (!context.isJudged(moment) || moment.solved().oscillating()) {
                    partly.add(step);
                }
            }
        }
        boolean worksAfterRunning = partly.contains(Step.OFF_ENGINE_TURNING)
                || meant.getOrDefault(Step.OFF_ENGINE_TURNING, List.of()).stream()
                        .anyMatch(m -> works(load, m));
        meant.keySet().removeAll(partly);
        meant.remove(Step.OFF_ENGINE_TURNING);
        // A charge lamp may glow at tick-over, and need not.
        List<Condition> conditions = Intent.conditions(load, context.plan());
        meant.keySet().removeIf(step -> !conditions.contains(step.condition()));
        if (meant.size() > 1 && worksAfterRunning) {
            meant.remove(Step.OFF);
        }
        return meant;
    }

    /** Whether it has the volts it needs and is not off by its own limits, however little it takes; or is pulled in. */
    private static boolean works(Consumer load, Moment moment) {
        return moment.isPulledIn(load)
                || (!moment.solved().isOff(load) && volts(load, moment) >= operateV(load, moment));
    }

    private static double volts(Consumer load, Moment moment) {
        return moment.solved().effectiveV(load);
    }

    private static double operateV(Consumer load, Moment moment) {
        return FeedStrength.limits(load, moment.solved().plan().system()).operateV();
    }

    /** Whether another check says already why it has too few volts. */
    private static boolean isTold(ReviewContext context, Consumer load, Moment moment) {
        return VoltageDrops.isTold(load, moment)
                || (load instanceof Coil coil && CoilVoltages.isLow(context, coil))
                || StepFindings.of(moment.solved()).stream()
                        .anyMatch(f -> f.kind() == StepFinding.Kind.OVERLOADED
                                && f.ids().contains(load.id()));
    }

    private static Finding finding(Consumer load, List<Moment> failing) {
        Moment best = failing.stream()
                .min(WorstCaseOrder.mostOf(m -> shown(volts(load, m))))
                .orElseThrow();
        double bestV = shown(volts(load, best));
        double operateV = operateV(load, best);
        List<Step> steps =
                failing.stream().map(m -> m.solved().step()).distinct().toList();
        String supplied = bestV == 0 ? "none" : bestV < operateV ? "little" : "enough";
        return Finding.warning(
                        FindingCode.LOAD_NOT_POWERED.with(
                                arg("load", load.thing()),
                                arg("effectiveV", bestV),
                                arg("operateV", operateV),
                                Arg.words("steps", steps),
                                arg("supplied", supplied),
                                FindingWording.when(best)),
                        SOLVED)
                .remedy(remedy(load));
    }

    private static double shown(double volts) {
        return volts < NOTHING_V ? 0 : volts;
    }

    private static Message remedy(Consumer load) {
        String feed = load.terminal(load.feedTerminal()).toString();
        String back = load.terminal(load.returnTerminal()).toString();
        return ReviewText.MEASURE_FEED_AND_RETURN.with(arg("feed", feed), arg("return", back));
    }
}
