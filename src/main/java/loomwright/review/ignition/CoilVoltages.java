package loomwright.review.ignition;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Finding;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.ReversedWire;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.circuit.UsualVoltages;
import loomwright.judgement.ignition.CoilKind;
import loomwright.judgement.ignition.CoilWindow;
import loomwright.judgement.ignition.IgnitionMistake.Kind;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/**
 * The volts at each ballasted coil with the key on and contacts closed, as they are measured: everything else as the plan
 * has it, since that is how the window is meant. A coil made for direct feed has no such window; {@link PrimaryCircuits} judges
 * it, and a ballast that is too large.
 */
public final class CoilVoltages implements Check {
    /** Of the coil's current: when more than this leaves the feed behind the ballast, the ballast is not to blame. */
    private static final double STRAY_FRACTION = 0.1;

    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Coil coil : context.plan().listParts(Coil.class)) {
            findJudged(context, coil)
                    .filter(m -> !PrimaryCircuits.finds(context, coil, Kind.BALLAST_TOO_LARGE))
                    .filter(m -> isLow(context, coil, m))
                    .ifPresent(m -> findings.add(low(context, coil, m)));
        }
        return findings;
    }

    private static CoilWindow window(ReviewContext context, Coil coil, Moment moment) {
        double supplyV = LoadCircuit.find(moment.solved(), coil)
                .map(LoadCircuit::supplyV)
                .orElse(context.plan().system().scaledFrom12V(UsualVoltages.AT_REST_V));
        return CoilWindow.of(
                coil.primaryResistanceOhm(), context.plan().system().nominalVoltageV(), supplyV, 0, null);
    }

    private static boolean isLow(ReviewContext context, Coil coil, Moment moment) {
        return volts(coil, moment) < window(context, coil, moment).lowV();
    }

    /** The moment in which a coil is judged; empty if it is none that is used with a ballast. */
    private static Optional<Moment> findJudged(ReviewContext context, Coil coil) {
        double nominalV = context.plan().system().nominalVoltageV();
        return CoilKind.ofOhm(coil.primaryResistanceOhm(), nominalV) != CoilKind.WITH_BALLAST
                ? Optional.empty()
                : context.moments().stream()
                        .filter(m -> m.solved().step() == Step.RUN && isBallasted(coil, m))
                        .min(Comparator.comparingInt(m -> m.situation().changes()));
    }

    /** Whether this check tells that a coil has too few volts. */
    public static boolean isLow(ReviewContext context, Coil coil) {
        return findJudged(context, coil).filter(m -> isLow(context, coil, m)).isPresent();
    }

    private static boolean isBallasted(Coil coil, Moment moment) {
        return Math.abs(moment.solved().currentA(coil)) > IgnitionRules.IGNITION_A
                && LoadCircuit.find(moment.solved(), coil)
                        .filter(loop -> loop.ballastOhm() > 0)
                        .isPresent();
    }

    private static double volts(Coil coil, Moment moment) {
        return Math.abs(moment.solved().acrossV(coil));
    }

    private static Finding low(ReviewContext context, Coil coil, Moment moment) {
        double lowV = window(context, coil, moment).lowV();
        double highV = window(context, coil, moment).highV();
        double coilV = volts(coil, moment);
        Optional<Message> stray = stray(context, coil, moment);
        return Finding.warning(
                        FindingCode.COIL_VOLTAGE_LOW.with(
                                arg("coil", coil.thing()),
                                arg("coilV", coilV),
                                arg("lowV", lowV),
                                FindingWording.limitRatio(lowV, coilV),
                                arg("highV", highV),
                                Arg.messages("stray", stray.stream().toList()),
                                FindingWording.when(moment)),
                        CoilWindow.BASIS)
                .about(List.of(coil.id()))
                .remedy(
                        stray.isPresent()
                                ? ReviewText.REPAIR_STRAY_FIRST.with()
                                : ReviewText.FIND_DROP_OR_FIT_SMALLER_BALLAST.with());
    }

    /** Current that leaves the feed behind the ballast by an unintended path; the text is absent without it. */
    private static Optional<Message> stray(ReviewContext context, Coil coil, Moment moment) {
        double coilA = Math.abs(moment.solved().currentA(coil));
        return LoadCircuit.find(moment.solved(), coil)
                .filter(loop -> loop.ballastA() - coilA > STRAY_FRACTION * coilA)
                .flatMap(loop ->
                        whereTo(context, loop.ballastIds(), arg("coilA", coilA), arg("ballastA", loop.ballastA())));
    }

    private static Optional<Message> whereTo(ReviewContext context, Set<String> ballasts, Arg coilA, Arg ballastA) {
        List<String> loads = context.backfeed().unintendedFeeds().stream()
                .filter(feed -> feed.occurrences().stream().anyMatch(o -> passes(o, ballasts)))
                .map(UnintendedFeed::load)
                .toList();
        List<String> wires = context.backfeed().reversedWires().stream()
                .filter(wire -> wire.step() == Step.RUN)
                .map(ReversedWire::wire)
                .toList();
        if (!loads.isEmpty()) {
            return Optional.of(ReviewText.STRAY_TO_LOADS.with(
                    coilA, ballastA, FindingWording.things("loads", context.plan(), loads)));
        }
        return wires.isEmpty()
                ? Optional.empty()
                : Optional.of(ReviewText.STRAY_THROUGH_WIRES.with(
                        coilA, ballastA, FindingWording.things("wires", context.plan(), wires)));
    }

    private static boolean passes(Occurrence occurrence, Set<String> ballasts) {
        return occurrence.step() == Step.RUN
                && occurrence.paths().stream()
                        .flatMap(path -> path.steps().stream())
                        .anyMatch(step -> ballasts.contains(step.id()));
    }
}
