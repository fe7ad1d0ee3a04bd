package loomwright.review.ignition;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Ballast;
import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.IgnitionModule;
import loomwright.ignition.UsualIgnition;
import loomwright.ignition.primary.EngineHeat;
import loomwright.judgement.ignition.IgnitionMistake.Kind;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.judgement.ignition.PrimaryLoop;
import loomwright.message.Message;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.ReviewContext;
import org.jspecify.annotations.Nullable;

/**
 * Each coil with its ballast and its switch, by ohms, volts and heat, judged by the same rule as in the ignition
 * calculations. The current of contacts is the matter of {@code PartRatings}, which names the contacts.
 */
public final class PrimaryCircuits implements Check {
    /** A ballast across which this share of its volts or less stands carries nothing: it is bypassed. */
    private static final double BYPASSED_SHARE = 0.1;
    /** Two points this near to each other are one to a meter. */
    private static final double SAME_V = 0.3;

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Coil.class).stream()
                .flatMap(coil -> judge(context, coil).stream())
                .toList();
    }

    /** Whether the judge finds a mistake of that kind in a coil's circuit. */
    static boolean finds(ReviewContext context, Coil coil, Kind kind) {
        return findLoop(context, coil).stream()
                .flatMap(loop -> IgnitionRule.judge(loop).stream())
                .anyMatch(mistake -> mistake.kind() == kind);
    }

    /**
     * What cures the current of contacts that switch a coil: what the judge says of it or, where a mistake causes it, of that
     * mistake; empty where they switch no coil.
     */
    public static Optional<Message> findContactRemedy(ReviewContext context, ContactBreaker breaker) {
        return running(context)
                .flatMap(moment -> context.plan().listParts(Coil.class).stream()
                        .min(Comparator.comparingDouble(coil -> Math.abs(moment.solved()
                                .acrossV(coil.terminal(Coil.SWITCHED), breaker.terminal(ContactBreaker.SWITCHED))))))
                .flatMap(coil -> findLoop(context, coil))
                .flatMap(loop -> IgnitionRule.judge(loop).stream()
                        .min(Comparator.comparing(mistake -> mistake.kind() != Kind.CONTACT_OVERLOADED))
                        .map(mistake -> mistake.finding(loop).remedy()));
    }

    private static List<Finding> judge(ReviewContext context, Coil coil) {
        return findLoop(context, coil).stream()
                .flatMap(loop -> IgnitionRule.findings(loop).stream())
                .filter(finding -> finding.kind() != Kind.CONTACT_OVERLOADED)
                .map(finding -> finding.about(List.of(coil.id())))
                .toList();
    }

    /** The circuit of a coil with the engine running, as the plan has it; empty where it draws no ignition current. */
    private static Optional<PrimaryLoop> findLoop(ReviewContext context, Coil coil) {
        return running(context).flatMap(m -> loop(context, coil, m));
    }

    private static Optional<Moment> running(ReviewContext context) {
        return context.moments().stream()
                .filter(m -> m.solved().step() == Step.RUNNING)
                .min(Comparator.comparingInt(m -> m.situation().changes()));
    }

    private static Optional<PrimaryLoop> loop(ReviewContext context, Coil coil, Moment moment) {
        SolvedStep solved = moment.solved();
        double currentA = Math.abs(solved.currentA(coil));
        Optional<LoadCircuit> circuit = LoadCircuit.find(solved, coil);
        if (currentA <= IgnitionRules.IGNITION_A || circuit.isEmpty()) {
            return Optional.empty();
        }
        LoadCircuit way = circuit.get();
        Optional<IgnitionModule> module = way.findModule();
        double dropV = module.map(IgnitionModule::saturationV).orElse(0.0);
        Double limitA = module.map(IgnitionModule::limitA).orElse(null);
        boolean limiting = limitA != null && currentA >= ModuleCurrents.AT_LIMIT * limitA;
        Optional<Ballast> bypassed = context.plan().listParts(Ballast.class).stream()
                .filter(ballast -> isBypassed(solved, ballast, coil, currentA))
                .findFirst();
        double ballastOhm = toMicroOhm(bypassed.map(PrimaryCircuits::ohm).orElseGet(way::ballastOhm));
        double inOhm = bypassed.isPresent() ? 0 : ballastOhm;
        double restOhm = (way.supplyV() - dropV) / currentA - inOhm - coil.primaryResistanceOhm();
        return Optional.of(new PrimaryLoop(
                context.plan().system().nominalVoltageV(),
                way.supplyV(),
                limiting ? UsualIgnition.FEED_OHM : Math.max(0, restOhm),
                ballastOhm,
                bypassed.isPresent(),
                coil.primaryResistanceOhm(),
                new PrimaryLoop.PrimaryContact(dropV, module.isPresent(), limitA, null),
                EngineHeat.usual(PrimaryLoop.USUAL_DWELL, coil.primaryResistanceOhm(), inductanceH(coil))));
    }

    /** The last digits of a solution would put a ballast of 0.6 ohm on the other side of a limit of 0.6 ohm. */
    private static double toMicroOhm(double ohm) {
        return Math.rint(ohm * 1e6) / 1e6;
    }

    private static @Nullable Double inductanceH(Coil coil) {
        Double inductanceMh = coil.inductanceMh();
        return inductanceMh == null ? null : (Double) (inductanceMh / 1000);
    }

    private static double ohm(Ballast ballast) {
        return ballast.elementsOhm().stream().mapToDouble(ohm -> ohm).sum();
    }

    /** Whether one end of a ballast lies at the coil and both ends have the same volts although the coil draws current. */
    private static boolean isBypassed(SolvedStep solved, Ballast ballast, Coil coil, double coilA) {
        List<String> names = ballast.terminals();
        String first = names.get(0);
        String last = names.get(names.size() - 1);
        double acrossV = Math.abs(solved.acrossV(ballast.terminal(first), ballast.terminal(last)));
        boolean atCoil = names.stream()
                .anyMatch(name -> Math.abs(solved.acrossV(ballast.terminal(name), coil.terminal(Coil.FEED))) <= SAME_V);
        return atCoil && acrossV <= BYPASSED_SHARE * ohm(ballast) * coilA;
    }
}
