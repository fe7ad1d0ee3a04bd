package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Alternator;
import loomwright.circuit.VehicleSystem;
import loomwright.message.Arg;
import loomwright.operation.OutputOverSpeed;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/**
 * Alternators that never charge, because too little flows in their exciter terminal: an LED charge lamp without a resistor
 * beside it, a lamp of a few tenths of a watt, no wire at all. The last is a note: it may be drawn in part only.
 */
public final class Excitation implements Check {
    private static final Basis LEAST_FIELD =
            Basis.commonPractice("an alternator begins to charge from about 0.1 A in its exciter terminal");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Alternator.class).stream()
                .filter(alternator -> !alternator.selfExciting() && OutputOverSpeed.charges(alternator))
                .flatMap(alternator -> find(context, alternator).stream())
                .toList();
    }

    private static Optional<Finding> find(ReviewContext context, Alternator alternator) {
        List<Moment> running = context.lastingMoments().stream()
                .filter(m -> m.solved().step() == Step.RUNNING)
                .toList();
        boolean charges = running.stream().anyMatch(m -> m.solved().isActive(alternator));
        return charges ? Optional.empty() : running.stream().findFirst().map(m -> finding(alternator, m));
    }

    private static double exciterA(SolvedStep solved, Alternator alternator) {
        VehicleSystem system = solved.plan().system();
        return Math.abs(solved.acrossV(
                        alternator.terminal(Alternator.WARNING_LAMP),
                        alternator.terminal(alternator.earthedPole(system))))
                / alternator.fieldResistanceOhm(system);
    }

    private static Finding finding(Alternator alternator, Moment moment) {
        boolean open = moment.solved().plan().wiresAt(alternator.terminal(Alternator.WARNING_LAMP)) == 0;
        Arg terminal =
                arg("terminal", alternator.terminal(Alternator.WARNING_LAMP).toString());
        return Finding.of(
                        open ? Severity.NOTE : Severity.WARNING,
                        FindingCode.NOT_EXCITED.with(
                                arg("generator", alternator.thing()),
                                terminal,
                                arg("exciterA", exciterA(moment.solved(), alternator)),
                                arg("open", open ? "yes" : "no"),
                                arg("neededA", Alternator.LEAST_FIELD_A),
                                FindingWording.when(moment)),
                        LEAST_FIELD)
                .remedy(open ? ReviewText.JOIN_EXCITER.with(terminal) : ReviewText.EXCITE.with());
    }
}
