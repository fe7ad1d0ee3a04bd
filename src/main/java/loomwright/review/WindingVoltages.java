package loomwright.review;

import static loomwright.review.Wording.number;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;

/**
 * Windings of relays and solenoids that are fed as meant for longer than a start takes, but with far more volts than they are
 * made for. What they are made for shows only in the volts at which they pull in; where the plan leaves those out they are
 * taken as right for the vehicle.
 */
final class WindingVoltages implements Check {
    /**
     * Times the volts at which it pulls in. Common practice, no source: that is at most two thirds of the rated volts and
     * seldom less than 0.45, and a winding stands 1.3 times these. So one for half the vehicle's volts is over, one that pulls
     * in easily is not.
     */
    private static final double MOST = 3;

    /** Rated volts of what pulls in at two thirds of them at the latest, as most do (common practice, no source). */
    private static final double RATED = 1.5;

    private static final Basis PULL_IN = Basis.commonPractice(
            "a winding gets at most 3 times the volts at which it pulls in: a relay or solenoid pulls in from half to two"
                    + " thirds of the volts it is made for");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Consumer.class).stream()
                .filter(part -> part instanceof Relay || part instanceof Solenoid)
                .flatMap(winding -> judge(context, winding).stream())
                .toList();
    }

    private static Optional<Finding> judge(ReviewContext context, Consumer winding) {
        Double operateV = winding.operateV();
        return operateV == null
                ? Optional.empty()
                : context.lastingMoments().stream()
                        .filter(m -> m.isMeant(winding) && volts(winding, m) > MOST * operateV)
                        // Rounded, so that of moments that are the same but for the arithmetic the plainest is named.
                        .min(Comparator.comparingDouble((Moment m) -> -(float) volts(winding, m))
                                .thenComparingInt(m -> m.situation().changes()))
                        .map(m -> finding(winding, operateV, m));
    }

    private static double volts(Consumer winding, Moment moment) {
        return Math.abs(moment.solved().acrossV(winding));
    }

    private static Finding finding(Consumer winding, double operateV, Moment moment) {
        double windingV = volts(winding, moment);
        return FindingCode.WINDING_OVERVOLTAGE.finding(
                Severity.WARNING,
                List.of(winding.id()),
                winding.called() + " gets " + number(windingV) + " V across its winding, " + Wording.when(moment)
                        + "; one that pulls in from " + number(operateV) + " V is made for about "
                        + number(RATED * operateV) + " V. The winding takes "
                        + number(Math.pow(windingV / (RATED * operateV), 2))
                        + " times its heat and burns out when it is fed for long.",
                Wording.with(
                        Wording.against("windingV", windingV, "limitV", MOST * operateV),
                        Wording.figure("operateV", operateV)),
                PULL_IN,
                "Fit one for the volts it gets. If it is the right one, put the volts from which it pulls in right in the plan,"
                        + " or look for what should take the rest.");
    }
}
