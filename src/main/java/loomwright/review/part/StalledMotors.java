package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Motor;
import loomwright.operation.FeedStrength;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/** Motors that are held fast while they have current: all of it is heat in their windings. */
public final class StalledMotors implements Check {
    private static final Basis SOLVED =
            Basis.computed("current of a motor through its windings alone", "Kirchhoff's laws and Ohm's law");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Motor.class).stream()
                .flatMap(motor -> worst(context, motor).map(m -> finding(motor, m)).stream())
                .toList();
    }

    /** The moment in which one that is held fast has most current; empty if it turns, or never has any. */
    public static Optional<Moment> worst(ReviewContext context, Motor motor) {
        return context.moments().stream()
                .filter(moment -> motor.stalled() && amps(motor, moment) > FeedStrength.TRICKLE_A)
                .min(WorstCaseOrder.mostOf(moment -> amps(motor, moment)));
    }

    private static double amps(Motor motor, Moment moment) {
        return Math.abs(moment.solved().currentA(motor));
    }

    private static Finding finding(Motor motor, Moment moment) {
        double currentA = amps(motor, moment);
        return Finding.danger(
                        FindingCode.MOTOR_STALLED.with(
                                arg("motor", motor.thing()),
                                arg("currentA", currentA),
                                arg("heatW", currentA * currentA * motor.loadOhm()),
                                FindingWording.when(moment)),
                        SOLVED)
                .remedy(ReviewText.FREE_MOTOR.with());
    }
}
